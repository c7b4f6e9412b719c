package plan

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
)

// What of a joint is judged beside its bolts.
const (
	OrderJudged     finding.Code = "judged order"         //
	OrderOfMaker    finding.Code = "judged maker's order" //
	SpringsJudged   finding.Code = "judged springs"       //
	NoGasketJudged  finding.Code = "judged no gasket"     //
	GasketNotJudged finding.Code = "judged gasket"        // kind
	NoStages        finding.Code = "judged no stages"     //
)

// Covered says what of the plan could be judged, and what could not or only
// leniently, for want of what.
func (p Plan) Covered() (judged, open []finding.Finding) {
	if len(p.Tighten.Stages) == 0 {
		open = append(open, finding.Noted(NoStages, nil))
	}
	ofBolts, openBolts := figures.Covered(p.Bolts())
	judged, open = append(judged, ofBolts...), append(open, openBolts...)
	if slices.ContainsFunc(p.Groups, Group.Makers) {
		open = append(open, finding.Noted(OrderOfMaker, nil))
	} else {
		judged = append(judged, finding.Noted(OrderJudged, nil))
	}
	if len(p.Joint.Clusters) > 0 {
		judged = append(judged, finding.Noted(SpringsJudged, nil))
	}
	switch kind := p.Clamped.Gasket.Kind; kind {
	case "none":
		judged = append(judged, finding.Noted(NoGasketJudged, nil))
	default:
		open = append(open, finding.Noted(GasketNotJudged, finding.Values{"kind": kind}))
	}
	return judged, open
}
