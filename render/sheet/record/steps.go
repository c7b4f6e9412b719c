package record

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// steps are all steps as they were done, the added ones too, with the troubles that
// were met.
func (l *layout) steps() {
	var rows []sheet.Row
	worked := false
	for _, st := range l.View.AsDone() {
		worked = worked || st.WorkedOut
		rows = append(rows, sheet.Row{Words: []string{
			l.stepNumber(st.Number), l.stage(st), strings.Join(st.IDs, ", "), l.figure(st), l.state(st),
			st.By, l.p.Paper.When(st.Source == run.OnPaper && !st.At.IsZero(), st.Day, words.Row(l.toTheSecond(st.At), l.tapped(st))), l.remark(st),
		}, Bold: st.Met != nil || st.Fresh != nil})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Steps, []sheet.Column{
		{Head: c["step"], Share: 1}, {Head: c["stage"], Share: 1}, {Head: c["fastener"], Share: 1.3, Bold: true}, {Head: c["figure"], Share: 4},
		{Head: c["state"], Share: 1.5}, {Head: c["who"], Share: 1.1}, {Head: c["when"], Share: 2.3}, {Head: l.w.Remark, Share: 2.6},
	}, rows)
	if worked {
		l.run.Sentence("≈ " + l.p.Run.WorkedOut)
		l.run.Y += 1.5
	}
}

// tapped says when a step was tapped whose entry came late; empty for one in time.
func (l *layout) tapped(st run.Step) string {
	if st.Tapped.IsZero() || st.Undone != nil || st.Met != nil || st.Fresh != nil {
		return ""
	}
	return sprint(l.w.Tapped, st.Tapped.In(l.ask.Zone).Format("15:04:05"))
}

// state says how far a step is, that a tap on it was taken back, or what was met.
func (l *layout) state(st run.Step) string {
	acts := l.p.Records.Acts
	switch {
	case st.Undone != nil:
		return words.Row(acts[string(st.Undone.Act)], acts[string(run.Undo)])
	case st.Met != nil:
		return l.troubleName(*st.Met)
	case st.Fresh != nil:
		return acts[string(run.Replace)]
	}
	return l.p.Records.StepStates[string(st.State)]
}

func number(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// stepNumber is that of a step of the plan; those of a new fastener are counted
// apart.
func (l *layout) stepNumber(n int) string {
	if st := l.step(n); st != nil {
		if nth, of := l.View.CatchUp(*st); of > 0 {
			return sprint(l.p.Records.NewStep, nth, of)
		}
	}
	return number(n)
}

// step returns the step of a number; nil where there is none.
func (l *layout) step(n int) *run.Step {
	i := slices.IndexFunc(l.View.Steps, func(st run.Step) bool { return st.Number == n })
	if i < 0 {
		return nil
	}
	return &l.View.Steps[i]
}

func (l *layout) stage(st run.Step) string {
	if st.Round > 1 {
		return words.Row(number(st.Stage), sprint(l.p.Run.Round, st.Round))
	}
	return number(st.Stage)
}

// figure says what was to be done, or was decided in place of it.
func (l *layout) figure(st run.Step) string {
	if d := l.View.DecidedAt(st.Number); d != nil && st.Undone == nil && st.Met == nil { // that counts, not the figure of the plan
		return words.Row(l.p.Run.Interrupted, l.decided(*d))
	}
	return l.toDo(st)
}

// toDo says what the plan asks for; a figure that was worked out is marked, and an
// angle after others has their sum.
func (l *layout) toDo(st run.Step) string {
	figure, total := l.words.Figure(st.Figure), ""
	if st.WorkedOut && figure != "" {
		figure = "≈ " + figure
	}
	if st.FromDeg > 0 {
		total = sprint(l.p.Run.Total, l.words.Figure(sprint("%.4g°", st.ToDeg)))
	}
	return words.Row(strings.TrimSpace(l.p.Run.Do[st.Name()]+" "+figure), total)
}

func (l *layout) remark(st run.Step) string {
	old, again := "", ""
	if st.Old || st.Met != nil && l.outAfter(*st.Met) {
		old = l.p.Records.Old
	}
	if st.Recovery > 0 && st.Met == nil {
		again = l.p.Run.Recovery
	}
	reason := st.Reason
	switch d := l.View.DecidedAt(st.Number); {
	case st.Met != nil:
		return words.Row(l.letterOf(st.Met.Entry), old)
	case st.Fresh != nil:
		if letter := l.letterOf(st.Fresh.Entry); letter != "" {
			return letter
		}
		return l.letterOf(st.Fresh.Of)
	case st.Undone != nil:
		back := l.p.Records.Acts[string(run.Undo)] + ": " + l.done(st.Undone.Back)
		return words.Row(reason, back)
	case d != nil:
		reason = l.done(*d.Settled)
	case st.OutOfOrder:
		reason = l.words.With(l.p.Run.OutOfOrder, reason)
	}
	return words.Row(l.foundAt(st.Number), st.Wrench, old, again, reason)
}

// outAfter reports whether a trouble led to a new fastener.
func (l *layout) outAfter(t run.TroubleSeen) bool {
	return slices.ContainsFunc(l.View.Replaced, func(r run.Replaced) bool { return t.Settled != nil && r.Entry == t.Settled.Entry })
}

// letterOf is the letter of what an entry reported, as the list of it has it.
func (l *layout) letterOf(entry string) string {
	for _, s := range l.seen {
		if s.entry == entry {
			return lettered.Flag + s.Letter
		}
	}
	return ""
}

// foundAt names what was found at a step as the list of it does. A trouble has a
// line of its own.
func (l *layout) foundAt(step int) string {
	letters := ""
	for _, s := range l.seen {
		if s.finding && s.step == step {
			letters += s.Letter
		}
	}
	if letters == "" {
		return ""
	}
	return lettered.Flag + letters
}
