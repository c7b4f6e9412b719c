package plan

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
)

// What is judged about a joint besides its bolts.
const (
	OrderJudged     finding.Code = "judged order"          //
	OrderOfMaker    finding.Code = "judged maker's order"  //
	OrderTooLong    finding.Code = "judged order too long" // most
	SpringsJudged   finding.Code = "judged springs"        //
	NoGasketJudged  finding.Code = "judged no gasket"      //
	GasketJudged    finding.Code = "judged gasket stress"  // kind
	GasketNotJudged finding.Code = "judged gasket"         // kind
	NoStages        finding.Code = "judged no stages"      //
)

// MostJudged is the largest number of fasteners for which an order is judged
// without being asked: the time grows with their square.
const MostJudged = 1000

// Covered reports what could be judged about the plan, and what could not, or
// only leniently, for lack of data.
func (p Plan) Covered() (judged, open []finding.Finding) {
	if len(p.Tighten.Stages) == 0 {
		open = append(open, finding.Noted(NoStages, nil))
	}
	ofBolts, openBolts := figures.Covered(p.Bolts())
	judged, open = append(judged, ofBolts...), append(open, openBolts...)
	switch {
	case slices.ContainsFunc(p.Groups, Group.Makers):
		open = append(open, finding.Noted(OrderOfMaker, nil))
	case len(p.Joint.Fasteners) > MostJudged:
		open = append(open, finding.Noted(OrderTooLong, finding.Values{"most": MostJudged}))
	default:
		judged = append(judged, finding.Noted(OrderJudged, nil))
	}
	switch springs, known, applies := p.coversSprings(); {
	case applies && known:
		judged = append(judged, springs)
	case applies:
		open = append(open, springs)
	}
	switch g := p.Clamped.Gasket; {
	case g.Seating+g.Work+g.Crush > 0 && len(p.Tighten.Stages) > 0:
		judged = append(judged, finding.Noted(GasketJudged, finding.Values{"kind": finding.Term(g.Kind)}))
	case g.Kind == "none":
		judged = append(judged, finding.Noted(NoGasketJudged, nil))
	default:
		open = append(open, finding.Noted(GasketNotJudged, finding.Values{"kind": g.Kind}))
	}
	return judged, open
}
