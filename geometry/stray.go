package geometry

import (
	"math"
	"slices"
)

// Stray is a point that lies far outside all others.
type Stray struct {
	Index int
	Gap   float64 // to the nearest other point
	Span  float64 // of all others: the diameter of the smallest disc round them
}

// FindStray finds the point that stands so far from all others that its place
// is more likely a slip of the pen than a place: -1500 for -150. At most one
// point is found, and never one of a pair that stands far off together.
//
// The gap has to be as wide as all others span, and so wide that of as many
// points scattered on a line by chance, fewer than one set in a thousand leaves
// such a gap at an end: 2·(1 − gap/(gap + span))^(n−2), from the spacings of
// uniform order statistics. Points of a plane leave it far less often.
func FindStray(points []Point) (Stray, bool) {
	const fewest, byChance = 4, 1e-3
	n := len(points)
	if n < fewest {
		return Stray{}, false
	}
	s := Stray{}
	for i, d := range NearestDistances(points) {
		if d > s.Gap {
			s.Index, s.Gap = i, d
		}
	}
	others := slices.Delete(slices.Clone(points), s.Index, s.Index+1)
	s.Span = 2 * Enclose(others).Radius
	if s.Gap <= s.Span {
		return Stray{}, false
	}
	chance := 2 * math.Pow(s.Span/(s.Gap+s.Span), float64(n-2))
	return s, chance < byChance
}
