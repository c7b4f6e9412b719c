package plan

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/wrench"
)

// judgeWrench doubts torques of one kind that no single wrench serves: it is
// accurate from a fifth of its maximum on.
func (j *judge) judgeWrench() {
	var least, most *Stage
	for i := range j.stages {
		s := &j.stages[i]
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
	j.doubt(least.Number, AboutWrench, fmt.Sprintf("%s beside %s in stage %d", least.Torque, most.Torque, most.Number),
		fmt.Sprintf("needs two wrenches: one that reaches %s is accurate from about %s on (%g %% of its maximum, ISO 6789)",
			most.Torque, (most.Torque.Nm()*wrench.LeastUsable).OnScale(most.Torque.Unit), wrench.LeastUsable*100), "the figures and the wrenches at hand")
}
