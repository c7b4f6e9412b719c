// Package procedure reads the work of a plan as passes: the target of each,
// what 100 % means, which stages have no effect, how often the last one is
// repeated, what friction adds, and the search for a better order. It may
// import contact and the plan, and judges nothing.
package procedure

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/plan"
	"drawdown/sequence/stages"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// Work is the tightening of a plan as passes of the model. Waits are left out.
type Work struct {
	Passes []contact.Pass
	Stages []int // of the plan, by pass
	// TargetsN mean 100 %, by fastener: the preload of the greatest torque, at
	// nominal friction. It is 0 if an angle follows: then the mean of the kind
	// at the end of a run is 100 %.
	TargetsN []float64
	Hundreds []Hundred         // the origin of TargetsN, by kind
	Falls    []finding.Finding // stages without effect: stages.TorqueFalls
	// Compensated reports that the last pass has a separate target for each
	// fastener, to compensate for the loss.
	Compensated bool
}

// WorkOf reads the tightening of a plan. Torques become preloads at the nominal
// friction of each kind. The error names the kind and what is missing.
func WorkOf(p plan.Plan) (Work, error) {
	w := Work{TargetsN: make([]float64, len(p.Joint.Fasteners)), Hundreds: hundreds(p), Falls: stages.TorquesFall(p)}
	so := reached{}
	for s, stage := range p.Tighten.Stages {
		if stage.Do == plan.Wait {
			continue
		}
		pass := make(contact.Pass, 0, len(stage.Fasteners))
		turns := map[string]bool{}
		for _, kind := range stage.Kinds {
			turns[kind] = so.take(kind, stage)
		}
		for _, i := range stage.Fasteners {
			step, err := stepOf(stage, p.KindOf(i))
			if err != nil {
				return Work{}, err
			}
			step.Fastener = i
			if stage.Do != plan.Tighten || turns[p.Joint.Fasteners[i].Kind] {
				w.TargetsN[i] = step.ForceN // 0 after an angle
			}
			if stage.Do == plan.Tighten && stage.AtOnce > 1 && len(pass)%stage.AtOnce == 0 {
				step.Together = min(stage.AtOnce, len(stage.Fasteners)-len(pass))
			}
			pass = append(pass, step)
		}
		w.Passes, w.Stages = append(w.Passes, pass), append(w.Stages, s)
	}
	return w, nil
}

func stepOf(stage plan.Stage, kind plan.Kind) (contact.Action, error) {
	switch stage.Do {
	case plan.Remove:
		return contact.Action{Do: contact.Out}, nil
	case plan.Tighten:
		force, err := preloadN(kind, stage.Torque.Nm())
		return contact.Action{Do: contact.ToForce, ForceN: force}, err
	case plan.Lengthen:
		force, err := preloadOfStretchN(kind, stage.Stretch)
		return contact.Action{Do: contact.ToForce, ForceN: force}, err
	case plan.Advance, plan.BackOff, plan.TurnBack:
		if kind.Thread == nil {
			return contact.Action{}, finding.Failed(PitchUnknown, finding.Values{"kind": kind.Name}).About(finding.Place{Kind: kind.Name})
		}
		travel := kind.Thread.PitchMm * float64(stage.Angle) / 360 // of the nut
		if stage.Do != plan.Advance {
			travel = -travel
		}
		return contact.Action{Do: contact.ByTravel, TravelMm: travel}, nil
	}
	return contact.Action{}, compliance.Misuse("stage", string(stage.Do), "work")
}

// preloadN returns the preload of a torque at the nominal friction.
func preloadN(kind plan.Kind, torque unit.Torque) (float64, error) {
	bolt, err := BoltOf(kind)
	if err != nil {
		return 0, err
	}
	result, err := screw.AtTorque(bolt, torque)
	if err != nil {
		return 0, finding.Failed(PreloadUnknown, finding.Values{"kind": kind.Name, "why": err}).About(finding.Place{Kind: kind.Name})
	}
	return float64(result.Nominal.Preload), nil
}

// preloadOfStretchN returns the preload of a measured stretch.
func preloadOfStretchN(kind plan.Kind, stretch unit.Length) (float64, error) {
	bolt, err := BoltOf(kind)
	if err != nil {
		return 0, err
	}
	var nominal unit.Force
	s, err := stiffness.Stretch(bolt, kind.Figures().Grip)
	if err == nil {
		_, nominal, _, err = s.Preload(stretch)
	}
	if err == nil {
		return float64(nominal), nil
	}
	return 0, finding.Failed(PreloadUnknown, finding.Values{"kind": kind.Name, "why": err}).About(finding.Place{Kind: kind.Name})
}

// anyStrength is used if a kind states no class: it does not affect the
// relation of torque and preload.
const anyStrength = "640 MPa"

func BoltOf(kind plan.Kind) (screw.Bolt, error) {
	if kind.Thread == nil {
		return screw.Bolt{}, finding.Failed(ThreadUnknown, finding.Values{"kind": kind.Name}).About(finding.Place{Kind: kind.Name})
	}
	b := kind.Bolt()
	if b.Class == "" {
		b.Class = anyStrength
	}
	return b, nil
}

// SettleTargets fills in the targets left open by an angle: the final mean of
// the fasteners of the kind. A softer gasket gives less at the same angle,
// which is not unevenness, so each run has its own.
func (w Work) SettleTargets(p plan.Plan, end []float64) ([]float64, error) {
	targets := slices.Clone(w.TargetsN)
	sum, count := map[string]float64{}, map[string]float64{}
	for i, t := range targets {
		if t == 0 {
			sum[p.Joint.Fasteners[i].Kind] += end[i]
			count[p.Joint.Fasteners[i].Kind]++
		}
	}
	for i, t := range targets {
		if kind := p.Joint.Fasteners[i].Kind; t == 0 {
			targets[i] = sum[kind] / count[kind]
			if !(targets[i] > 0) {
				return nil, finding.Failed(NothingHolds, finding.Values{"kind": kind}).About(finding.Place{Kind: kind})
			}
		}
	}
	return targets, nil
}

// CanRepeat reports whether the last pass is a torque over all fasteners, as in
// the plan, so that it can be repeated.
func (w Work) CanRepeat() bool {
	if len(w.Passes) == 0 || w.Compensated || len(w.Falls) > 0 {
		return false
	}
	last := w.Passes[len(w.Passes)-1]
	return len(last) == len(w.TargetsN) && contact.IsTorque(last)
}
