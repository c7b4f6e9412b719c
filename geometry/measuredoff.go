package geometry

import (
	"math"
	"slices"
)

// LooseShare is how far a hole may be off its place, as a share of the pitch in
// each direction, for filled rows or a circle still to be recognized. It suits
// measuring with a rule: it covers a tenth of the pitch each way, plus the tilt
// and size fitted to such places.
const LooseShare = 0.17

// LooseRows fits filled rows to points that are loosely on them. ok is false if
// there are no such rows. A single row counts. The result does not depend on
// how the rows are turned in the picture; rows that can be level are made
// level.
func LooseRows(points []Point) (Layout, bool) {
	if len(points) < 2 {
		return Layout{}, false
	}
	for _, tilt := range looseTilts(points) {
		if aslant, ok := looseRowsAt(tilt, points); ok {
			if level, ok := looseRowsAt(0, points); ok && sameShape(level, aslant) {
				return level, true
			}
			return aslant, true
		}
	}
	return Layout{}, false
}

// sameShape reports whether two layouts have the same numbers of rows and
// columns, possibly swapped.
func sameShape(a, b Layout) bool {
	return min(a.Columns, a.Rows) == min(b.Columns, b.Rows) && max(a.Columns, a.Rows) == max(b.Columns, b.Rows)
}

// looseTilts returns directions that the rows may have, in degrees: to the
// nearest neighbours, of the longest extent, of the longest side of the
// outline, each fitted to the rows and columns found along it.
func looseTilts(points []Point) []float64 {
	spacing := Spacing(points)
	tilts := []float64{neighbourTilt(points), LongAxis(points).AngleFrom(Point{}), longestSide(points).AngleFrom(Point{})}
	for _, tilt := range tilts {
		frame := rotated(points, -tilt)
		columns, rows := looseLevels(frame, alongX, spacing), looseLevels(frame, alongY, spacing)
		tilts = append(tilts, tilt+tiltOf(frame, columns, rows))
	}
	return tilts
}

// longestSide returns the longest side of the hull of points.
func longestSide(points []Point) Point {
	hull := Hull(points)
	var longest Point
	for k, p := range hull {
		if side := hull[(k+1)%len(hull)].Sub(p); side.Dot(side) > longest.Dot(longest) {
			longest = side
		}
	}
	return longest
}

func looseRowsAt(tilt float64, points []Point) (Layout, bool) {
	spacing, frame := Spacing(points), rotated(points, -tilt)
	columns, rows := looseLevels(frame, alongX, spacing), looseLevels(frame, alongY, spacing)
	layout, ok := levelled(frame, tilt, columns, rows)
	single := min(layout.Rows, layout.Columns) == 1 && max(layout.Rows, layout.Columns) == len(points)
	return layout, ok && layout.Column != nil && (layout.Filled() || single)
}

// looseLevels divides the coordinates at their jumps: it sorts the jumps by
// size and divides where the ratio from one to the next is largest.
func looseLevels(points []Point, coordinate func(Point) float64, spacing float64) *levels {
	at := Mapped(points, coordinate)
	slices.Sort(at)
	if at[len(at)-1]-at[0] <= 2*LooseShare*spacing {
		return newLevels(points, coordinate, LooseShare*spacing)
	}
	least := LevelShare * spacing
	jumps := []float64{2 * least}
	for k := 1; k < len(at); k++ {
		if jump := at[k] - at[k-1]; jump > 2*least {
			jumps = append(jumps, jump)
		}
	}
	slices.Sort(jumps)
	below, above := jumps[len(jumps)-1], 2*jumps[len(jumps)-1]
	for k := 1; k < len(jumps); k++ {
		if jumps[k]*below > above*jumps[k-1] {
			below, above = jumps[k-1], jumps[k]
		}
	}
	// Two levels are at least this far apart if both are off towards each
	// other.
	pitch := above / (1 - 2*LooseShare)
	return newLevels(points, coordinate, math.Max(least, math.Min(LooseShare*pitch, math.Sqrt(below*above)/2)))
}
