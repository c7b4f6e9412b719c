package interaction

import (
	"fmt"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// PlanWork is a side of a plan as passes of the model. Waits are left out.
type PlanWork struct {
	Passes []Pass
	Stages []int // of the side, by pass
	// TargetsN stand for 100 %, by fastener: the preload of the greatest torque that
	// it is brought to, at the nominal friction. 0 where an angle follows: then the mean of
	// the kind at the end of a run stands for 100 %.
	TargetsN []float64
	Hundreds []Hundred // what TargetsN are, by kind
	Falls    []Fall    // stages that do nothing
	// Compensated says that the last pass has targets of its own for each
	// fastener, which make up for the loss.
	Compensated bool
}

// WorkOf reads a side of a plan. Torques become preloads at the nominal
// friction of each kind. The error names the kind and what it lacks.
func WorkOf(p plan.Plan, side plan.Side) (PlanWork, error) {
	w := PlanWork{TargetsN: make([]float64, len(p.Joint.Fasteners)), Hundreds: hundreds(p, side), Falls: falls(p, side)}
	so := reached{}
	for s, stage := range side.Stages {
		if stage.Do == plan.Wait {
			continue
		}
		pass := make(Pass, 0, len(stage.Fasteners))
		turns := map[string]bool{}
		for _, kind := range stage.Kinds {
			turns[kind], _ = so.take(kind, stage)
		}
		for _, i := range stage.Fasteners {
			step, err := stepOf(stage, p.KindOf(i))
			if err != nil {
				return PlanWork{}, err
			}
			step.Fastener = i
			if stage.Do != plan.Tighten || turns[p.Joint.Fasteners[i].Kind] {
				w.TargetsN[i] = step.ForceN // 0 after an angle
			}
			pass = append(pass, step)
		}
		w.Passes, w.Stages = append(w.Passes, pass), append(w.Stages, s)
	}
	return w, nil
}

func stepOf(stage plan.Stage, kind plan.Kind) (Step, error) {
	switch stage.Do {
	case plan.Remove:
		return Step{Do: Out}, nil
	case plan.Tighten:
		force, err := preloadN(kind, stage.Torque.Nm())
		return Step{Do: ToForce, ForceN: force}, err
	case plan.Advance, plan.BackOff, plan.TurnBack:
		if kind.Thread == nil {
			return Step{}, fmt.Errorf("an angle needs the thread of kind %s to tell its pitch; add `thread`, such as M10", kind.Name)
		}
		travel := TravelOfAngleMm(float64(stage.Angle), kind.Thread.PitchMm)
		if stage.Do != plan.Advance {
			travel = -travel
		}
		return Step{Do: ByTravel, TravelMm: travel}, nil
	}
	return Step{}, fmt.Errorf("a stage that does %q; allowed: torque, angle, back off, turn, remove, wait", stage.Do)
}

// preloadN gives the preload of a torque at the nominal friction.
func preloadN(kind plan.Kind, torque unit.Torque) (float64, error) {
	bolt, err := boltOf(kind)
	if err != nil {
		return 0, err
	}
	result, err := screw.AtTorque(bolt, torque)
	if err != nil {
		return 0, fmt.Errorf("the preload of kind %s cannot be worked out: %w", kind.Name, err)
	}
	return float64(result.Nominal.Preload), nil
}

// anyStrength stands in where a kind states no class: it has no say in torque
// and preload.
const anyStrength = "640 MPa"

func boltOf(kind plan.Kind) (screw.Bolt, error) {
	if kind.Thread == nil {
		return screw.Bolt{}, fmt.Errorf("the prediction needs the thread of kind %s; add `thread`, such as M10", kind.Name)
	}
	b := kind.Bolt()
	if b.Class == "" {
		b.Class = anyStrength
	}
	return b, nil
}

// settleTargets fills in the targets that an angle leaves open: the mean of the
// fasteners of the kind at the end. A softer gasket gives less of it at the same
// angle, which is no unevenness: each run has its own.
func (w PlanWork) settleTargets(p plan.Plan, end []float64) ([]float64, error) {
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
				return nil, fmt.Errorf("the stages leave kind %s without a preload; allowed: a torque or an angle on every kind", kind)
			}
		}
	}
	return targets, nil
}

// PredictPlan works the tightening side of a plan.
func (m Model) PredictPlan(p plan.Plan) (Prediction, PlanWork, error) {
	w, err := WorkOf(p, p.Tighten)
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
		if r.TargetsN, err = w.settleTargets(p, r.Passes[len(w.Passes)-1].ForcesN); err != nil {
			return Prediction{}, w, err
		}
	}
	return prediction, w, nil
}
