package geometry

import (
	"cmp"
	"math"
	"slices"
)

// mostCompared limits the work on outlines whose edges all overlap. On a real
// part few edges do.
const mostCompared = 20_000_000

// Crossing finds two edges of a closed path that cross. It returns the indices
// of their start points. A loop whose bounding box is smaller than least does
// not count: traced edges have such loops in narrow places.
func Crossing(path []Point, least float64) (first, second int, found bool) {
	edges := make([]Box, len(path))
	for k, p := range path {
		edges[k] = Bounds([]Point{p, path[(k+1)%len(path)]})
	}
	// Along the axis on which the edges are shorter in total, compare each edge
	// with those that start before it ends.
	from, to := sides(edges)
	order := make([]int, len(path))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(from[a], from[b]) })
	compared := 0
	for i, a := range order {
		for _, b := range order[i+1:] {
			if compared++; from[b] > to[a] || compared > mostCompared {
				break
			}
			if a, b := min(a, b), max(a, b); edgesCross(path, a, b) && loop(path, a, b) >= least {
				return a, b, true
			}
		}
	}
	return 0, 0, false
}

// sides returns where edges begin and end, along the axis on which they are
// shorter in total.
func sides(edges []Box) (from, to []float64) {
	wide, high := 0.0, 0.0
	for _, e := range edges {
		wide, high = wide+e.Width(), high+e.Height()
	}
	for _, e := range edges {
		if wide <= high {
			from, to = append(from, e.Min.X), append(to, e.Max.X)
		} else {
			from, to = append(from, e.Min.Y), append(to, e.Max.Y)
		}
	}
	return from, to
}

// edgesCross reports whether the edges that start at points a and b cross.
// Edges that only touch, or share an end, do not.
func edgesCross(path []Point, a, b int) bool {
	p, q, r, s := path[a], path[(a+1)%len(path)], path[b], path[(b+1)%len(path)]
	return SegmentsCross(p, q, r, s)
}

// SegmentsCross reports whether the segments pq and rs cross. Segments that
// only touch do not.
func SegmentsCross(p, q, r, s Point) bool {
	return cross(p, q, r)*cross(p, q, s) < 0 && cross(r, s, p)*cross(r, s, q) < 0
}

// loop returns the longer side of the bounding box of the smaller of the two
// loops that a crossing forms.
func loop(path []Point, a, b int) float64 {
	one := Bounds(path[a+1 : b+1])
	other := Bounds(slices.Concat(path[b+1:], path[:a+1]))
	return math.Min(math.Max(one.Width(), one.Height()), math.Max(other.Width(), other.Height()))
}
