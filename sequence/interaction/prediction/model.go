// Package prediction applies the passes of a plan to a joint with a soft, a
// nominal and a stiff gasket, and sums the result up as a Forecast. It may
// import all packages below it except ways.
package prediction

import (
	"cmp"
	"slices"
	"sync"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// Model is a joint as far as it is known, with a range for the stiffness of the
// gasket.
type Model struct {
	setup.Settled
	Stick float64 // of Nuts; 0: none

	joints map[float64]*contact.Joint // by the stiffness of the foundation; nil: not cached
}

// Prediction is the result of passes on a joint, for the soft end, the middle
// and the stiff end of the gasket's range.
type Prediction struct {
	Soft, Nominal, Stiff Run
	did                  []contact.Pass // passes done in all three
}

// Run is the result for one stiffness of the foundation.
type Run struct {
	Joint    *contact.Joint
	Passes   []contact.AfterPass
	TargetsN []float64     // forces that mean 100 %, by fastener
	left     *contact.Nuts // state of the joint after the passes; nil before any
}

// Percent returns the forces after a pass in percent of the targets.
func (r Run) Percent(pass int) []float64 { return bounds.Percent(r.Passes[pass].ForcesN, r.TargetsN) }

// Spread summarizes all bolts after a pass, in percent of their targets.
func (r Run) Spread(pass int) bounds.Spread { return bounds.SpreadOf(r.Percent(pass)) }

// Predict performs the passes from a loose joint. The targets mean 100 %, by
// fastener.
func (m Model) Predict(passes []contact.Pass, targets []float64) (Prediction, error) {
	p, err := m.runs(passes)
	if err != nil {
		return Prediction{}, err
	}
	for _, r := range p.Runs() {
		r.TargetsN = targets
	}
	return p, p.Nominal.Joint.CheckTargets(targets)
}

// Runs returns the runs from soft to stiff.
func (p *Prediction) Runs() []*Run { return []*Run{&p.Soft, &p.Nominal, &p.Stiff} }

// runs performs the passes at the three stiffnesses.
func (m Model) runs(passes []contact.Pass) (p Prediction, err error) {
	for k, foundation := range []float64{m.Foundation.Low, m.Foundation.Nominal, m.Foundation.High} {
		if p.Runs()[k].Joint, err = m.Joint(foundation); err != nil {
			return Prediction{}, err
		}
	}
	return m.Again(p, passes)
}

// Again performs other passes on the same joints. If they begin like those of
// the prediction, it continues from its final state. The three stiffnesses are
// calculated in parallel.
func (m Model) Again(p Prediction, passes []contact.Pass) (Prediction, error) {
	more := len(passes) >= len(p.did) && slices.EqualFunc(p.did, passes[:len(p.did)], slices.Equal[contact.Pass])
	var crew sync.WaitGroup
	var wrong [3]error
	for k, r := range p.Runs() {
		if more && r.left != nil {
			r.left, r.Passes = r.left.Clone(), slices.Clip(r.Passes)
		} else {
			r.left, r.Passes = r.Joint.Loose(), nil
			r.left.Stick = m.Stick
		}
		crew.Go(func() {
			after, err := r.left.Work(passes[len(r.Passes):], m.At)
			r.Passes, wrong[k] = append(r.Passes, after...), err
		})
	}
	crew.Wait()
	if err := cmp.Or(wrong[:]...); err != nil {
		return Prediction{}, err
	}
	p.did = passes
	return p, nil
}

// Joint returns the joint at one stiffness of the foundation.
func (m Model) Joint(foundationMPaPerMm float64) (*contact.Joint, error) {
	if j := m.joints[foundationMPaPerMm]; j != nil {
		return j, nil
	}
	c, err := m.Kernel.Compliance(m.At, foundationMPaPerMm)
	if err != nil {
		return nil, err
	}
	j, err := contact.NewJoint(c, m.Own)
	if err == nil && m.joints != nil {
		m.joints[foundationMPaPerMm] = j
	}
	return j, err
}

// Over returns a figure over the gasket's range.
func (p Prediction) Over(of func(Run) float64) bounds.Band {
	return bounds.Of(of(p.Soft), of(p.Nominal), of(p.Stiff))
}

// Spreads summarizes all bolts after a pass over the gasket's range.
func (p Prediction) Spreads(pass int) bounds.Spreads {
	return p.SpreadsOver(func(r Run) bounds.Spread { return r.Spread(pass) })
}

// SpreadsOver returns statistics over the gasket's range.
func (p Prediction) SpreadsOver(of func(Run) bounds.Spread) bounds.Spreads {
	return bounds.SpreadsOf(of(p.Soft), of(p.Nominal), of(p.Stiff))
}

// ForceN returns the force in a bolt after a pass over the gasket's range.
func (p Prediction) ForceN(pass, fastener int) bounds.Band {
	return p.Over(func(r Run) float64 { return r.Passes[pass].ForcesN[fastener] })
}

// Passes is the number of passes.
func (p Prediction) Passes() int { return len(p.Nominal.Passes) }

// Class classifies the plan at the soft end of the gasket's range, after the
// last pass.
func (p Prediction) Class() advice.Class {
	return advice.ClassOf(p.Soft.Spread(p.Passes() - 1).Min)
}

// Errors of a prediction.
const (
	NothingTightens finding.Code = "forecast nothing tightens" // a plan without a stage to predict
	TooManyBolts    finding.Code = "forecast too many bolts"   // n, most
)

// PredictPlan calculates the tightening side of a plan.
func (m Model) PredictPlan(p plan.Plan) (Prediction, procedure.Work, error) {
	w, err := procedure.WorkOf(p)
	if err != nil {
		return Prediction{}, w, err
	}
	if len(w.Passes) == 0 {
		return Prediction{}, w, finding.Failed(NothingTightens, nil)
	}
	prediction, err := m.runs(w.Passes)
	if err != nil {
		return Prediction{}, w, err
	}
	for _, r := range prediction.Runs() {
		if r.TargetsN, err = w.SettleTargets(p, r.Passes[len(w.Passes)-1].ForcesN); err != nil {
			return Prediction{}, w, err
		}
	}
	return prediction, w, nil
}

// ModelOf returns the model of a plan's joint. It caches results and is not
// safe for concurrent use. The error says what does not fit.
func ModelOf(p plan.Plan, stated setup.Setup) (Model, error) {
	if n := len(p.Joint.Fasteners); n > limits.MostBolts {
		return Model{}, finding.Failed(TooManyBolts, finding.Values{"n": n, "most": limits.MostBolts})
	}
	settled, err := setup.Settle(p, stated)
	return Model{Settled: settled, joints: map[float64]*contact.Joint{}}, err
}
