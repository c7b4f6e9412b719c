package screw

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// NutFactor returns the K that corresponds to the coefficients of friction.
func NutFactor(t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) float64 {
	// Shigley 9th ed., Eq. (8-26): K is the arm of the long equation divided by
	// d
	return armMm(t, effective, threadFriction, headFriction, e) / t.MajorMm
}

// FrictionOfNutFactor returns the coefficient, the same in the thread and under
// the head, that corresponds to K. It is negative for a K below that of a bolt
// without friction.
func FrictionOfNutFactor(k float64, t thread.Thread, effective unit.Length, e Equation) float64 {
	atNone := NutFactor(t, effective, 0, 0, e)
	if k <= atNone {
		return k - atNone
	}
	low, high := 0., 1.
	for NutFactor(t, effective, high, high, e) < k && high < 1e6 {
		high *= 2
	}
	for range 200 { // bisection to the last bit
		middle := (low + high) / 2
		if NutFactor(t, effective, middle, middle, e) < k {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// usualNutFactor is K if the condition of the bolt is unknown: Shigley 9th ed.,
// section 8-8.
const usualNutFactor = 0.2

// mostNutFactor limits a nut factor: above the highest mean of tests, 0.52
// (Bickford and Nassar, Handbook of Bolts and Bolted Joints).
const mostNutFactor = 1

// settleNutFactor replaces the friction by the one that corresponds to K.
func (s *Completed) settleNutFactor(b Bolt) error {
	if b.NutFactor == 0 {
		return nil
	}
	least := NutFactor(s.Thread, s.Bearing.Effective(), 0, 0, s.Equation)
	var friction [3]float64
	for i, k := range []float64{b.NutFactor - b.NutFactorSpread, b.NutFactor, b.NutFactor + b.NutFactorSpread} {
		if !(k > least && k <= mostNutFactor) {
			return finding.Failed(FactorRange, finding.Values{"factor": k, "thread": s.Thread.Name, "least": math.Ceil(least*1000) / 1000, "most": mostNutFactor})
		}
		friction[i] = FrictionOfNutFactor(k, s.Thread, s.Bearing.Effective(), s.Equation)
	}
	s.Friction, s.byNutFactor = Same(Range{friction[0], friction[1], friction[2]}), true
	s.assume(finding.Noted(FrictionOfFactor, finding.Values{"friction": friction[1], "factor": b.NutFactor}))
	return nil
}
