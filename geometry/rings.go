package geometry

import "slices"

// Rings divides the places of a layout into rings around the centre, from the
// inside out. Each ring lists indices into l.Points.
//
// In a filled grid, rings are counted in columns and rows from the middle. In
// other layouts two places belong to one ring if their distances from the
// centre differ by less than a tolerance, which depends on the layout's
// spacing. The tolerance is set away from all jumps between distances, so that
// a hole measured slightly off cannot change the rings. A run of distances
// without a jump is divided so that no ring is wider than half a spacing.
func (l Layout) Rings(centre Point) [][]int {
	if l.Filled() {
		return l.gridRings()
	}
	return distanceRings(l.Points, centre)
}

func (l Layout) gridRings() [][]int {
	byNumber := make([][]int, max(l.Columns, l.Rows)+1)
	for i := range l.Points {
		// Doubled steps from the middle, to avoid halves with even counts.
		column, row := 2*l.Column[i]-(l.Columns-1), 2*l.Row[i]-(l.Rows-1)
		number := max(column, -column, row, -row)
		byNumber[number] = append(byNumber[number], i)
	}
	return slices.DeleteFunc(byNumber, func(ring []int) bool { return len(ring) == 0 })
}

func distanceRings(points []Point, centre Point) [][]int {
	if len(points) == 0 {
		return nil
	}
	spacing := Spacing(points)
	distance := Mapped(points, func(p Point) float64 { return p.Distance(centre) })
	order := Sorted(len(points), func(i int) float64 { return distance[i] })
	jumps := make([]float64, len(order))
	for k := 1; k < len(order); k++ {
		jumps[k] = distance[order[k]] - distance[order[k-1]]
	}
	tolerance := quietest(jumps, smallestJump*spacing, largestJump*spacing)
	var rings [][]int
	begin := 0
	for k := 1; k <= len(order); k++ {
		if k == len(order) || jumps[k] > tolerance {
			rings = appendNarrow(rings, order[begin:k], distance, spacing/2)
			begin = k
		}
	}
	return rings
}

// Limits of the ring tolerance, as shares of the spacing: more than a measuring
// error of a few tenths of a millimetre, less than the distance between two
// rows.
const (
	smallestJump = 0.05
	largestJump  = 0.18
)

// quietest returns the middle of the widest interval between low and high
// without a value.
func quietest(values []float64, low, high float64) float64 {
	inside := []float64{low, high}
	for _, v := range values {
		if v > low && v < high {
			inside = append(inside, v)
		}
	}
	slices.Sort(inside)
	middle, widest := (low+high)/2, 0.0
	for k := 1; k < len(inside); k++ {
		if width := inside[k] - inside[k-1]; width > widest {
			middle, widest = (inside[k]+inside[k-1])/2, width
		}
	}
	return middle
}

// appendNarrow adds the run of indices as one ring, or divides it at its widest
// jumps into parts that are narrow enough.
func appendNarrow(rings [][]int, run []int, distance []float64, width float64) [][]int {
	if width <= 0 || distance[run[len(run)-1]]-distance[run[0]] <= width {
		return append(rings, slices.Clone(run))
	}
	cut, widest := 1, 0.0
	for k := 1; k < len(run); k++ {
		if jump := distance[run[k]] - distance[run[k-1]]; jump > widest*(1+1e-9) {
			cut, widest = k, jump
		}
	}
	rings = appendNarrow(rings, run[:cut], distance, width)
	return appendNarrow(rings, run[cut:], distance, width)
}
