package overhaul

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// What keeps a joint from being tightened once more.
const (
	AgainAfterAngle finding.Code = "again after angle" // kinds
	AgainUsedOnce   finding.Code = "again used once"   // kinds
	AgainLocked     finding.Code = "again locked"      // kinds
)

// CheckAgain says what is wrong with tightening a joint once more when it has
// run: an angle would turn bolts on that it has stretched already, bolts that are
// used once are not tightened twice, and what has set in a thread would break.
func CheckAgain(p plan.Plan) error {
	turned, once, locked := kindsNotAgain(p)
	switch {
	case len(turned) > 0:
		return finding.Failed(AgainAfterAngle, finding.Values{"kinds": turned}).From(finding.CommonPractice)
	case len(once) > 0:
		return finding.Failed(AgainUsedOnce, finding.Values{"kinds": once}).From(finding.CommonPractice)
	case len(locked) > 0:
		return finding.Failed(AgainLocked, finding.Values{"kinds": locked}).From(finding.CommonPractice)
	}
	return nil
}

// NotAgain lists the kinds that must not be tightened once more.
func NotAgain(p plan.Plan) []string {
	turned, once, locked := kindsNotAgain(p)
	return slices.Concat(turned, once, locked)
}

func kindsNotAgain(p plan.Plan) (turned, once, locked []string) {
	for _, k := range p.Kinds {
		switch {
		case p.LastAction(k.Name) == plan.Advance:
			turned = append(turned, k.Name)
		case k.Reuse == plan.ReuseOnce:
			once = append(once, k.Name)
		case screw.Sets(k.Lubricant):
			locked = append(locked, k.Name)
		}
	}
	return turned, once, locked
}
