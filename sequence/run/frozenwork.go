// Package run is one pass through one joint: what is done, what comes next and
// what is blocked. A Work is frozen from a plan when the run starts; a State is
// the work with the entries that were accepted. State.Take judges an entry by
// the rules and applies it.
//
// It sees no clock, no disk and no database: every entry has its time. It
// contains no sentences: a Refusal is a finding. It also reads and writes the
// JSON of entries, work and state, so that the record and the page agree.
package run

import (
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// Work is one run as it was started: everything that its entries are judged by.
// The record keeps its JSON, so that a newer program replays an old run as it
// was. Set Job before the first Start where the run belongs to a job.
type Work struct {
	Of          string    `json:"of"` // the pattern's name, such as p4-head
	Title       string    `json:"title"`
	Machine     string    `json:"machine,omitempty"`
	Revision    string    `json:"revision,omitempty"`
	Direction   Direction `json:"work"`
	Fingerprint string    `json:"fingerprint"`
	Job         string    `json:"job,omitempty"`   // that the run belongs to
	Again       bool      `json:"again,omitempty"` // a later check of a joint that was tightened
	Early       *Early    `json:"early,omitempty"` // it was started out of the order of its job

	Steps     []Step          `json:"steps"` // as planned, numbered from 1 as in order --json
	Fasteners []Fastener      `json:"fasteners"`
	Stations  []string        `json:"stations,omitempty"`
	Labels    []string        `json:"labels,omitempty"` // of bores
	Measures  []measure.Value `json:"measures,omitempty"`
	Kinds     []Kind          `json:"kinds,omitempty"`
	Gasket    string          `json:"gasket,omitempty"`   // what lies between the parts, in the words of the file
	Cautions  []string        `json:"cautions,omitempty"` // of the file, for this direction
	ToAccept  Findings        `json:"to_accept,omitempty"`
	Tolerance float64         `json:"tolerance,omitempty"` // of a wrench without facts: share to either side
}

// Early is why a run was started before its turn in the list of its job.
type Early struct {
	Before string    `json:"before"` // what comes first and was not done
	Reason string    `json:"reason,omitempty"`
	At     time.Time `json:"at"`
}

// Fastener is a fastener of the joint.
type Fastener struct {
	ID   string `json:"id"`
	Kind string `json:"kind"`
}

// ThreadOf is the thread of a fastener; empty where it is not known.
func (w Work) ThreadOf(id string) string {
	for _, f := range w.Fasteners {
		for _, k := range w.Kinds {
			if f.ID == id && k.Name == f.Kind {
				return k.Thread
			}
		}
	}
	return ""
}

// Kind is a kind of fastener, as far as readiness asks for it.
type Kind struct {
	Name   string     `json:"name"`
	Count  int        `json:"count"`
	Reuse  plan.Reuse `json:"reuse,omitempty"`
	Thread string     `json:"thread,omitempty"` // as the standard names it: M10×1.5
}

// New freezes the work of one direction of a plan. toAccept are the warnings of
// the check and what could not be judged; loosening asks for none of them.
func New(p plan.Plan, d Direction, toAccept []finding.Finding) Work {
	w := Work{
		Of: p.Name, Title: p.Title, Machine: p.Machine, Revision: p.Revision,
		Direction: d, Fingerprint: p.Fingerprint, Steps: planned(p, d),
		Cautions: p.CautionsFor(plan.CautionSide(d)), Tolerance: usualTolerance,
		Measures: p.Measures,
	}
	for _, f := range p.Joint.Fasteners {
		w.Fasteners = append(w.Fasteners, Fastener{f.ID, f.Kind})
	}
	for _, s := range p.Joint.Stations {
		w.Stations = append(w.Stations, s.ID)
	}
	for _, b := range p.Joint.Bores {
		if b.Label != "" {
			w.Labels = append(w.Labels, b.Label)
		}
	}
	for _, k := range p.Kinds {
		w.Kinds = append(w.Kinds, Kind{k.Name, p.Count(k.Name), k.Reuse, k.ThreadName()})
	}
	if d == Tighten {
		w.ToAccept, w.Gasket = toAccept, GasketOf(p)
	}
	return w
}

// GasketOf is the kind of gasket of a joint; empty where it has none, or the file
// does not say.
func GasketOf(p plan.Plan) string {
	if g := p.Clamped.Gasket.Kind; g != "none" {
		return g
	}
	return ""
}

// usualTolerance is that of a click wrench above 10 N·m (ISO 6789:2003, table
// 3). It counts where the wrench of a reading is not known.
const usualTolerance = 0.04
