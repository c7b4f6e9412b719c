// Package service calculates what a joint has after tightening and what is left
// at work: the stress of its gasket, the clamp load when it has settled, when
// it is hot and under load, and the limits between which its bolts can be
// tightened.
//
// Low, nominal and high go together through all states: low is the highest
// friction, the stiffest gasket, the most creep and a load that only relieves
// the parts. All bolts of the joint share gasket and load equally.
package service

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
)

// Joint is what a joint has, and what it needs. Zero values are unknown; Open
// says what is missing.
type Joint struct {
	Kinds  []Kind
	Gasket *Gasket // nil: not stated, or its stress is unknown
	// Stated reports that the file says what the joint has to hold.
	Stated bool
	Open   []finding.Finding
	// Assumed and Sources are what the figures rest on.
	Assumed []finding.Finding
	Sources []string
}

// Kind is one kind of fastener of the joint. All forces are those of one
// fastener.
type Kind struct {
	Name    string
	Count   int
	States  []State // nil: unknown
	Limits  []Limit // the tightest first
	Aim     *Aim    // nil: no limit is known
	Yield   *Yield  // nil: the joint does not get hot
	Fatigue *Fatigue

	cold   figures.Left
	answer figures.Answer
}

// Forces are those of one fastener, in order.
type Forces struct{ Low, Nominal, High unit.Force }

// Of calculates what is left at work. The answers are those to questions about
// kinds of the plan; the others are tightened by its stages.
func Of(p plan.Plan, answers ...figures.Answer) Joint {
	w := work{plan: p}
	w.Stated = p.Clamped.Service.Stated()
	for _, b := range p.Bolts() {
		w.tightened(b, answers)
	}
	w.settleGasket()
	for i := range w.Kinds {
		w.atWork(&w.Kinds[i])
		w.limits(&w.Kinds[i])
	}
	w.gasketAtWork()
	return w.Joint
}

// tightened adds a kind with the preload that tightening leaves.
func (w *work) tightened(b figures.Bolt, answers []figures.Answer) {
	k := Kind{Name: b.Kind, Count: w.plan.Count(b.Kind)}
	var known bool
	if i := slices.IndexFunc(answers, func(a figures.Answer) bool { return a.Kind == b.Kind }); i >= 0 {
		k.answer = answers[i]
		k.cold, known = k.answer.Left()
	} else if a, err := figures.WorkOut(figures.Ask{Bolt: b}); err == nil {
		k.answer = a
		k.cold, known = a.Left()
	}
	if known {
		w.Kinds = append(w.Kinds, k)
	} else {
		w.open(NoPreload, finding.Values{"kind": b.Kind})
	}
}

// Kind returns what is known of a kind; nil if nothing is.
func (j Joint) Kind(name string) *Kind {
	if i := slices.IndexFunc(j.Kinds, func(k Kind) bool { return k.Name == name }); i >= 0 {
		return &j.Kinds[i]
	}
	return nil
}

// work is a joint while it is calculated.
type work struct {
	Joint
	plan  plan.Plan
	bolts int // of all kinds
	face  face
}

func (w *work) open(code finding.Code, values finding.Values) {
	f := finding.Noted(code, values)
	if !slices.ContainsFunc(w.Open, f.Same) {
		w.Open = append(w.Open, f)
	}
}

func (w *work) assume(code finding.Code, values finding.Values) {
	f := finding.Noted(code, values)
	if !slices.ContainsFunc(w.Assumed, f.Same) {
		w.Assumed = append(w.Assumed, f)
	}
}

func (w *work) rests(source string) {
	if !slices.Contains(w.Sources, source) {
		w.Sources = append(w.Sources, source)
	}
}
