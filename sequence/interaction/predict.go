package interaction

import (
	"fmt"

	"drawdown/geometry"
	"drawdown/sequence/tension/stiffness"
)

// Model is a joint as far as it is known: the stiffness of the gasket lies in a
// band.
type Model struct {
	At         []geometry.Point
	Kernel     Kernel
	Part       Part // that bends; of no thickness where a row states its stiffness
	Foundation Band // MPa/mm, gasket and counterpart in series
	Own        []stiffness.Resilience
	Stick      float64 // of Nuts; 0: none

	Basis       []Fact   // what of part and gasket all of it rests on
	Stated      []string // in plain words, by the file or the user
	Assumptions []string // the same, what was not stated
}

// Prediction is what passes do to a joint, at the soft end, the middle and the
// stiff end of the gasket's band.
type Prediction struct {
	Soft, Nominal, Stiff Run
}

// Run is the passes at one stiffness of the foundation.
type Run struct {
	FoundationMPaPerMm float64
	Joint              *Joint
	Passes             []AfterPass
	TargetsN           []float64 // that stand for 100 %, by fastener
}

// Percent gives the forces after a pass in percent of the targets.
func (r Run) Percent(pass int) []float64 { return Percent(r.Passes[pass].ForcesN, r.TargetsN) }

// Spread sums up all bolts after a pass, in percent of their targets.
func (r Run) Spread(pass int) Spread { return SpreadOf(r.Percent(pass)) }

// Predict works the passes from a loose joint. The targets stand for 100 %, by
// fastener.
func (m Model) Predict(passes []Pass, targets []float64) (Prediction, error) {
	p, err := m.runs(passes)
	if err != nil {
		return Prediction{}, err
	}
	for _, r := range p.runs() {
		r.TargetsN = targets
	}
	return p, p.Nominal.Joint.checkTargets(targets)
}

func (p *Prediction) runs() []*Run { return []*Run{&p.Soft, &p.Nominal, &p.Stiff} }

// runs works the passes at the three stiffnesses.
func (m Model) runs(passes []Pass) (p Prediction, err error) {
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

func (m Model) run(r *Run, foundationMPaPerMm float64, passes []Pass) error {
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
func (m Model) Joint(foundationMPaPerMm float64) (*Joint, error) {
	if m.Kernel == nil {
		return nil, fmt.Errorf("the joint has no part; state a plate, a row or a flange")
	}
	c, err := m.Kernel.Compliance(m.At, foundationMPaPerMm)
	if err != nil {
		return nil, err
	}
	return NewJoint(c, m.Own)
}

// ForceN gives the force in a bolt after a pass over the gasket's band.
func (p Prediction) ForceN(pass, fastener int) Band {
	at := func(r Run) float64 { return r.Passes[pass].ForcesN[fastener] }
	return bandOf(at(p.Soft), at(p.Nominal), at(p.Stiff))
}

// Percent gives the force in a bolt after a pass in percent of its target, over
// the gasket's band.
func (p Prediction) Percent(pass, fastener int) Band {
	at := func(r Run) float64 { return 100 * r.Passes[pass].ForcesN[fastener] / r.TargetsN[fastener] }
	return bandOf(at(p.Soft), at(p.Nominal), at(p.Stiff))
}

// Passes counts the passes.
func (p Prediction) Passes() int { return len(p.Nominal.Passes) }

// Class says in a word how much bolts act on each other.
type Class string

const (
	Negligible Class = "negligible" // next to the scatter of the torque
	Noticeable Class = "noticeable" // add one repeat pass
	Strong     Class = "strong"     // several passes, or measured stretch
)

// Bounds of the classes in percent of the target of the worst bolt
// (engineering judgement).
const negligibleFromPercent, noticeableFromPercent = 95, 85

// ClassOf judges the worst bolt after the last pass.
func ClassOf(worstPercent float64) Class {
	switch {
	case worstPercent >= negligibleFromPercent:
		return Negligible
	case worstPercent >= noticeableFromPercent:
		return Noticeable
	}
	return Strong
}

// Advice says in words what the class asks for.
func (c Class) Advice() string {
	switch c {
	case Negligible:
		return "cross-talk is negligible next to torque scatter"
	case Noticeable:
		return "cross-talk is noticeable: add one repeat pass"
	}
	return "cross-talk is strong: several passes or measured stretch"
}

// Class judges the plan at the soft end of the gasket's band, after the last
// pass. A plan without a pass is strong: nothing holds.
func (p Prediction) Class() Class {
	if p.Passes() == 0 {
		return Strong
	}
	return ClassOf(p.Soft.Spread(p.Passes() - 1).Min)
}

// Guidance must stand beside every prediction.
const Guidance = "Order-of-magnitude guidance from a simplified elastic model. Gasket stiffness is a guess within a factor of about two to three, so predicted losses are too. " +
	"It is no substitute for the maker's figures: use the service manual's torque, angle, sequence and re-torque rules where they exist. " +
	"Real scatter is usually dominated by friction in thread and under the head, which a repeat pass in any order does not remove."
