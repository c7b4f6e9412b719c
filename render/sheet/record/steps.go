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

// steps are all steps as they were done, the added ones too.
func (l *layout) steps() {
	var rows []sheet.Row
	worked := false
	for _, st := range l.View.AsDone() {
		worked = worked || st.WorkedOut
		rows = append(rows, sheet.Row{Words: []string{
			l.stepNumber(st.Number), l.stage(st), strings.Join(st.IDs, ", "), l.figure(st), l.state(st),
			st.By, l.toTheSecond(st.At), l.remark(st),
		}})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Steps, []sheet.Column{
		{Head: c["step"], Share: 1}, {Head: c["stage"], Share: 1}, {Head: c["fastener"], Share: 1.3, Bold: true}, {Head: c["figure"], Share: 3.2},
		{Head: c["state"], Share: 1.6}, {Head: c["who"], Share: 1.1}, {Head: c["when"], Share: 2.3}, {Head: l.w.Remark, Share: 2.6},
	}, rows)
	if worked {
		l.run.Sentence("≈ " + l.p.Run.WorkedOut)
		l.run.Y += 1.5
	}
}

// state says how far a step is, or that a tap on it was taken back.
func (l *layout) state(st run.Step) string {
	if st.Undone != nil {
		acts := l.p.Records.Acts
		return words.Row(acts[string(st.Undone.Act)], acts[string(run.Undo)])
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

// figure says what was to be done; a figure that was worked out is marked.
func (l *layout) figure(st run.Step) string {
	if d := l.View.DecidedAt(st.Number); d != nil && st.Undone == nil { // that counts, not the figure of the plan
		return words.Row(l.p.Run.Interrupted, l.decided(*d))
	}
	figure := l.words.Figure(st.Figure)
	if st.WorkedOut && figure != "" {
		figure = "≈ " + figure
	}
	return strings.TrimSpace(l.p.Run.Do[string(st.Do)] + " " + figure)
}

func (l *layout) remark(st run.Step) string {
	old, again := "", ""
	if st.Old {
		old = l.p.Records.Old
	}
	if st.Recovery > 0 {
		again = l.p.Run.Recovery
	}
	reason := st.Reason
	switch d := l.View.DecidedAt(st.Number); {
	case st.Undone != nil:
		back := l.p.Records.Acts[string(run.Undo)] + ": " + l.done(st.Undone.Back)
		return words.Row(reason, back)
	case d != nil:
		reason = l.done(*d.Settled)
	case st.OutOfOrder:
		reason = l.words.With(l.p.Run.OutOfOrder, reason)
	}
	return words.Row(l.lettersOf(st.Number), st.Wrench, old, again, reason)
}

// lettersOf names what was found at a step as the list of it does.
func (l *layout) lettersOf(step int) string {
	letters := ""
	for _, s := range l.seen {
		if s.step == step {
			letters += s.Letter
		}
	}
	if letters == "" {
		return ""
	}
	return lettered.Flag + letters
}
