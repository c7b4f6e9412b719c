package figures

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/wrench"
)

// judgeWrench reports torques of one bolt that no single wrench covers: a
// wrench is accurate from a fifth of its maximum on.
func (j *judge) judgeWrench() {
	var least, most *Stage
	for i := range j.Stages {
		s := &j.Stages[i]
		if s.Do != Tighten {
			continue
		}
		if least == nil || s.Torque.Nm() < least.Torque.Nm() {
			least = s
		}
		if most == nil || s.Torque.Nm() > most.Torque.Nm() {
			most = s
		}
	}
	const dust = 1e-9
	if least == nil || least.Torque.Nm() >= most.Torque.Nm()*unit.Torque(wrench.LeastUsable-dust) {
		return
	}
	j.warn(least.Number, TwoWrenches, finding.Values{
		"low": least.Torque, "high": most.Torque, "stage": most.Number,
		"from": (most.Torque.Nm() * wrench.LeastUsable).OnScale(most.Torque.Unit), "usable": wrench.LeastUsable,
	})
}
