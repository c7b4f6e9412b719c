package job

import (
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/render"
	"drawdown/render/scene"
	sheets "drawdown/render/sheet"
	sheet "drawdown/render/sheet/record"
	"drawdown/sequence/plan"
)

// RecordSheet draws the record of a run. The plan is that of the files that the
// run was started from; times are printed in the zone.
func RecordSheet(e record.Export, made plan.Plan, zone *time.Location, ask Printing) ([]render.File, []string, error) {
	r, err := recordOf(e, made)
	if err != nil {
		return nil, nil, err
	}
	ask = ask.counting()
	document, notes := sheet.Document(r, sheet.Request{Request: ask.Request, Zone: zone})
	files, err := ask.files(document, made.Name, "record-"+e.ID, e.Last.Format(time.DateOnly))
	return files, notes, err
}

// JobSheet draws the records of all runs of a job, one after the other. Plans are
// those of the runs, by their order; there is one at least.
func JobSheet(e record.Export, plans []plan.Plan, zone *time.Location, ask Printing) ([]render.File, []string, error) {
	ask = ask.counting()
	var pages []scene.Page
	var notes []string
	for i, one := range e.Runs {
		one.Chain = e.Chain
		r, err := recordOf(one, plans[i])
		if err != nil {
			return nil, nil, err
		}
		laid, open := sheet.Pages(r, sheet.Request{Request: ask.Request, Zone: zone})
		pages, notes = append(pages, laid...), append(notes, open...)
	}
	document := sheets.Document(plans[0], ask.Request, pages)
	files, err := ask.files(document, e.Of, "record-"+e.ID, e.Last.Format(time.DateOnly))
	return files, notes, err
}

func recordOf(e record.Export, made plan.Plan) (sheet.Record, error) {
	state, err := e.Replay()
	if err != nil {
		return sheet.Record{}, err
	}
	r := sheet.Record{
		ID: e.ID, Plan: made, View: state.At(e.Last), Accepted: state.Work().ToAccept,
		Number: e.Number, Order: e.Order, Note: e.Note, Job: e.Job, Again: e.Again, Who: e.Who, Program: e.Program, Started: e.Started,
	}
	if e.Chain != nil {
		r.Head, r.HeadPlace = e.Chain.Hash, e.Chain.Place
	}
	for _, k := range e.Entries {
		r.Entries = append(r.Entries, sheet.Entry{Entry: k.Entry, N: k.Place})
	}
	return r, nil
}
