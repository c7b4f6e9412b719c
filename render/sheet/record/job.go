package record

import (
	"cmp"
	"fmt"
	"strings"
	"time"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// Job is what there is to print of a job: an overview, and the record of each of
// its runs behind it.
type Job struct {
	ID, Of, Title       string
	Number, Order, Note string
	Who, Program        string
	Started             time.Time
	Closed              bool
	Entries             []Entry
	Runs                []Record
	Readings            []run.Reading // on the job itself
	Found               []Found       // the same
	Lines               []teardown.Line
	Head                string
	HeadPlace           int64
}

// Found is what was found on a joint, beside its runs.
type Found struct {
	Plan     plan.Plan
	Findings []run.Entry
}

// JobDocument lays out the record of a job, counted. The notes tell what found
// no room.
func JobDocument(j Job, ask Request) (scene.Document, []string) {
	pages, notes := overview(j, ask)
	for _, r := range j.Runs {
		more, left := Pages(r, ask)
		for i := range more {
			more[i].Name += "-" + r.ID
		}
		pages, notes = append(pages, more...), append(notes, left...)
	}
	sheet.Count(pages)
	return scene.Document{Title: j.Title, Subject: j.Number, Language: ask.Words.Language, Pages: pages}, notes
}

// overview lists the runs of a job, and what was entered on the job itself.
func overview(j Job, ask Request) (pages []scene.Page, notes []string) {
	if ask.Zone == nil {
		ask.Zone = time.UTC
	}
	l := &layout{ask: ask, words: ask.Words, w: ask.Words.Record, p: ask.Words.Page}
	l.Record = Record{ID: j.ID, Number: j.Number, Order: j.Order, Note: j.Note, Who: j.Who, Program: j.Program,
		Started: j.Started, Entries: j.Entries, Head: j.Head, HeadPlace: j.HeadPlace}
	l.Plan.Title, l.View.Of, l.View.Status = j.Title, j.Of, run.Open
	if j.Closed {
		l.View.Status = run.Sealed
	}
	h := l.heading()
	h.Subtitle, h.Identity = words.Row(filled(l.p.Home.Machine, j.Number), filled(l.p.Home.Order, j.Order)), words.Row(l.w.Job, j.ID)
	l.run = sheet.NewRun(ask.Paper, ask.Words, h, ask.Foot(ask.Words.Sheet.CheckedBy, ask.Words.Sheet.Date))
	l.facts()
	l.runs(j.Runs)
	l.View.Readings = j.Readings
	l.readings()
	for _, f := range j.Found {
		notes = append(notes, l.foundOn(f)...)
	}
	l.onJob(j)
	l.people()
	l.sealTable(nil)
	return l.run.Pages("job"), notes
}

// foundOn draws a joint with what was found on it, and lists that.
func (l *layout) foundOn(f Found) []string {
	seen := lettered.Of(f.Findings, l.words)
	notes := lettered.Draw(l.run, words.Row(l.p.Records.Found, f.Plan.Title), f.Plan, lettered.Spots(seen), l.ask.Request)
	lettered.List(l.run, "", f.Plan.Joint, seen, l.words, l.ask.Zone)
	return notes
}

// runs lists the runs of a job in the order in which they were started.
func (l *layout) runs(runs []Record) {
	var rows []sheet.Row
	for _, r := range runs {
		sealed := ""
		if s := r.View.Signed; s != nil {
			sealed = words.Row(s.By, s.Second, l.when(s.At))
		}
		rows = append(rows, sheet.Row{
			Words: []string{r.ID, r.Plan.Title, l.w.Work[string(r.View.Direction)], l.p.Home.States[string(r.View.Status)], l.when(r.Started), sealed},
			Bold:  r.View.Status == run.Open,
		})
	}
	c := l.p.Records.Columns
	l.list(l.p.Common.Records, []sheet.Column{
		{Head: "", Share: 1}, {Head: l.p.Records.Joint, Share: 3.4}, {Head: l.w.What, Share: 1.8}, {Head: c["state"], Share: 1.8},
		{Head: l.w.Started, Share: 2.3}, {Head: l.p.Records.Seal, Share: 3},
	}, rows)
}

// line names a line of the lists by its number; empty for none.
func (j Job) line(number int) string {
	for _, l := range j.Lines {
		if l.Number == number {
			return fmt.Sprintf("%d %s", number, cmp.Or(l.Part, l.Note, l.Title))
		}
	}
	return ""
}

// onJob are the entries on the job itself.
func (l *layout) onJob(j Job) {
	var rows []sheet.Row
	for _, e := range l.Entries {
		place := e.Place.Measured().Name()
		value := strings.TrimSpace(l.words.Figure(string(e.Value) + " " + e.Unit))
		act := cmp.Or(l.p.Records.Acts[string(e.Act)], string(e.Act))
		step := j.line(e.Step)
		rows = append(rows, sheet.Row{Words: []string{words.Row(act, step, l.toEntry(e.Of), e.Joint, place, l.p.Seen.Names[string(e.Found)], e.Measure, value, e.Kind, e.To, e.Note, e.Kept), e.Who, l.p.Paper.When(e.Source == run.OnPaper, e.Day, l.when(e.Time))}})
		if e.Revision == nil {
			continue
		}
		for _, d := range e.Revision.Differences {
			what := words.Row(d.Joint, l.p.Job.Changes[string(d.What)])
			rows = append(rows, sheet.Row{Words: []string{sprint(l.p.Job.Change, what, d.Before, d.After), "", ""}})
		}
	}
	l.list(l.w.Job, l.said(l.w.What), rows)
}
