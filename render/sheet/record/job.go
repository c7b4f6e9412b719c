package record

import (
	"time"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// Job is what there is to print of a job: first what a customer asks and a lead signs,
// then the work on each joint, then the steps between the joints.
type Job struct {
	ID, Of, Title       string
	Number, Order, Note string
	Who, Program        string
	Started             time.Time
	Entries             []Entry
	Runs                []Record
	View                teardown.View // with its runs and what is open
	Found               []Found       // by joint
	Head                string
	HeadPlace           int64
	Photos              map[string]Photo // thumbnails of all its entries and runs
}

// Found is what was found on a joint, in all its runs and beside them.
type Found struct {
	Joint    string
	Plan     plan.Plan
	Findings []run.Entry
}

// JobDocument lays out the record of a job, counted. The notes tell what found no room.
func JobDocument(j Job, ask Request) (scene.Document, []string) {
	if ask.Zone == nil {
		ask.Zone = time.UTC
	}
	l := &layout{ask: ask, words: ask.Words, w: ask.Words.Record, p: ask.Words.Page}
	l.Record = Record{ID: j.ID, Number: j.Number, Order: j.Order, Note: j.Note, Who: j.Who, Program: j.Program,
		Started: j.Started, Entries: j.Entries, Head: j.Head, HeadPlace: j.HeadPlace, Photos: j.Photos}
	l.Plan.Title, l.View.Status = j.Title, run.Open
	if j.View.Status == teardown.Closed {
		l.View.Status = run.Sealed
	}
	h := l.heading()
	h.Subtitle, h.Identity = words.Row(j.View.Machine, filled(l.p.Home.Machine, j.Number), filled(l.p.Home.Order, j.Order)), words.Row(l.w.Job, j.ID)
	l.run = sheet.NewRun(ask.Paper, ask.Words, h, ask.Foot())
	notes := l.job(j)
	pages := l.run.Pages("job")
	sheet.Count(pages)
	return scene.Document{Title: j.Title, Subject: j.Number, Language: ask.Words.Language, Pages: pages}, notes
}

// job lays out the parts in the order in which they are asked for.
func (l *layout) job(j Job) (notes []string) {
	l.jobStatus(j)
	l.result(j)
	l.signatures()
	l.seenAndDone(j)
	l.pointsOf(j)
	l.jobFacts(j)
	for _, f := range j.Found {
		notes = append(notes, l.foundOn(f)...)
	}
	l.allReadings(j)
	l.fittedNew(j)
	l.joints(j)
	l.toldOnJob(j)
	l.linesDone(j)
	own := l.Record
	l.run.Turn()
	for _, r := range j.Runs {
		l.Record = r
		l.seen = l.allSeen()
		l.brief()
	}
	l.Record, l.seen = own, nil
	l.everybody(j)
	l.sealTable(nil)
	return notes
}

// foundOn draws a joint with what was found on it, and lists that.
func (l *layout) foundOn(f Found) []string {
	seen := lettered.Of(f.Findings, l.words)
	notes := lettered.Draw(l.run, words.Row(l.p.Records.Found, f.Plan.Title), f.Plan, lettered.Spots(seen), l.ask.Request)
	lettered.List(l.run, "", f.Plan.Joint, seen, l.words, l.ask.Zone)
	return notes
}
