package stiffness

import (
	"math"

	"drawdown/geometry/unit"
)

// widestReach limits the width of the members around a head, in diameters of
// the bearing face, if the members are wide (common practice, no source: the
// cone of VDI 2230 is then close to 30°).
const widestReach = 3

// leastSlender is the least grip for the equations, in diameters of the bearing
// face: below it, their logarithm diverges (common practice, no source).
const leastSlender = 0.1

// ConeTangent returns the tangent of half the angle of the deformation cone
// under a head with the given bearing face, in members with the outer diameter
// outer.
func ConeTangent(grip, face, outer unit.Length, tapped bool) float64 {
	slender := math.Max(float64(grip/face), leastSlender)
	reach := math.Min(float64(outer/face), widestReach)
	reach = math.Max(reach, 1)
	if tapped {
		return 0.348 + 0.013*math.Log(slender) + 0.193*math.Log(reach) // VDI 2230-1, section 5.1.2.1: tan φE, tapped joint
	}
	return 0.362 + 0.032*math.Log(slender/2) + 0.153*math.Log(reach) // VDI 2230-1, section 5.1.2.1: tan φD, bolted joint
}
