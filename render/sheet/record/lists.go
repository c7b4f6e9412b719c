package record

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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
		rows = append(rows, sheet.Row{Words: []string{l.words.Say(f.Finding), cmp.Or(f.By, l.begunBy()), l.when(f.At)}, Warns: true})
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
	for _, f := range l.View.WasAccepted {
		rows = append(rows, sheet.Row{Words: []string{l.words.Say(f)}})
	}
	l.list(sprint(l.w.Accepted, m.By, l.when(m.At)), []sheet.Column{{Head: l.w.What, Share: 1}}, rows)
}

// ready is what had to be there before tightening, how much of it was, and who said
// so.
func (l *layout) ready() {
	var rows []sheet.Row
	listed := map[string]bool{}
	for _, n := range l.View.Needs {
		rows = append(rows, sheet.Row{Words: append([]string{l.words.Say(n.Finding()), sprint("%d / %d", n.Ready, n.Count)}, l.readyBy(n)...), Warns: !n.Met()})
		listed[n.ID] = true
	}
	for _, f := range l.Plan.Joint.Fasteners { // of a record without its job: for one that another run condemned
		said := l.saidReady(func(e run.Entry) bool { return e.Place != nil && e.Place.Fastener == f.ID })
		if said[0] != "" && !listed[f.ID] {
			rows = append(rows, sheet.Row{Words: append([]string{sprint(l.w.ReadyFor, f.ID), "1 / 1"}, said...)})
		}
	}
	columns := l.said(l.w.What)
	l.list(l.p.Run.Ready, slices.Insert(columns, 1, sheet.Column{Head: l.p.Records.Columns["state"], Share: 1.4}), rows)
}

// readyBy says who last reported that a need is met, and when; of a new fastener that
// nobody reported, who fitted it.
func (l *layout) readyBy(n run.Need) []string {
	said := l.saidReady(func(e run.Entry) bool {
		own := n.ID == "" && e.Kind == n.Kind || n.ID != "" && e.Place != nil && e.Place.Fastener == n.ID
		return own || e.Kind == "" && e.Place == nil || n.Among && n.Met() && e.Kind == n.Kind
	})
	for _, r := range l.View.Replaced {
		if said[0] == "" && n.Met() && slices.Contains(r.IDs, n.ID) {
			return []string{r.By, l.toTheSecond(r.At)}
		}
	}
	return said
}

// saidReady says who last reported that something is ready, and when.
func (l *layout) saidReady(is func(run.Entry) bool) []string {
	undone := map[string]bool{}
	for _, e := range slices.Backward(l.Entries) {
		switch {
		case e.Act == run.Undo:
			undone[e.Of] = true
		case e.Act == run.Ready && !undone[e.ID] && is(e.Entry):
			return []string{e.Who, l.toTheSecond(e.Time)} // to be told from the first step
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
		rows = append(rows, sheet.Row{Words: []string{l.stepNumber(r.Step), where, r.Measure, value, l.words.Figure(r.Limits), r.By, l.when(r.At), l.readingRemark(r)}, Warns: r.Outside && !r.Past})
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
	outside, shim, again := "", "", ""
	if r.Past {
		again = l.w.ReadAgain
	}
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
	return words.Row(outside, again, shim, r.Note)
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
			{Words: []string{lines["next"], words.Row(l.nextStep(h.NextStep), h.Next, h.Note)}},
		}
		l.list(l.p.Records.HandOvers, []sheet.Column{
			{Head: l.p.Run.HandOver, Share: 2, Bold: true}, {Head: sprint(l.p.Records.HandedTo, h.By, h.Next, l.when(h.At)), Share: 8},
		}, rows)
	}
}

// nextStep says what is to be done at a step; empty for none.
func (l *layout) nextStep(n int) string {
	st := l.step(n)
	if st == nil {
		return ""
	}
	return words.Row(l.p.Records.Columns["step"]+" "+l.stepNumber(n), strings.Join(st.IDs, ", "), l.toDo(*st))
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
			all = append(all, l.words.Say(a.Need.Finding()))
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
