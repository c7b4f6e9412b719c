// Package prediction works the passes of a plan on a joint at both ends and the
// middle of what its gasket may be, and sums it up as a Forecast. It may import all
// rooms below it but those of other ways.
package prediction

import (
	"fmt"

	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// Model is a joint as far as it is known: the stiffness of the gasket lies in a
// band.
type Model struct {
	setup.Settled
	Stick float64 // of Nuts; 0: none
}

// Prediction is what passes do to a joint, at the soft end, the middle and the
// stiff end of the gasket's band.
type Prediction struct {
	Soft, Nominal, Stiff Run
}

// Run is the passes at one stiffness of the foundation.
type Run struct {
	FoundationMPaPerMm float64
	Joint              *contact.Joint
	Passes             []contact.AfterPass
	TargetsN           []float64 // that stand for 100 %, by fastener
}

// Percent gives the forces after a pass in percent of the targets.
func (r Run) Percent(pass int) []float64 { return bounds.Percent(r.Passes[pass].ForcesN, r.TargetsN) }

// Spread sums up all bolts after a pass, in percent of their targets.
func (r Run) Spread(pass int) bounds.Spread { return bounds.SpreadOf(r.Percent(pass)) }

// Predict works the passes from a loose joint. The targets stand for 100 %, by
// fastener.
func (m Model) Predict(passes []contact.Pass, targets []float64) (Prediction, error) {
	p, err := m.runs(passes)
	if err != nil {
		return Prediction{}, err
	}
	for _, r := range p.runs() {
		r.TargetsN = targets
	}
	return p, p.Nominal.Joint.CheckTargets(targets)
}

func (p *Prediction) runs() []*Run { return []*Run{&p.Soft, &p.Nominal, &p.Stiff} }

// runs works the passes at the three stiffnesses.
func (m Model) runs(passes []contact.Pass) (p Prediction, err error) {
	for _, run := range []struct {
		of         *Run
		foundation float64
	}{{&p.Soft, m.Foundation.Low}, {&p.Nominal, m.Foundation.Nominal}, {&p.Stiff, m.Foundation.High}} {
		if err := m.run(run.of, run.foundation, passes); err != nil {
			return Prediction{}, err
		}
	}
	return p, nil
}

func (m Model) run(r *Run, foundationMPaPerMm float64, passes []contact.Pass) error {
	joint, err := m.Joint(foundationMPaPerMm)
	if err != nil {
		return err
	}
	nuts := joint.Loose()
	nuts.Stick = m.Stick
	after, err := nuts.Work(passes, m.At)
	*r = Run{FoundationMPaPerMm: foundationMPaPerMm, Joint: joint, Passes: after}
	return err
}

// Joint gives the joint at one stiffness of the foundation.
func (m Model) Joint(foundationMPaPerMm float64) (*contact.Joint, error) {
	if m.Kernel == nil {
		return nil, fmt.Errorf("the joint has no part; state a plate, a row or a flange")
	}
	c, err := m.Kernel.Compliance(m.At, foundationMPaPerMm)
	if err != nil {
		return nil, err
	}
	return contact.NewJoint(c, m.Own)
}

// ForceN gives the force in a bolt after a pass over the gasket's band.
func (p Prediction) ForceN(pass, fastener int) bounds.Band {
	at := func(r Run) float64 { return r.Passes[pass].ForcesN[fastener] }
	return bounds.Of(at(p.Soft), at(p.Nominal), at(p.Stiff))
}

// Percent gives the force in a bolt after a pass in percent of its target, over
// the gasket's band.
func (p Prediction) Percent(pass, fastener int) bounds.Band {
	at := func(r Run) float64 { return 100 * r.Passes[pass].ForcesN[fastener] / r.TargetsN[fastener] }
	return bounds.Of(at(p.Soft), at(p.Nominal), at(p.Stiff))
}

// Passes counts the passes.
func (p Prediction) Passes() int { return len(p.Nominal.Passes) }

// Class judges the plan at the soft end of the gasket's band, after the last
// pass. A plan without a pass is strong: nothing holds.
func (p Prediction) Class() advice.Class {
	if p.Passes() == 0 {
		return advice.Strong
	}
	return advice.ClassOf(p.Soft.Spread(p.Passes() - 1).Min)
}

// PredictPlan works the tightening side of a plan.
func (m Model) PredictPlan(p plan.Plan) (Prediction, procedure.Work, error) {
	w, err := procedure.WorkOf(p, p.Tighten)
	if err != nil {
		return Prediction{}, w, err
	}
	if len(w.Passes) == 0 {
		return Prediction{}, w, fmt.Errorf("the plan has no stage that tightens; add `tighten: stages`")
	}
	prediction, err := m.runs(w.Passes)
	if err != nil {
		return Prediction{}, w, err
	}
	for _, r := range prediction.runs() {
		if r.TargetsN, err = w.SettleTargets(p, r.Passes[len(w.Passes)-1].ForcesN); err != nil {
			return Prediction{}, w, err
		}
	}
	return prediction, w, nil
}

// ModelOf makes the model of a plan's joint. The error says what does not fit
// and what is allowed.
func ModelOf(p plan.Plan, stated setup.Setup) (Model, error) {
	settled, err := setup.Settle(p, stated)
	return Model{Settled: settled}, err
}
