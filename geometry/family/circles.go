package family

import (
	"slices"

	"drawdown/geometry"
)

// circle recognizes even places on one circle, a few of which may be missing.
func (s *seer) circle() (Seen, bool) { return s.circleWithin(geometry.LevelShare) }

// looseCircle does the same for places measured with a rule.
func (s *seer) looseCircle() (Seen, bool) { return s.circleWithin(geometry.LooseShare) }

func (s *seer) circleWithin(share float64) (Seen, bool) {
	seen := Seen{Family: Circle, Rings: [][]int{geometry.Count(len(s.points))}}
	even, count := geometry.EvenCircle(s.points, share)
	if even == nil {
		return seen, s.named
	}
	seen.Layout = geometry.Layout{Points: even, Regular: true}
	seen.OffMm, seen.Missing = off(s.points, even), count-len(s.points)
	return seen, true
}

// ringShare is the least distance, in spacings, from the outermost place of one
// circle to the next circle.
const ringShare = 0.3

// onEdge reports whether an inner ring is close to the outline of all places,
// as on a triangle. Then it is not a separate circle.
func (s *seer) onEdge(ring []int) bool {
	round := outline(s.points)
	return slices.ContainsFunc(ring, func(i int) bool { return depthIn(round, s.points[i]) < ringShare*s.spacing })
}

// circles recognizes concentric even circles, with or without one place in the
// middle.
func (s *seer) circles() (Seen, bool) {
	if len(s.points) < 4 {
		return Seen{}, false
	}
	centre := geometry.Enclose(s.points).Centre
	distance := func(i int) float64 { return s.points[i].Distance(centre) }
	order := geometry.Sorted(len(s.points), distance)
	var rings [][]int
	for k, i := range order {
		if k == 0 || distance(i)-distance(order[k-1]) > ringShare*s.spacing {
			rings = append(rings, nil)
		}
		rings[len(rings)-1] = append(rings[len(rings)-1], i)
	}
	seen := Seen{Family: Circles, Rings: rings}
	brought := slices.Clone(s.points)
	for k, ring := range rings {
		if k == 0 && len(ring) == 1 && distance(ring[0]) <= ringShare*s.spacing {
			continue
		}
		even, count := geometry.EvenCircle(geometry.Picked(s.points, ring), geometry.LooseShare)
		if even == nil || geometry.Centroid(even).Distance(centre) > ringShare*s.spacing && count == len(ring) {
			return seen, s.named
		}
		seen.Missing += count - len(ring)
		for m, i := range ring {
			brought[i] = even[m]
		}
	}
	if len(rings) < 2 || !s.named && s.onEdge(rings[len(rings)-2]) {
		return seen, s.named
	}
	seen.Layout, seen.OffMm = geometry.Layout{Points: brought, Regular: true}, off(s.points, brought)
	return seen, true
}
