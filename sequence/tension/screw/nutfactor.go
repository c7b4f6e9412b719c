package screw

import (
	"fmt"
	"math"
	"strings"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// TorqueByNutFactor gives the torque at which the preload is reached, by the
// short equation.
func TorqueByNutFactor(preload unit.Force, t thread.Thread, k float64) unit.Torque {
	return unit.Torque(k * float64(preload) * t.MajorMm / 1000) // Shigley 9th ed., Eq. (8-27): T = K Fi d
}

// PreloadByNutFactor gives the preload that a torque reaches, by the short
// equation.
func PreloadByNutFactor(torque unit.Torque, t thread.Thread, k float64) unit.Force {
	return unit.Force(float64(torque) * 1000 / (k * t.MajorMm)) // Shigley 9th ed., Eq. (8-27)
}

// NutFactor gives the K that the coefficients of friction amount to.
func NutFactor(t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) float64 {
	// Shigley 9th ed., Eq. (8-26): K is the arm of the long equation over d
	return (ThreadArmMm(t, threadFriction, e) + HeadArmMm(effective, headFriction)) / t.MajorMm
}

// FrictionOfNutFactor gives the coefficient, the same in the thread and under
// the head, that amounts to K. It is below 0 for a K that not even a bolt
// without friction has.
func FrictionOfNutFactor(k float64, t thread.Thread, effective unit.Length, e Equation) float64 {
	atNone := NutFactor(t, effective, 0, 0, e)
	if k <= atNone {
		return k - atNone
	}
	low, high := 0., 1.
	for NutFactor(t, effective, high, high, e) < k && high < 1e6 {
		high *= 2
	}
	for range 200 { // halves the span to the last bit
		middle := (low + high) / 2
		if NutFactor(t, effective, middle, middle, e) < k {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// nutFactors holds K by the state of the bolt: Shigley 9th ed., table 8-15.
var nutFactors = []struct {
	state string
	k     float64
}{
	{"nonplated, black finish", 0.30},
	{"zinc-plated", 0.20},
	{"lubricated", 0.18},
}

// UnknownNutFactor is K where the state of the bolt is not known: Shigley 9th
// ed., section 8-8.
const UnknownNutFactor = 0.20

// NutFactorOf gives K for a state of the bolt: Shigley 9th ed., table 8-15.
func NutFactorOf(state string) (float64, error) {
	var known []string
	for _, row := range nutFactors {
		if tension.PlainWords(row.state) == tension.PlainWords(state) {
			return row.k, nil
		}
		known = append(known, row.state)
	}
	return 0, fmt.Errorf("no nut factor is known for %q; allowed: %s; or state K, such as %.1f", state, strings.Join(known, "; "), UnknownNutFactor)
}

// mostNutFactor bounds what is taken for a nut factor: above the highest mean
// of tests, 0.52 (Bickford and Nassar, Handbook of Bolts and Bolted Joints).
const mostNutFactor = 1

// settleNutFactor replaces the friction by the one that K amounts to.
func (s *Completed) settleNutFactor(b Bolt) error {
	if b.NutFactor == 0 {
		return nil
	}
	least := NutFactor(s.Thread, s.Bearing.Effective(), 0, 0, s.Equation)
	if !(b.NutFactor > least && b.NutFactor <= mostNutFactor) {
		return fmt.Errorf("nut factor K %g; allowed for %s: above %.3f (no friction) up to %d", b.NutFactor, s.Thread.Name, math.Ceil(least*1000)/1000, mostNutFactor)
	}
	friction := FrictionOfNutFactor(b.NutFactor, s.Thread, s.Bearing.Effective(), s.Equation)
	s.Friction, s.byNutFactor = Same(Range{friction, friction, friction}), true
	s.assume(tension.Assumption{What: tension.AnotherAssumption, Text: fmt.Sprintf("friction %.3f in the thread and under the head, from K %g, assumed", friction, b.NutFactor)})
	return nil
}
