package job

import (
	"encoding/json"
	"slices"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/render"
	"drawdown/render/scene"
	sheet "drawdown/render/sheet/record"
	"drawdown/render/sheet/shopping"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// Kept is the store of records: it has what they were started from, by its SHA-256,
// and the job that a run belongs to.
type Kept interface {
	File(sum string) ([]byte, error)
	Export(id string) (record.Export, error)
	Photo(sum string) ([]byte, error)
}

// RecordSheet draws the record of a run, or of a job with its runs behind it. Times are
// printed in the zone.
func RecordSheet(e record.Export, kept Kept, zone *time.Location, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	request := sheet.Request{Request: ask.Request, Zone: zone}
	var document scene.Document
	var notes []string
	if e.Kind == record.JobKind {
		j, err := jobRecord(e, kept)
		if err != nil {
			return nil, nil, err
		}
		document, notes = sheet.JobDocument(j, request)
	} else {
		of, err := jobOf(e, kept)
		if err != nil {
			return nil, nil, err
		}
		r, err := runRecord(e, of, kept)
		if err != nil {
			return nil, nil, err
		}
		if e.Job != "" {
			if r.View, err = since(r.View, of, e); err != nil {
				return nil, nil, err
			}
		}
		r.Photos = photosOf(kept, photoSums(r.Entries))
		document, notes = sheet.Document(r, request)
	}
	files, err := ask.files(document, e.ID, "", e.Last.Format(time.DateOnly))
	return files, notes, err
}

// ShoppingList draws the list of what the rebuild of a job needs.
func ShoppingList(l shopping.List, ask Printing) ([]render.File, error) {
	ask = ask.counting()
	return ask.files(shopping.Document(l, ask.Request), l.ID, "shopping", "")
}

func jobRecord(e record.Export, kept Kept) (sheet.Job, error) {
	j := sheet.Job{
		ID: e.ID, Of: e.Of, Title: e.Title, Number: e.Number, Order: e.Order, Note: e.Note, Who: e.Who, Program: e.Program,
		Started: e.Started, Entries: entriesOf(e),
	}
	if e.Chain != nil {
		j.Head, j.HeadPlace = e.Chain.Hash, e.Chain.Place
	}
	for _, one := range e.Runs {
		one.Chain = e.Chain
		r, err := runRecord(one, e, kept)
		if err != nil {
			return j, err
		}
		j.Runs = append(j.Runs, r)
	}
	var work teardown.Work
	if err := json.Unmarshal(e.Plan, &work); err != nil {
		return j, err
	}
	j.View = viewOf(work, runEntries(e), j.Runs)
	for i, r := range j.Runs {
		j.Runs[i].View = j.View.Since(r.View)
	}
	made, err := thawed(filesOf(e, work), e.Of, kept.File)
	if err != nil {
		return j, err
	}
	for _, joint := range j.View.Joints {
		if found := j.View.FindingsOf(joint.Of); len(found) > 0 {
			j.Found = append(j.Found, sheet.Found{Joint: joint.Of, Plan: planOf(made, joint.Of), Findings: found})
		}
	}
	sums := photoSums(j.Entries)
	for _, r := range j.Runs {
		sums = append(sums, photoSums(r.Entries)...)
	}
	j.Photos = photosOf(kept, sums)
	return j, nil
}

// filesOf are the files that a job goes by at its end.
func filesOf(e record.Export, work teardown.Work) map[string]string {
	if adopted := work.Replay(runEntries(e)).Adopted(); adopted != nil {
		return adopted.Revision.Files
	}
	return e.Files
}

// viewOf is a job with what its runs did and saw, and what is open.
func viewOf(work teardown.Work, entries []run.Entry, runs []sheet.Record) teardown.View {
	state := work.Replay(entries)
	var facts []teardown.RunFact
	views := map[string][]run.View{}
	tightened := map[string]run.View{}
	for _, r := range runs {
		v := r.View
		facts = append(facts, teardown.RunFact{Run: r.ID, Of: v.Of, Direction: v.Direction, Again: r.Again, Status: v.Status})
		views[v.Of] = append(views[v.Of], v)
		if v.Direction == run.Tighten && r.Again == "" && v.Status != run.Voided {
			tightened[v.Of] = v
		}
	}
	var needs []teardown.Need
	for _, joint := range work.Joints {
		v, there := tightened[joint.Of]
		if !there {
			needs = append(needs, work.JointNeeds(joint.Of, run.FactsOf(views[joint.Of]).Condemned, state.ReadyFor(joint.Of))...)
			continue
		}
		for _, n := range v.Needs {
			needs = append(needs, teardown.Need{Joint: joint.Of, Need: n})
		}
	}
	view := state.View(facts, needs)
	for _, r := range runs {
		if r.View.Status != run.Voided {
			view.AddRun(r.ID, r.View)
		}
	}
	state.AddPoints(&view)
	return view
}

// jobOf returns the job of a run; an empty one where it belongs to none.
func jobOf(e record.Export, kept Kept) (record.Export, error) {
	if e.Job == "" {
		return record.Export{}, nil
	}
	return kept.Export(e.Job)
}

// since shows a run with what was read of its joint later in the job.
func since(v run.View, of, e record.Export) (run.View, error) {
	last := of.Last
	for _, r := range of.Runs {
		if r.Last.After(last) {
			last = r.Last
		}
	}
	facts, err := factsBy(of, e, last)
	return v.Since(facts.Measured), err
}

// factsThen is what a job knew for one of its runs when that run had its last entry.
func factsThen(of, e record.Export) (run.JobFacts, error) { return factsBy(of, e, e.Last) }

// factsBy is what a job knew for one of its runs at a moment.
func factsBy(of, e record.Export, moment time.Time) (run.JobFacts, error) {
	var views []run.View
	for _, other := range of.Runs {
		if other.ID == e.ID || other.Of != e.Of {
			continue
		}
		other.Entries = until(other.Entries, moment)
		state, err := other.Replay()
		if err != nil {
			return run.JobFacts{}, err
		}
		views = append(views, state.At(moment))
	}
	facts := run.FactsOf(views)
	var work teardown.Work
	if err := json.Unmarshal(of.Plan, &work); err != nil {
		return facts, err
	}
	of.Entries = until(of.Entries, moment)
	then := work.Replay(runEntries(of))
	facts.Measured = append(facts.Measured, then.MeasuredOn(e.Of)...)
	facts.Ready, facts.Out = then.ReadyFor(e.Of), then.OutOfJoint(e.Of)
	return facts, nil
}

func until(list []record.Kept, last time.Time) []record.Kept {
	return slices.DeleteFunc(slices.Clone(list), func(k record.Kept) bool { return k.Time.After(last) })
}

func runRecord(e, of record.Export, kept Kept) (sheet.Record, error) {
	made, err := thawed(e.Files, e.Of, kept.File)
	if err != nil {
		return sheet.Record{}, err
	}
	state, err := e.Replay()
	if err != nil {
		return sheet.Record{}, err
	}
	if e.Job != "" && e.Work == run.Tighten {
		facts, err := factsThen(of, e)
		if err != nil {
			return sheet.Record{}, err
		}
		state.InJob(facts)
	}
	if !made.Sound() { // this program reads the file no more; its record stays
		w := state.Work()
		made.Plan = plan.Plan{Heading: plan.Heading{Name: w.Of, Title: w.Title, Machine: w.Machine, Revision: w.Revision, Fingerprint: w.Fingerprint}}
	}
	r := sheet.Record{
		ID: e.ID, Plan: made.Plan, View: state.At(e.Last), Entries: entriesOf(e),
		Number: e.Number, Order: e.Order, Note: e.Note, Job: e.Job, Again: e.Again, Who: e.Who, Program: e.Program, Started: e.Started,
	}
	if e.Chain != nil {
		r.Head, r.HeadPlace = e.Chain.Hash, e.Chain.Place
	}
	return r, nil
}

func runEntries(e record.Export) (list []run.Entry) {
	for _, k := range e.Entries {
		list = append(list, k.Entry)
	}
	return list
}

func entriesOf(e record.Export) (list []sheet.Entry) {
	for _, k := range e.Entries {
		list = append(list, sheet.Entry{Entry: k.Entry, N: k.Place})
	}
	return list
}
