package overhaul

import (
	"slices"

	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Check is what is looked at once more in a joint: a check pass, a wait
// before one, or a time after which the whole joint is gone over again.
type Check struct {
	Joint Joint
	Stage *plan.Stage // a check pass or a wait; nil for Again
	Again string
}

// Checks lists the check passes with their waits in the order of building, then
// what is checked again when the machine has run.
func (o Overhaul) Checks() []Check {
	var all, later []Check
	joints := o.Joints()
	for k := len(joints) - 1; k >= 0; k-- {
		j := joints[k]
		for i := range j.Tighten.Stages {
			if s := &j.Tighten.Stages[i]; s.Do == plan.Wait || isCheckPass(j.Tighten.Stages[:i], s) {
				all = append(all, Check{Joint: j, Stage: s})
			}
		}
		if j.Task.Again != "" {
			later = append(later, Check{Joint: j, Again: j.Task.Again})
		}
	}
	return append(all, later...)
}

// isCheckPass reports whether a stage goes once round at a torque that an earlier
// stage has reached already.
func isCheckPass(earlier []plan.Stage, s *plan.Stage) bool {
	if s.Do != plan.Tighten || s.Way != sequence.Circular {
		return false
	}
	return slices.ContainsFunc(earlier, func(e plan.Stage) bool { return e.Do == plan.Tighten && e.Torque.Nm() >= s.Torque.Nm() })
}
