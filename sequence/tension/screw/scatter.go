package screw

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// method is a way to tighten, with its best and worst tightening factor.
type method struct {
	names []string // the first is used in lists
	alpha Range
}

// methods holds tightening factors αA: VDI 2230-1 (2003 and 2015), table A8
// (values from memory).
var methods = []method{
	{[]string{"elongation", "length measured", "elongation controlled"}, Range{Low: 1.1, High: 1.5}},
	{[]string{"yield", "yield controlled"}, Range{Low: 1.2, High: 1.4}},
	{[]string{"angle", "torque and angle", "angle controlled"}, Range{Low: 1.2, High: 1.4}},
	{[]string{"torque found by test", "torque, found by test"}, Range{Low: 1.4, High: 1.6}},
	{[]string{"torque", "torque wrench", "torque, friction estimated"}, Range{Low: 1.6, High: 2.0}},
	{[]string{"impact driver", "impact", "impulse driver", "impact wrench"}, Range{Low: 2.5, High: 4.0}},
}

// TighteningFactor returns the best (Low) and worst (High) αA of a way to
// tighten: VDI 2230-1, table A8. The error lists the ways.
func TighteningFactor(way string) (Range, error) {
	if m, ok := tension.Named(methods, func(m method) []string { return m.names }, way); ok {
		return Between(m.alpha.Low, m.alpha.High), nil
	}
	var known []string
	for _, m := range methods {
		known = append(known, m.names[0])
	}
	return Range{}, finding.Failed(NoSuchMethod, finding.Values{"written": way, "allowed": known})
}

// LeastPreload returns the least possible preload for the greatest one.
func LeastPreload(greatest unit.Force, alpha float64) unit.Force {
	return greatest / unit.Force(alpha) // VDI 2230-1, section 5.4.3: FMmin = FMmax/αA
}
