package job

import (
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/render"
	sheet "drawdown/render/sheet/record"
	"drawdown/sequence/plan"
)

// RecordSheet draws the record of a run. The plan is that of the files that the
// run was started from; times are printed in the zone.
func RecordSheet(e record.Export, made plan.Plan, zone *time.Location, ask Printing) ([]render.File, []string, error) {
	state, err := e.Replay()
	if err != nil {
		return nil, nil, err
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
	ask = ask.counting()
	document, notes := sheet.Document(r, sheet.Request{Request: ask.Request, Zone: zone})
	files, err := ask.files(document, made.Name, "record-"+e.ID, e.Last.Format(time.DateOnly))
	return files, notes, err
}
