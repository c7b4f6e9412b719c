package stiffness

import (
	"math"

	"drawdown/geometry/unit"
)

// Resilience is the deformation of a part per newton, in mm/N (δ of VDI 2230).
type Resilience float64

// Stiffness is the force per millimetre, in N/mm (k of Shigley).
type Stiffness float64

// Stiffness returns the inverse.
func (r Resilience) Stiffness() Stiffness { return Stiffness(1 / r) }

// Resilience returns the inverse.
func (k Stiffness) Resilience() Resilience { return Resilience(1 / k) }

// RodResilience returns the resilience of a round rod or a length of bolt.
func RodResilience(length, diameter unit.Length, elastic unit.Stress) Resilience {
	return SleeveResilience(length, diameter, 0, elastic) // VDI 2230-1, section 5.1.1.1: δ = l/(E A)
}

// SleeveResilience returns the resilience of a tube.
func SleeveResilience(length, outer, hole unit.Length, elastic unit.Stress) Resilience {
	area := math.Pi / 4 * float64(outer*outer-hole*hole)
	return Resilience(float64(length) / (float64(elastic) * area)) // VDI 2230-1, section 5.1.2: δ = 4 l/(E π (DA² − dh²))
}

// FrustumResilience returns the resilience of a cone of compressed material,
// from the diameter face at its small end; tangent is that of half its angle.
func FrustumResilience(thickness, face, hole unit.Length, tangent float64, elastic unit.Stress) Resilience {
	t, D, d := float64(thickness), float64(face), float64(hole)
	wide := 2 * t * tangent
	// Shigley 9th ed., Eq. (8-19): k = π E d tan α / ln{[(2t tan α + D − d)(D + d)]/[(2t tan α + D + d)(D − d)]};
	// VDI 2230-1, section 5.1.2.1 has the same cone.
	return Resilience(math.Log((wide+D-d)*(D+d)/((wide+D+d)*(D-d))) / (math.Pi * float64(elastic) * d * tangent))
}

// LoadShare returns the share of a working load that the bolt carries.
func LoadShare(bolt, members Stiffness) float64 {
	return float64(bolt / (bolt + members)) // Shigley 9th ed., Eq. (8-24): C = kb/(kb + km)
}
