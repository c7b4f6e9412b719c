package procedure

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// TorqueFalls is a torque below one that a kind has been brought to before: the
// wrench clicks at once and turns nothing.
const TorqueFalls finding.Code = "work torque falls" // kind, stage, torque, before, beforeTorque

// reached is the stage with the greatest torque of each kind so far.
type reached map[string]plan.Stage

// take adds a stage for a kind. It says whether the stage is a torque that can
// turn a nut as far as the figures tell: greater than any before, or a repeat of it
// that no angle has gone before. Slackened bolts start anew.
func (r reached) take(kind string, stage plan.Stage) (turns bool, falls []finding.Finding) {
	before, had := r[kind]
	switch stage.Do {
	case plan.Tighten:
		const dust = 1e-9
		most, now := float64(before.Torque.Nm()), float64(stage.Torque.Nm())
		if had && now < most*(1-dust) {
			fall := finding.Warned(TorqueFalls, finding.Values{"kind": kind, "stage": stage.Number, "torque": stage.Torque, "before": before.Number, "beforeTorque": before.Torque}).
				About(finding.Place{Kind: kind, Stage: stage.Number})
			return false, []finding.Finding{fall}
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
