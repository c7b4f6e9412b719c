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

// LevelRows brings points to filled rows that lie level and that they lie on
// loosely; not ok where they lie on none. A single row is one, too.
func LevelRows(points []Point) (Layout, bool) { return looseRows(points, 0) }

// LooseRows does the same with rows that lie aslant.
func LooseRows(points []Point) (Layout, bool) {
	return looseRows(points, neighbourTilt(points), LongAxis(points).AngleFrom(Point{}))
}

func looseRows(points []Point, tilts ...float64) (Layout, bool) {
	if len(points) < 2 {
		return Layout{}, false
	}
	spacing := Spacing(points)
	for _, tilt := range tilts {
		frame := rotated(points, -tilt)
		columns, rows := looseLevels(frame, alongX, spacing), looseLevels(frame, alongY, spacing)
		layout, ok := levelled(frame, tilt, columns, rows)
		if ok && layout.Column != nil && (layout.Filled() || layout.Rows == 1 && layout.Columns == len(points)) {
			return layout, true
		}
	}
	return Layout{}, false
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
