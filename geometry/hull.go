package geometry

import (
	"cmp"
	"slices"
)

// Hull returns the convex hull of the points, anticlockwise from the leftmost
// one (the lowest of several), without points on its edges. One or two points
// are returned as they are; points on one line give its two ends.
func Hull(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, compare)
	sorted = slices.Compact(sorted)
	if len(sorted) < 3 {
		return sorted
	}
	lower := chain(sorted)
	slices.Reverse(sorted)
	upper := chain(sorted)
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// chain keeps the points that turn left: one half of the hull (monotone chain).
func chain(sorted []Point) []Point {
	var kept []Point
	for _, p := range sorted {
		for len(kept) >= 2 && cross(kept[len(kept)-2], kept[len(kept)-1], p) <= 0 {
			kept = kept[:len(kept)-1]
		}
		kept = append(kept, p)
	}
	return kept
}

// cross is positive if a → b → c turns left.
func cross(a, b, c Point) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

// compare orders points from left to right, then upwards.
func compare(p, q Point) int {
	return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y))
}
