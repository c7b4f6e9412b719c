package record

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

func sprint(format string, args ...any) string { return fmt.Sprintf(format, args...) }

// flags are what was recorded but has to be looked at.
func (l *layout) flags() {
	var rows []sheet.Row
	for _, f := range l.View.Flags {
		rows = append(rows, sheet.Row{Words: []string{l.words.Say(f.Finding), f.By, l.when(f.At)}, Warns: true})
	}
	l.list(l.p.Records.Flags, l.said(l.w.What), rows)
}

// accepted are the warnings that someone took on by name.
func (l *layout) accepted() {
	m := l.View.Accepted
	if m == nil {
		return
	}
	var rows []sheet.Row
	for _, f := range l.Accepted {
		rows = append(rows, sheet.Row{Words: []string{l.words.Say(f)}})
	}
	l.list(sprint(l.w.Accepted, m.By, l.when(m.At)), []sheet.Column{{Head: l.w.What, Share: 1}}, rows)
}

// ready is what had to be there before tightening, how much of it was, and who said
// so.
func (l *layout) ready() {
	var rows []sheet.Row
	for _, n := range l.View.Needs {
		said := l.saidReady(func(e run.Entry) bool { return n.ID == "" && e.Kind == n.Kind || e.Kind == "" && e.Place == nil })
		rows = append(rows, sheet.Row{Words: append([]string{l.words.Say(need(n)), sprint("%d / %d", n.Ready, n.Count)}, said...), Warns: !n.Met()})
	}
	for _, f := range l.Plan.Joint.Fasteners { // for one that another run of the job condemned
		said := l.saidReady(func(e run.Entry) bool { return e.Place != nil && e.Place.Fastener == f.ID })
		if said[0] != "" {
			rows = append(rows, sheet.Row{Words: append([]string{sprint(l.w.ReadyFor, f.ID), "1 / 1"}, said...)})
		}
	}
	columns := l.said(l.w.What)
	l.list(l.p.Run.Ready, slices.Insert(columns, 1, sheet.Column{Head: l.p.Records.Columns["state"], Share: 1.4}), rows)
}

// saidReady says who last reported that something is ready, and when.
func (l *layout) saidReady(is func(run.Entry) bool) []string {
	undone := map[string]bool{}
	for _, e := range slices.Backward(l.Entries) {
		switch {
		case e.Act == run.Undo:
			undone[e.Of] = true
		case e.Act == run.Ready && !undone[e.ID] && is(e.Entry):
			return []string{e.Who, l.when(e.Time)}
		}
	}
	return []string{"", ""}
}

// said are the columns of what somebody wrote.
func (l *layout) said(head string) []sheet.Column {
	c := l.p.Records.Columns
	return []sheet.Column{{Head: head, Share: 8}, {Head: c["who"], Share: 1.2}, {Head: c["when"], Share: 2.2}}
}

func (l *layout) readings() {
	var rows []sheet.Row
	for _, r := range l.View.Readings {
		where := ""
		if r.Place != nil {
			where = r.Place.Measured().Name()
		} else if st := l.step(r.Step); st != nil {
			where = strings.Join(st.IDs, ", ")
		}
		value := strings.TrimSpace(l.words.Figure(string(r.Value) + " " + cmp.Or(r.Unit, string(r.Read.Unit))))
		rows = append(rows, sheet.Row{Words: []string{l.stepNumber(r.Step), where, r.Measure, value, l.words.Figure(r.Limits), r.By, l.when(r.At), l.readingRemark(r)}, Warns: r.Outside})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Readings, []sheet.Column{
		{Head: c["step"], Share: 1}, {Head: l.w.Where, Share: 1.3}, {Head: l.w.What, Share: 3}, {Head: c["figure"], Share: 2, Bold: true}, {Head: words.Capital(l.words.Condition.Limit), Share: 2.2},
		{Head: c["who"], Share: 1.2}, {Head: c["when"], Share: 2.2}, {Head: l.w.Remark, Share: 3},
	}, rows)
}

// readingRemark says what a reading comes to: outside of what it may be, a shim to
// fit.
func (l *layout) readingRemark(r run.Reading) string {
	outside, shim := "", ""
	switch {
	case r.Verdict.Outside():
		outside = l.p.Seen.Outside
	case r.Outside:
		outside = l.p.Records.Outside
	}
	for _, found := range r.Findings() {
		if found.Code != measure.Outside {
			shim = l.words.Say(found)
		}
	}
	return words.Row(outside, shim, r.Note)
}

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
			letters += s.letter
		}
	}
	if letters == "" {
		return ""
	}
	return flag + letters
}

// used is a wrench, and what was done with it.
type used struct {
	number      string
	facts       *run.WrenchFacts
	count       int // torques set
	least, most float64
}

func (l *layout) wrenches() {
	var rows []sheet.Row
	for _, u := range l.used() {
		spans, calibrated, set := "", "", ""
		if f := u.facts; f != nil && f.Listed {
			calibrated = f.Calibrated
			if f.ToNm > 0 {
				spans = l.words.Figure(span(f.FromNm, f.ToNm))
			}
		}
		if u.count > 0 {
			set = l.words.Figure(sprint("%d × %s N·m", u.count, span(u.least, u.most)))
		}
		row := sheet.Row{Words: []string{u.number, spans, cmp.Or(calibrated, l.w.NotCalibrated), set, l.aboutWrench(u.number)}, Warns: calibrated == ""}
		if u.number == "" {
			row.Words[0], row.Words[2], row.Words[4] = "–", "", l.w.NoNumber
		}
		rows = append(rows, row)
	}
	l.list(l.w.Wrenches, []sheet.Column{
		{Head: l.words.Sheet.WrenchNumber, Share: 1.4, Bold: true}, {Head: l.w.Range, Share: 1.6}, {Head: l.w.Last, Share: 1.6},
		{Head: l.w.Used, Share: 2.2}, {Head: l.w.Remark, Share: 4},
	}, rows)
}

// used lists the wrenches by their entries, with the torques that were set by each.
// That of the seal stands for the torques of which no entry names one; where it has
// none either, they come last.
func (l *layout) used() []used {
	var all []used
	for _, e := range l.Entries {
		if e.Wrench == "" {
			continue
		}
		i := slices.IndexFunc(all, func(u used) bool { return u.number == e.Wrench })
		if i < 0 {
			all, i = append(all, used{number: e.Wrench}), len(all)
		}
		all[i].facts = e.WrenchFacts
	}
	for _, st := range l.View.Steps {
		number := st.Wrench
		if number == "" && l.View.Signed != nil {
			number = l.View.Signed.Wrench
		}
		if st.State != run.IsDone || st.TorqueNm == 0 {
			continue
		}
		i := slices.IndexFunc(all, func(u used) bool { return u.number == number })
		if i < 0 {
			all, i = append(all, used{number: number}), len(all)
		}
		u := &all[i]
		if u.count++; u.count == 1 {
			u.least, u.most = st.TorqueNm, st.TorqueNm
		}
		u.least, u.most = min(u.least, st.TorqueNm), max(u.most, st.TorqueNm)
	}
	return all
}

// span writes a range; one figure where both ends are the same.
func span(least, most float64) string {
	if least == most {
		return sprint("%.3g", least)
	}
	return sprint("%.3g–%.3g", least, most)
}

// aboutWrench says what was flagged of a wrench, once.
func (l *layout) aboutWrench(number string) string {
	var all []string
	for _, f := range l.View.Flags {
		if f.Finding.Values["wrench"] == number {
			if said := l.words.Say(f.Finding); !slices.Contains(all, said) {
				all = append(all, said)
			}
		}
	}
	return words.Row(all...)
}

// person is someone who took part.
type person struct {
	name        string
	count       int
	first, last time.Time
}

func (l *layout) people() {
	var all []person
	add := func(name string, at time.Time, made int) {
		if name == "" {
			return
		}
		i := slices.IndexFunc(all, func(p person) bool { return p.name == name })
		if i < 0 {
			all, i = append(all, person{name: name, first: at}), len(all)
		}
		all[i].count += made
		all[i].last = at
	}
	for _, e := range l.Entries {
		add(e.Who, e.Time, 1)
		add(e.Second, e.Time, 0) // who signs second or decides makes no entry by that
		add(e.DecidedBy, e.Time, 0)
	}
	var rows []sheet.Row
	for _, p := range all {
		rows = append(rows, sheet.Row{Words: []string{p.name, strconv.Itoa(p.count), l.when(p.first), l.when(p.last)}})
	}
	l.list(l.w.People, []sheet.Column{{Head: l.p.Records.Columns["who"], Share: 2, Bold: true}, {Head: l.w.Entries, Share: 1}, {Head: l.w.First, Share: 2}, {Head: l.w.Ended, Share: 2}}, rows)
}

// handOvers have what the next shift was told, in five lines.
func (l *layout) handOvers() {
	for _, h := range l.View.HandOvers {
		lines := l.p.Run.Lines
		rows := []sheet.Row{
			{Words: []string{lines["done"], sprint(l.p.Run.LineDone, h.Done.Steps, h.Done.Fasteners)}},
			{Words: []string{lines["open"], sprint(l.p.Run.LineOpen, h.Open.Steps, h.Open.Fasteners)}},
			{Words: []string{lines["found"], cmp.Or(l.foundThen(h.Found), l.p.Run.None)}},
			{Words: []string{lines["waiting"], cmp.Or(l.waitedFor(h.Waiting), l.p.Run.None)}},
			{Words: []string{lines["next"], words.Row(h.Next, h.Note)}},
		}
		l.list(l.p.Records.HandOvers, []sheet.Column{
			{Head: l.p.Run.HandOver, Share: 2, Bold: true}, {Head: sprint(l.p.Records.HandedTo, h.By, h.Next, l.when(h.At)), Share: 8},
		}, rows)
	}
}

func (l *layout) foundThen(found []run.TroubleSeen) string {
	var all []string
	for _, t := range found {
		all = append(all, strings.TrimSpace(strings.Join(t.IDs, ", ")+" "+l.troubleName(t)))
	}
	return strings.Join(all, "; ")
}

func (l *layout) waitedFor(list []run.Awaited) string {
	var all []string
	for _, a := range list {
		switch {
		case a.Step > 0:
			all = append(all, sprint("%s %s, %s", l.p.Records.Columns["step"], l.stepNumber(a.Step), l.when(a.Ends)))
		case a.Need != nil:
			all = append(all, l.words.Say(need(*a.Need)))
		case a.Ask != nil && a.Ask.Kind == run.AskNeighbours:
			all = append(all, sprint(l.p.Run.Neighbours, strings.Join(a.Ask.IDs, "+")))
		case a.Ask != nil:
			all = append(all, l.p.Run.AskRound)
		case a.Settle != "":
			all = append(all, l.unsettled(a.Settle))
		case a.Accept > 0:
			all = append(all, sprint(l.p.Run.LineAccept, a.Accept))
		}
	}
	return strings.Join(all, "; ")
}

// unsettled names a trouble that waits to be settled, by its entry.
func (l *layout) unsettled(entry string) string {
	for _, t := range l.View.Troubles {
		if t.Entry == entry {
			return sprint("%s: %s: %s", l.p.Run.Settle, strings.Join(t.IDs, "+"), l.troubleName(t))
		}
	}
	return l.p.Run.Settle
}

// need words what must be ready.
func need(n run.Need) finding.Finding {
	if n.ID != "" {
		return finding.Noted(run.NeedFastener, finding.Values{"id": n.ID, "kind": n.Kind, "trouble": n.Trouble.Term()})
	}
	if n.Gasket != "" {
		return finding.Noted(run.NeedGasket, finding.Values{"count": n.Count, "gasket": finding.Term(n.Gasket), "ready": n.Ready})
	}
	return finding.Noted(run.NeedKind, finding.Values{"kind": n.Kind, "count": n.Count, "ready": n.Ready})
}

// remarks are notes, and corrections with the entry that they correct.
func (l *layout) remarks() {
	for _, part := range []struct {
		title string
		list  []run.Seen
	}{{l.p.Records.Notes, l.View.Notes}, {l.p.Records.Corrections, l.View.Corrections}} {
		var rows []sheet.Row
		for _, s := range part.list {
			value := strings.TrimSpace(l.words.Figure(string(s.Value) + " " + s.Unit))
			rows = append(rows, sheet.Row{Words: []string{words.Row(l.toEntry(s.Of), value, s.Note, l.decidedBy(s.Mark)), s.By, l.when(s.At)}})
		}
		l.list(part.title, l.said(l.w.What), rows)
	}
}

// decidedBy says who decided, where another entered it.
func (l *layout) decidedBy(m run.Mark) string {
	if m.DecidedBy == "" {
		return ""
	}
	return l.decider(m)
}

// toEntry names an entry by what it said, of which fastener, and by whom.
func (l *layout) toEntry(id string) string {
	for _, e := range l.Entries {
		if e.ID == id {
			about := words.Row(l.p.Records.Acts[string(e.Act)], l.whereOf(e.Entry), filled(l.p.Records.Columns["step"]+" %s", l.stepNumber(e.Step)))
			return sprint(l.w.ToEntry, about, e.Who, l.when(e.Time))
		}
	}
	return ""
}

// whereOf names the place of an entry, else the fasteners of its step.
func (l *layout) whereOf(e run.Entry) string {
	if name := e.Place.Measured().Name(); name != "" {
		return name
	}
	if st := l.step(e.Step); st != nil {
		return strings.Join(st.IDs, ", ")
	}
	return ""
}

func (l *layout) prints() {
	var rows []sheet.Row
	for _, p := range l.View.Prints {
		out := ""
		if p.OutOfDate {
			out = l.p.Pattern.OutOfDate
		}
		rows = append(rows, sheet.Row{Words: []string{words.Row(l.p.Pattern.Sheets[p.Sheet], p.Fingerprint, out), p.By, l.when(p.At)}})
	}
	l.list(l.p.Records.Prints, l.said(l.w.What), rows)
}

// seal is who closed the record, and the end of the chain that shows that nothing
// was changed since.
func (l *layout) seal() { l.sealTable(l.statusLines()) }

func (l *layout) sealTable(lines []string) {
	var first, last int64
	if n := len(l.Entries); n > 0 {
		first, last = l.Entries[0].N, l.Entries[n-1].N
	}
	t := sheet.Table{Columns: []sheet.Column{{Head: l.p.Records.Seal, Share: 1}}}
	lines = append(slices.Clone(lines), sprint(l.p.Records.Head, grouped(l.Head)))
	if first > 0 { // a job may have none of its own
		lines = append(lines, sprint(l.w.Chain, first, last, l.HeadPlace))
	}
	for _, line := range append(lines, l.p.Records.HeadSays, sprint(l.w.Against, "drawdown records verify --against "+start(l.Head))) {
		t.Rows = append(t.Rows, sheet.Row{Words: []string{line}})
	}
	l.run.Room(12 * l.run.Pen.Paper.Line) // a seal stands on one page
	t.Draw(l.run)
}

// grouped writes a hash so that it can be read aloud.
func grouped(hash string) string {
	var groups []string
	for part := range slices.Chunk([]byte(hash), 4) {
		groups = append(groups, string(part))
	}
	return strings.Join(groups, " ")
}

// start is enough of a hash to type.
func start(hash string) string { return hash[:min(16, len(hash))] }
