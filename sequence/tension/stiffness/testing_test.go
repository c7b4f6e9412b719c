package stiffness

import (
	"math"

	"drawdown/geometry/unit"
)

const in = 25.4 // mm, NIST SP 811, B.8

// preloadOfAngle returns the preload that an angle adds in a joint that is elastic
// and closed: Gere and Timoshenko, Eq. (2-22), nut advance n p.
func preloadOfAngle(turn unit.Angle, pitchMm float64, bolt, members Stiffness) unit.Force {
	return unit.Force(float64(turn) / 360 * pitchMm / float64(bolt.Resilience()+members.Resilience()))
}

// shigleyMembers returns the members of Shigley 9th ed., section 8-5: cones of 30°
// from washer faces of 1.5 d.
func shigleyMembers(d unit.Length, layers ...layer) Stiffness {
	return pressedBody{face: 1.5 * d, hole: d, outer: unit.Length(math.Inf(1)), tangent: math.Tan(math.Pi / 6)}.resilience(layers).Stiffness()
}
