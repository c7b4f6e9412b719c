package overhaul

import (
	"drawdown/geometry/finding"
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
