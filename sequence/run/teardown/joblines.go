// Package teardown is a job: the teardown and the rebuild of one machine, or work
// on one joint. A Work is frozen when the job starts; a State is the work with the
// entries that were accepted. The state of a joint comes from its runs, which the
// server passes in. Like sequence/run it sees no clock and no disk, and contains
// no sentences.
package teardown

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Work is a job as it was started. The record keeps its JSON.
type Work struct {
	Of          string          `json:"of"` // the file's name
	Title       string          `json:"title"`
	Machine     string          `json:"machine,omitempty"`
	Revision    string          `json:"revision,omitempty"`
	Fingerprint string          `json:"fingerprint"`
	Teardown    []Line          `json:"teardown"` // in working order
	Rebuild     []Line          `json:"rebuild"`
	Joints      []Joint         `json:"joints"`
	Supplies    []Supply        `json:"supplies,omitempty"` // beside fasteners
	Measures    []measure.Value `json:"measures,omitempty"` // of the whole machine
	Warnings    run.Findings    `json:"warnings,omitempty"` // of the check of the file
}

// Line is one thing to do: a joint, a part that comes out or goes back, or a note.
// One of Joint, Part and Note is set.
type Line struct {
	Number    int    `json:"step"` // from 1, on through the rebuild
	Joint     string `json:"joint,omitempty"`
	Part      string `json:"part,omitempty"`
	Note      string `json:"note,omitempty"`
	Title     string `json:"title,omitempty"` // of the joint
	Fasteners int    `json:"fasteners,omitempty"`
	Caution   bool   `json:"caution,omitempty"` // the note is one
	Remark    string `json:"remark,omitempty"`
}

// Joint is a joint of the job with the kinds of its fasteners.
type Joint struct {
	Of       string     `json:"of"`
	Title    string     `json:"title"`
	Kinds    []run.Kind `json:"kinds,omitempty"`
	Gasket   string     `json:"gasket,omitempty"`  // its kind, by the pattern
	Gaskets  []string   `json:"gaskets,omitempty"` // new ones
	Sealants []string   `json:"sealants,omitempty"`

	Fasteners []string        `json:"ids,omitempty"` // none in a job of an older program
	Stations  []string        `json:"stations,omitempty"`
	Labels    []string        `json:"labels,omitempty"` // of bores
	Measures  []measure.Value `json:"measures,omitempty"`
	Sizes     []Size          `json:"sizes,omitempty"` // of the kinds
}

// OfMachine freezes the work on a machine.
func OfMachine(name string, o overhaul.Overhaul, warnings []finding.Finding) Work {
	w := Work{Of: name, Title: o.Title, Machine: o.Machine, Revision: o.Revision, Fingerprint: o.Fingerprint, Warnings: warnings, Measures: o.Measures, Supplies: suppliesOf(o)}
	w.Teardown = lines(o, plan.CautionLoosen, 0)
	w.Rebuild = lines(o, plan.CautionTighten, len(w.Teardown))
	for _, j := range o.Joints() {
		joint := jointOf(j.Name, *j.Plan)
		joint.Gaskets = j.Task.Gaskets
		if j.Task.Sealant != "" {
			joint.Sealants = []string{j.Task.Sealant}
		}
		w.Joints = append(w.Joints, joint)
	}
	return w
}

// OfJoint freezes the work on one joint.
func OfJoint(name string, p plan.Plan, warnings []finding.Finding) Work {
	line := Line{Number: 1, Joint: name, Title: p.Title, Fasteners: len(p.Joint.Fasteners)}
	w := Work{Of: name, Title: p.Title, Machine: p.Machine, Revision: p.Revision, Fingerprint: p.Fingerprint, Warnings: warnings,
		Teardown: []Line{line}, Joints: []Joint{jointOf(name, p)}}
	line.Number = 2
	w.Rebuild = []Line{line}
	return w
}

func jointOf(name string, p plan.Plan) Joint {
	frozen := run.New(p, run.Loosen, nil)
	j := Joint{Of: name, Title: p.Title, Gasket: run.GasketOf(p), Stations: frozen.Stations, Labels: frozen.Labels, Measures: frozen.Measures, Sizes: sizesOf(p)}
	for _, f := range frozen.Fasteners {
		j.Fasteners = append(j.Fasteners, f.ID)
	}
	for _, k := range p.Kinds {
		j.Kinds = append(j.Kinds, run.Kind{Name: k.Name, Count: p.Count(k.Name), Reuse: k.Reuse, Thread: k.ThreadName()})
	}
	return j
}

func lines(o overhaul.Overhaul, side plan.CautionSide, before int) []Line {
	list := []Line{}
	for _, t := range o.TasksOf(side) {
		line := Line{Number: before + len(list) + 1, Part: t.Part, Note: t.Note, Caution: t.Warns, Remark: t.Remark(side)}
		if t.Joint != nil {
			line.Joint, line.Title, line.Fasteners = t.Joint.Name, t.Joint.Title, len(t.Joint.Joint.Fasteners)
		}
		list = append(list, line)
	}
	return list
}
