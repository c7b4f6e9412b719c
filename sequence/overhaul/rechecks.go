package overhaul

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// What keeps a joint from being tightened once more.
const (
	AgainAfterAngle finding.Code = "again after angle" // kinds
	AgainUsedOnce   finding.Code = "again used once"   // kinds
)

// CheckAgain says what is wrong with tightening a joint once more when it has
// run: an angle would turn bolts on that it has stretched already, and bolts
// that are used once are not tightened twice.
func CheckAgain(p plan.Plan) error {
	var turned, once []string
	for _, k := range p.Kinds {
		switch {
		case p.LastAction(k.Name) == plan.Advance:
			turned = append(turned, k.Name)
		case k.Reuse == plan.ReuseOnce:
			once = append(once, k.Name)
		}
	}
	switch {
	case len(turned) > 0:
		return finding.Failed(AgainAfterAngle, finding.Values{"kinds": turned}).From(finding.CommonPractice)
	case len(once) > 0:
		return finding.Failed(AgainUsedOnce, finding.Values{"kinds": once}).From(finding.CommonPractice)
	}
	return nil
}

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

// isCheckPass says whether a stage goes once round at a torque that an earlier
// stage has reached already.
func isCheckPass(earlier []plan.Stage, s *plan.Stage) bool {
	if s.Do != plan.Tighten || s.Way != sequence.Circular {
		return false
	}
	return slices.ContainsFunc(earlier, func(e plan.Stage) bool { return e.Do == plan.Tighten && e.Torque.Nm() >= s.Torque.Nm() })
}
