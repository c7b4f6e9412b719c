package job

import (
	"encoding/json"
	"slices"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/patterns/source"
	"drawdown/render"
	sheet "drawdown/render/sheet/machineshop"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// NothingSentOut means that no part of a job went to the machine shop.
const NothingSentOut finding.Code = "job nothing sent out" // job

// MachineShopSheet draws the sheet that goes with the parts of a job that are at the
// machine shop; where none is, with those that were.
func MachineShopSheet(e record.Export, file func(sum string) ([]byte, error), zone *time.Location, ask Printing) ([]render.File, []string, error) {
	o, err := machineShopOrder(e, file)
	if err != nil {
		return nil, nil, err
	}
	ask = ask.counting()
	document, notes := sheet.Document(o, sheet.Request{Request: ask.Request, Zone: zone})
	files, err := ask.files(document, e.ID, "machine-shop", "")
	return files, notes, err
}

func machineShopOrder(e record.Export, file func(sum string) ([]byte, error)) (sheet.Order, error) {
	o := sheet.Order{ID: e.ID, Title: e.Title, Number: e.Number, Order: e.Order}
	view, made, err := jobNow(e, file)
	if err != nil {
		return o, err
	}
	o.Machine = view.Machine
	for _, s := range sentOut(view.SentOut) {
		part := sheet.Part{SentOut: s, Plan: planOf(made, s.Joint)}
		if s.Joint != "" {
			part.Findings = view.FindingsOf(s.Joint)
		}
		for _, m := range view.Measured {
			if s.Joint != "" && view.JointOf(m.Entry) == s.Joint {
				part.Measured = append(part.Measured, m)
			}
		}
		o.Parts = append(o.Parts, part)
	}
	if len(o.Parts) == 0 {
		return o, finding.Failed(NothingSentOut, finding.Values{"job": e.ID})
	}
	return o, nil
}

// sentOut are the parts that are out; where none is, those that were.
func sentOut(all []teardown.SentOut) []teardown.SentOut {
	out := slices.DeleteFunc(slices.Clone(all), func(s teardown.SentOut) bool { return s.Back != nil })
	if len(out) == 0 {
		return all
	}
	return out
}

// jobNow is a job as its record has it, with what its runs saw, and the files that it
// goes by.
func jobNow(e record.Export, file func(sum string) ([]byte, error)) (teardown.View, Frozen, error) {
	var work teardown.Work
	if err := json.Unmarshal(e.Plan, &work); err != nil {
		return teardown.View{}, Frozen{}, err
	}
	state := work.Replay(runEntries(e))
	view := state.View(nil, nil)
	for _, one := range e.Runs {
		of, err := one.Replay()
		if err != nil {
			return view, Frozen{}, err
		}
		if now := of.At(one.Last); now.Status != run.Voided {
			view.AddRun(one.ID, now)
		}
	}
	files := e.Files
	if adopted := state.Adopted(); adopted != nil {
		files = adopted.Revision.Files
	}
	made, err := thawed(files, e.Of, file)
	return view, made, err
}

// thawed reads files of the record by their SHA-256.
func thawed(files map[string]string, of string, file func(sum string) ([]byte, error)) (Frozen, error) {
	kept := source.Kept{}
	for name, sum := range files {
		data, err := file(sum)
		if err != nil {
			return Frozen{}, err
		}
		kept[name] = data
	}
	return Thaw(kept, of)
}

// planOf is the plan of a joint of what work was started from; empty for none, or
// where this program reads the file no more.
func planOf(made Frozen, of string) plan.Plan {
	if of == "" || !made.Sound() {
		return plan.Plan{}
	}
	joint, _ := made.Joint(of)
	if joint == nil {
		return plan.Plan{}
	}
	return joint.Plan
}
