package geometry

import (
	"math"
	"slices"
)

// LooseShare is how far off its place, as a share of the pitch, each way, a hole
// of filled rows or of a circle may lie and the rows or the circle still be
// seen: as one measures with a rule. A tenth of the pitch each way lies within
// it, with the tilt and the size that are fitted to such places.
const LooseShare = 0.17

// LooseRows brings points to filled rows that they lie on loosely; not ok where
// they lie on none. A single row is one, too. Whether there are rows does not
// depend on how they lie in the picture. Rows that can be level are.
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

// sameShape reports whether two layouts have as many rows and columns, or columns and
// rows.
func sameShape(a, b Layout) bool {
	return min(a.Columns, a.Rows) == min(b.Columns, b.Rows) && max(a.Columns, a.Rows) == max(b.Columns, b.Rows)
}

// looseTilts returns directions, in degrees, in which the rows may lie: that to the
// nearest neighbours, that of the longest extent and that of the longest side of
// the outline, and all fitted to the rows and columns seen along them.
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

// looseLevels parts the coordinates at their jumps: where of all jumps, by their
// size, one is so much larger than the one before as no other.
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
	// Between two levels lies at least what the pitch leaves when both are off.
	pitch := above / (1 - 2*LooseShare)
	return newLevels(points, coordinate, math.Max(least, math.Min(LooseShare*pitch, math.Sqrt(below*above)/2)))
}
