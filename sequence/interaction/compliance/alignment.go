package compliance

import (
	"slices"

	"drawdown/geometry"
)

// RowEnds finds the two bolts farthest apart, the leftmost (then the lowest)
// first, in any listing order.
func RowEnds(at []geometry.Point) (first, last geometry.Point) {
	first, last = at[0], at[0]
	for i, p := range at {
		for _, q := range at[i+1:] {
			if p.Distance(q) > first.Distance(last) {
				first, last = p, q
			}
		}
	}
	if last.X < first.X || last.X == first.X && last.Y < first.Y {
		first, last = last, first
	}
	return first, last
}

// InLine reports whether places are on a line, within a tenth of their spacing.
func InLine(at []geometry.Point) bool {
	if len(at) < 2 {
		return false
	}
	first, last := RowEnds(at)
	most := geometry.CircleShare * geometry.Spacing(at)
	return !slices.ContainsFunc(at, func(p geometry.Point) bool { return distanceToEdge(first, last, p) > most })
}

// OnCircle reports whether places are on a circle.
func OnCircle(at []geometry.Point) bool {
	return geometry.OneCircle(at, geometry.Enclose(at).Centre)
}
