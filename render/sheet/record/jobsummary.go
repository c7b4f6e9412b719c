package record

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// jobStatus says in large type whether the job is closed.
func (l *layout) jobStatus(j Job) {
	said := l.w.JobOpen
	if m := j.View.ClosedBy; m != nil {
		said = words.Row(sprint(l.p.Job.ClosedBy, m.By, l.when(m.At)), m.Note)
	}
	l.run.Set(l.run.Pen.Paper.Strong(), said)
	l.run.Y += 1.5
}

// result counts what the job came to.
func (l *layout) result(j Job) {
	t := sheet.Table{Columns: []sheet.Column{{Head: l.w.Result, Share: 5, Bold: true}, {Head: "", Share: 6}}}
	add := func(head string, count, of int) {
		if of > 0 {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{head, sprint(l.w.CountOf, count, of)}, Warns: count < of})
		}
	}
	off, on := 0, 0
	for _, line := range j.View.Teardown {
		if line.Joint != "" && line.State == teardown.IsDone {
			off++
		}
	}
	for _, line := range j.View.Rebuild {
		if line.Joint != "" && line.State == teardown.IsDone {
			on++
		}
	}
	if off > 0 {
		add(l.w.JointsOff, off, len(j.View.Joints))
	}
	add(l.w.JointsOn, on, len(j.View.Joints))
	settled := 0
	for _, c := range j.View.Condemned {
		if c.Settled() {
			settled++
		}
	}
	add(l.w.CondemnedDone, settled, len(j.View.Condemned))
	if row, any := l.atEnd(j.View.AtEnd()); any {
		t.Rows = append(t.Rows, row)
	}
	if open := notTightened(j); len(open) > 0 && on > 0 {
		t.Rows = append(t.Rows, sheet.Row{Words: []string{l.w.JointsNotDone, strings.Join(open, ", ")}, Warns: true})
	}
	l.run.Close = true
	t.Draw(l.run)
	l.run.Close = false
}

// atEnd counts the values within their limits, and those that say nothing of the end.
func (l *layout) atEnd(n teardown.AtEnd) (row sheet.Row, any bool) {
	said := []string{sprint(l.w.CountOf, n.Within, n.Limited)}
	if n.Outdated > 0 {
		said = append(said, sprint(l.w.OlderThanWork, n.Outdated))
	}
	if n.Missing > 0 {
		said = append(said, sprint(l.w.NeverTaken, n.Missing))
	}
	return sheet.Row{Words: []string{l.w.ValuesWithin, strings.Join(said, "; ")}, Warns: n.Within < n.Limited || n.Missing > 0}, n.Limited+n.Missing > 0
}

// notTightened names the joints that were not tightened in the job.
func notTightened(j Job) (all []string) {
	for _, line := range j.View.Rebuild {
		if line.Joint != "" && line.State != teardown.IsDone {
			all = append(all, line.Title)
		}
	}
	return all
}

// signatures are for whoever answers for the work, and for who takes it over.
func (l *layout) signatures() {
	t := sheet.Table{Ruled: true, Columns: []sheet.Column{
		{Head: "", Share: 2, Bold: true}, {Head: l.w.SignName, Share: 3}, {Head: l.w.SignHere, Share: 4}, {Head: l.words.Sheet.Date, Share: 2},
	}}
	for _, who := range []string{l.w.SignShop, l.w.SignCustomer, l.words.Sheet.CheckedBy} {
		t.Rows = append(t.Rows, sheet.Row{Words: []string{who, "", "", ""}})
	}
	l.run.Sentence(l.w.SignSays)
	l.run.Y++
	t.Draw(l.run)
}

// pointsOf lists what is open or outside its limits, with who accepted it and why.
func (l *layout) pointsOf(j Job) {
	var rows []sheet.Row
	for _, p := range j.View.Points {
		row := sheet.Row{Words: []string{words.Capital(l.words.Say(p.Finding)), l.w.NotAccepted, "", ""}, Warns: true}
		if m := p.Accepted; m != nil {
			row.Words[1], row.Words[2], row.Words[3] = m.Note, m.By, l.when(m.At)
		}
		rows = append(rows, row)
	}
	c := l.p.Records.Columns
	l.run.Close = true
	l.list(l.w.OpenPoints, []sheet.Column{
		{Head: l.w.What, Share: 6.4}, {Head: l.w.AcceptedWhy, Share: 3}, {Head: c["who"], Share: 0.9}, {Head: c["when"], Share: 1.9},
	}, rows)
	l.run.Close = false
}

// seenAndDone is what was found, and beside it what was done about it.
func (l *layout) seenAndDone(j Job) {
	var rows []sheet.Row
	add := func(where, what, done, by string, open bool) {
		rows = append(rows, sheet.Row{Words: []string{where, what, done, by}, Warns: open})
	}
	for _, e := range j.View.Findings {
		if e.Act == run.Find {
			what := l.words.With(l.p.Seen.Names[string(e.Found)], e.Note)
			add(words.Row(l.jointOf(j, e), j.where(e, l.words)), words.Row(what, l.photoOf(e.Photo)), l.becameOf(j, e), l.by(e.Who, l.when(e.Time)), false)
		}
	}
	for _, r := range j.Runs {
		if r.View.Status == run.Voided {
			continue
		}
		l.Record = r
		for _, t := range r.View.Troubles {
			done, open := l.w.NotYet, true
			if t.Settled != nil {
				done, open = words.Row(l.decided(t), l.settled(*t.Settled)), false
			}
			if c := j.condemned(t.Entry); c != nil {
				done, open = words.Row(done, l.successor(*c)), open || !c.Settled()
			}
			what := words.Row(l.words.With(l.troubleName(t), t.Note), l.photoOf(t.Photo))
			add(words.Row(r.Plan.Title, strings.Join(t.IDs, ", ")), what, done, l.by(t.By, l.when(t.At)), open)
		}
	}
	l.Record = Record{Entries: j.Entries}
	for _, s := range j.View.SentOut {
		done := l.w.NotYet
		if s.Back != nil {
			done = words.Row(s.Back.Note, l.by(s.Back.By, l.when(s.Back.At)))
		}
		add(s.Part, words.Row(sprint(l.p.MachineShop.To, s.To), s.Note), done, l.by(s.By, l.when(s.At)), s.Back == nil)
	}
	c := l.p.Records.Columns
	l.list(l.w.FoundAndDone, []sheet.Column{
		{Head: l.w.Where, Share: 2.4, Bold: true}, {Head: l.p.Seen.What, Share: 3.8}, {Head: l.w.Settled, Share: 4.2}, {Head: c["who"], Share: 1.7},
	}, rows)
	l.restore(j)
	l.jobPhotos(j)
}

// jobPhotos are the photos of what was found, on the job and in its runs.
func (l *layout) jobPhotos(j Job) {
	var list []captioned
	for _, e := range j.View.Findings {
		if e.Photo != "" {
			what := l.p.Seen.Names[string(e.Found)] + l.p.Trouble.Names[string(e.Trouble)]
			list = append(list, captioned{e.Photo, words.Row(l.photoName(e.Photo), l.jointOf(j, e), j.where(e, l.words), what)})
		}
	}
	l.photos(list)
}

// restore puts the job itself back where a run was looked at.
func (l *layout) restore(j Job) {
	l.Record = Record{ID: j.ID, Number: j.Number, Order: j.Order, Note: j.Note, Who: j.Who, Program: j.Program,
		Started: j.Started, Entries: j.Entries, Head: j.Head, HeadPlace: j.HeadPlace, Photos: j.Photos}
	l.Plan.Title = j.Title
}

// by names a person with a moment.
func (l *layout) by(who, when string) string { return words.Row(who, when) }

// jointOf is the title of the joint of an entry; empty for the whole machine.
func (l *layout) jointOf(j Job, e run.Entry) string {
	if of := j.View.JointOf(e); of != "" {
		return j.View.TitleOf(of)
	}
	return ""
}

// where names the place of an entry by what lies near it.
func (j Job) where(e run.Entry, c *words.Catalogue) string {
	spot := lettered.At("", e.Place)
	of := j.View.JointOf(e)
	for _, f := range j.Found {
		if f.Joint == of {
			return cmp.Or(spot.Near(f.Plan.Joint, c), c.Page.Seen.WholePart)
		}
	}
	return strings.Join(spot.IDs, ", ")
}

// condemned is what became of the fastener that an entry condemned; nil for none.
func (j Job) condemned(entry string) *teardown.Condemned {
	for _, c := range j.View.Condemned {
		if c.Entry == entry {
			return &c
		}
	}
	return nil
}

// successor says what took the place of a condemned fastener, or what was done to its
// hole.
func (l *layout) successor(c teardown.Condemned) string {
	switch {
	case c.Trouble == run.HoleThread && c.Repaired == nil:
		return l.w.NotYet
	case c.Trouble == run.HoleThread:
		return "" // how it was settled says it
	case c.Replaced != nil:
		return words.Row(l.w.Scrapped, sprint(l.w.New, c.Replaced.By, l.when(c.Replaced.At)))
	case c.Tightened != "" && c.Among > 0:
		return words.Row(l.w.Scrapped, sprint(l.w.NewAmong, c.Among, c.Tightened, c.Sealed.By, l.when(c.Sealed.At)))
	case c.Tightened != "":
		return words.Row(l.w.Scrapped, sprint(l.w.NewIn, c.Tightened, c.Sealed.By, l.when(c.Sealed.At)))
	}
	return words.Row(l.w.Scrapped, l.w.NoNew)
}

// becameOf says what was done about a finding: the gasket of its joint was fitted new,
// or a part of it was worked on by the machine shop.
func (l *layout) becameOf(j Job, e run.Entry) string {
	of := j.View.JointOf(e)
	var all []string
	for _, s := range j.View.Supplies {
		if e.Found == run.BlownThrough && s.Sort == teardown.Gasket && s.Fitted != nil && slices.Contains(s.Joints, of) {
			all = append(all, sprint(l.w.FittedNew, l.words.Term(finding.Term(s.What)), s.Fitted.By, l.when(s.Fitted.At)))
		}
	}
	for _, s := range j.View.SentOut {
		if of != "" && s.Joint == of && s.Back != nil && !s.At.Before(e.Time) {
			all = append(all, words.Row(s.To, s.Back.Note))
		}
	}
	return cmp.Or(strings.Join(all, "; "), "–")
}

// photoOf refers to a photo; empty for none.
func (l *layout) photoOf(sum string) string {
	if sum == "" {
		return ""
	}
	return l.photoName(sum)
}

// jobFacts are what the record is about.
func (l *layout) jobFacts(j Job) {
	t := sheet.Table{Columns: []sheet.Column{{Head: l.w.Job, Share: 2, Bold: true}, {Head: j.ID, Share: 6}}}
	add := func(head, text string) {
		if text != "" {
			t.Rows = append(t.Rows, sheet.Row{Words: []string{head, text}})
		}
	}
	add(l.p.Records.Machine, words.Row(j.Number, j.View.Machine))
	add(l.w.Order, j.Order)
	add(l.w.Remark, j.Note)
	add(l.w.Started, words.Row(l.when(j.Started), j.Who))
	if n := len(j.Entries); n > 0 {
		add(l.w.Ended, words.Row(l.when(j.Entries[n-1].Time), j.Entries[n-1].Who))
	}
	add(l.w.Times, l.zone())
	add(l.w.Program, j.Program)
	l.run.Close = true
	t.Draw(l.run)
	l.run.Close = false
}

// allReadings lists what was measured, the first and the last side by side.
func (l *layout) allReadings(j Job) {
	var rows []sheet.Row
	for _, r := range j.View.Readings() {
		first, last := r.Taken[0], r.Last()
		before, atLast, outdated := "", l.readFigure(last), j.View.Outdated(r)
		if len(r.Taken) > 1 || outdated {
			before = l.readFigure(first)
		}
		if outdated {
			atLast = l.w.NotSince
		}
		rows = append(rows, sheet.Row{Words: []string{
			words.Row(l.titled(j, r.Joint), r.Place), r.What, l.words.Figure(last.Limits), before, atLast, last.Who, l.when(last.Time), l.readingRemark(last.Reading()),
		}, Warns: last.Verdict.Outside() || outdated})
	}
	c := l.p.Records.Columns
	l.list(l.p.Records.Readings, []sheet.Column{
		{Head: l.w.Where, Share: 2.6}, {Head: l.w.What, Share: 2.4}, {Head: words.Capital(l.words.Condition.Limit), Share: 2}, {Head: l.w.Before, Share: 1.4}, {Head: l.w.AtLast, Share: 1.4, Bold: true},
		{Head: c["who"], Share: 0.9}, {Head: c["when"], Share: 1.9}, {Head: l.w.Remark, Share: 2.4},
	}, rows)
}

func (l *layout) titled(j Job, of string) string {
	if of == "" {
		return ""
	}
	return j.View.TitleOf(of)
}

func (l *layout) readFigure(m teardown.Measured) string {
	figure := strings.TrimSpace(l.words.Figure(string(m.Value) + " " + cmp.Or(m.Unit, string(m.Read.Unit))))
	if m.Shim != "" {
		return words.Row(figure, sprint(l.w.ShimWas, l.words.Figure(string(m.Shim))))
	}
	return figure
}

// fittedNew lists what had to be new: how much of it was there, and who fitted it.
func (l *layout) fittedNew(j Job) {
	var rows []sheet.Row
	for _, n := range j.View.Needs {
		if n.ID == "" && !j.View.Named(n) {
			what := sprint(l.p.Run.NeedKind, n.Count, n.Kind)
			if n.Gasket != "" {
				what = sprint(l.p.Run.NeedGasket, n.Count, l.words.Term(finding.Term(n.Gasket)))
			}
			rows = append(rows, sheet.Row{Words: []string{j.View.TitleOf(n.Joint), what, sprint("%d / %d", n.Ready, n.Count), l.fittedBy(n.Fitted)}, Warns: n.Waits()})
		}
	}
	for _, s := range j.View.Supplies {
		var joints []string
		for _, of := range s.Joints {
			joints = append(joints, j.View.TitleOf(of))
		}
		row := sheet.Row{Words: []string{words.Row(s.Part, strings.Join(joints, ", ")), l.words.Term(finding.Term(s.What)), sprint("%d / %d", s.Ready, max(1, s.Count)), ""}, Warns: s.UsedOnce() && s.Fitted == nil}
		row.Words[3] = l.fittedBy(s.Fitted)
		rows = append(rows, row)
	}
	if !slices.ContainsFunc(rows, func(r sheet.Row) bool { return r.Words[3] != "" || !strings.HasPrefix(r.Words[2], "0 ") }) {
		return // nobody said anything of it
	}
	l.list(l.w.NewParts, []sheet.Column{
		{Head: l.p.Shopping.For, Share: 4}, {Head: l.w.What, Share: 4}, {Head: l.p.Shopping.Ready, Share: 1.3}, {Head: l.p.Job.OneFitted, Share: 2.4},
	}, rows)
}

// fittedBy says who fitted something; empty where nobody did.
func (l *layout) fittedBy(m *run.Mark) string {
	if m == nil {
		return ""
	}
	return words.Row(m.By, l.when(m.At))
}

// joints lists the joints with the runs by which they were loosened and tightened.
func (l *layout) joints(j Job) {
	var rows []sheet.Row
	for _, joint := range j.View.Joints {
		row := sheet.Row{Words: []string{joint.Title, "", "", "", ""}}
		void := []string{}
		for _, r := range j.Runs {
			v := r.View
			if v.Of != joint.Of {
				continue
			}
			if v.Status == run.Voided {
				void = append(void, r.ID)
				continue
			}
			row.Words[3] = cmp.Or(r.Plan.Revision, row.Words[3])
			column, said := 1, words.Row(r.ID, l.p.Home.States[string(v.Status)])
			if v.Direction == run.Tighten {
				column = 2
			}
			if s := v.Signed; s != nil {
				said = words.Row(r.ID, s.By, s.Second, l.when(s.At))
			}
			if onPaper(v) {
				said = words.Row(said, l.w.FromPaper)
			}
			row.Words[column] = words.Row(row.Words[column], said)
			row.Bold = row.Bold || v.Status == run.Open
		}
		if len(void) > 0 {
			row.Words[4] = sprint("%s: %s", l.p.Home.States[string(run.Voided)], strings.Join(void, ", "))
		}
		if j.View.TightenedOnly(joint.Of) && len(j.View.Joints) > 1 {
			row.Warns, row.Words[4] = true, words.Row(l.w.NeverLoosened, row.Words[4])
		}
		rows = append(rows, row)
	}
	l.list(l.w.Joints, []sheet.Column{
		{Head: l.p.Records.Joint, Share: 2.6, Bold: true}, {Head: words.Capital(l.w.Work[string(run.Loosen)]), Share: 3}, {Head: words.Capital(l.w.Work[string(run.Tighten)]), Share: 3},
		{Head: l.w.Revision, Share: 1}, {Head: l.w.Remark, Share: 1.8},
	}, rows)
}

// onPaper says whether steps of a run were entered from paper.
func onPaper(v run.View) bool {
	return slices.ContainsFunc(v.Steps, func(s run.Step) bool { return s.Source == run.OnPaper })
}

// toldOnJob are hand overs, notes, corrections and newer files, in their order.
func (l *layout) toldOnJob(j Job) {
	var rows []sheet.Row
	for _, e := range j.Entries {
		if !slices.Contains([]run.Act{run.HandOver, run.Remark, run.Correct, run.Adopt, run.Undo}, e.Act) {
			continue
		}
		act := cmp.Or(l.p.Records.Acts[string(e.Act)], string(e.Act))
		rows = append(rows, sheet.Row{Words: []string{words.Row(act, l.toEntry(e.Of), e.To, e.Note), e.Who, l.p.Paper.When(e.Source == run.OnPaper, e.Day, l.when(e.Time))}})
		if e.Revision == nil {
			continue
		}
		for _, d := range e.Revision.Differences {
			for _, p := range d.Parts() {
				stage := ""
				if p.Stage > 0 {
					stage = l.p.Records.Columns["stage"] + " " + strconv.Itoa(p.Stage)
				}
				what := words.Row(l.titled(j, d.Joint), l.p.Job.Changes[string(d.What)], stage)
				rows = append(rows, sheet.Row{Words: []string{sprint(l.p.Job.Change, what, p.Before, p.After), "", ""}})
			}
		}
	}
	l.list(words.Row(l.p.Records.HandOvers, l.p.Records.Notes), l.said(l.w.What), rows)
}

// linesDone lists the steps between the joints, as they were ticked.
func (l *layout) linesDone(j Job) {
	for _, part := range []struct {
		title string
		lines []teardown.LineNow
	}{{l.p.Job.Teardown, j.View.Teardown}, {l.p.Job.Rebuild, j.View.Rebuild}} {
		var rows []sheet.Row
		for _, line := range part.lines {
			if line.Joint != "" || line.State == teardown.ToDo {
				continue
			}
			rows = append(rows, sheet.Row{Words: []string{strconv.Itoa(line.Number), line.What(), line.By, l.p.Paper.When(line.Source == run.OnPaper, line.Day, l.when(line.At)), j.noteOf(line.Entry)}})
		}
		c := l.p.Records.Columns
		l.run.Close = true
		l.list(words.Row(part.title, l.p.Records.Steps), []sheet.Column{{Head: c["step"], Share: 0.9}, {Head: l.w.What, Share: 7}, {Head: c["who"], Share: 1}, {Head: c["when"], Share: 2.2}, {Head: l.w.Remark, Share: 2}}, rows)
		l.run.Close = false
	}
}

// noteOf is the note of an entry, such as the reason of a step out of order.
func (j Job) noteOf(entry string) string {
	for _, e := range j.Entries {
		if e.ID == entry {
			return e.Note
		}
	}
	return ""
}

// everybody counts the entries of each person over the job and its runs.
func (l *layout) everybody(j Job) {
	own := l.Entries
	for _, r := range j.Runs {
		l.Entries = append(l.Entries[:len(l.Entries):len(l.Entries)], r.Entries...)
	}
	slices.SortStableFunc(l.Entries, func(a, b Entry) int { return a.Time.Compare(b.Time) })
	l.people()
	l.Entries = own
}
