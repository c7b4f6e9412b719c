package procedure

import (
	"fmt"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// Fall is a torque below one that a kind has been brought to before: the wrench
// clicks at once and turns nothing.
type Fall struct {
	Kind         string
	Stage        int // number of it
	Torque       unit.GivenTorque
	Before       int // number of the stage with the greater torque
	BeforeTorque unit.GivenTorque
}

// String says it in English, without a full stop.
func (f Fall) String() string {
	return fmt.Sprintf("stage %d sets %s to %v, below the %v of stage %d", f.Stage, f.Kind, f.Torque, f.BeforeTorque, f.Before)
}

// reached is the stage with the greatest torque of each kind so far.
type reached map[string]plan.Stage

// take adds a stage for a kind. It says whether the stage is a torque that can
// turn a nut as far as the figures tell: greater than any before, or a repeat of it
// that no angle has gone before. Slackened bolts start anew.
func (r reached) take(kind string, stage plan.Stage) (turns bool, fall *Fall) {
	before, had := r[kind]
	switch stage.Do {
	case plan.Tighten:
		const dust = 1e-9
		most, now := float64(before.Torque.Nm()), float64(stage.Torque.Nm())
		if had && now < most*(1-dust) {
			return false, &Fall{Kind: kind, Stage: stage.Number, Torque: stage.Torque, Before: before.Number, BeforeTorque: before.Torque}
		}
		if had && now <= most*(1+dust) {
			return false, nil
		}
		r[kind] = stage
		return true, nil
	case plan.BackOff, plan.TurnBack, plan.Remove:
		delete(r, kind)
	}
	return false, nil
}

// falls lists the torques of a side that do nothing.
func falls(p plan.Plan, side plan.Side) (list []Fall) {
	so := reached{}
	for _, stage := range side.Stages {
		for _, kind := range stage.Kinds {
			if _, fall := so.take(kind, stage); fall != nil {
				list = append(list, *fall)
			}
		}
	}
	return list
}

// LookFirst says what of the file is to be mended before anything is judged.
func LookFirst(list []Fall) string {
	var stages []string
	for _, f := range list {
		stages = append(stages, f.String())
	}
	return "Look at the file first: " + strings.Join(stages, "; ") + ". A wrench set below what a bolt has clicks at once and turns no nut, so this can do nothing; it is likely a slip. No advice is given before it is mended."
}
