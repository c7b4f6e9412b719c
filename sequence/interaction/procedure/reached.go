package procedure

import "drawdown/sequence/plan"

// reached is the greatest torque so far, in N·m, of each kind.
type reached map[string]float64

// take adds a stage for a kind. It reports whether the stage is a torque that
// can turn a nut, by the figures: greater than any before, or a repeat with no
// angle in between. Slackened bolts start again.
func (r reached) take(kind string, stage plan.Stage) (turns bool) {
	switch stage.Do {
	case plan.Tighten:
		const dust = 1e-9
		most, had := r[kind]
		now := float64(stage.Torque.Nm())
		if had && now <= most*(1+dust) {
			return false
		}
		r[kind] = now
		return true
	case plan.BackOff, plan.TurnBack, plan.Remove:
		delete(r, kind)
	}
	return false
}
