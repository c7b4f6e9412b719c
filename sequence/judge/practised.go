package judge

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// fourThenRound reports whether an order tightens four places crosswise, a
// quarter apart, and then goes once around all others: an alternative pattern
// of ASME PCC-1, appendix F (value from memory). The four hold the joint level
// before the rest are tightened.
func (w *work) fourThenRound(order []int) bool {
	round := w.alongEdge()
	n := len(round)
	if n != len(order) || n < fewestForFour {
		return false
	}
	number := make([]int, n)
	for k, i := range round {
		number[i] = k
	}
	return w.quarters(order[:4], number) && goesRound(order[4:], number)
}

// alongEdge lists the places of a closed layout along its edge; nil if some are
// inside.
func (w *work) alongEdge() []int {
	switch {
	case w.seen.Family == family.Circle:
		return inRound(geometry.Count(len(w.units)), w.deg)
	case len(w.seen.Inner) == 0:
		return w.seen.Edge
	}
	return nil
}

// quarters reports whether four places are two opposite pairs about a quarter
// apart.
func (w *work) quarters(four, number []int) bool {
	n := float64(len(number))
	steps := func(a, b int) float64 {
		d := math.Abs(float64(number[a] - number[b]))
		return min(d, n-d)
	}
	if steps(four[0], four[1]) < n/2-1 || steps(four[2], four[3]) < n/2-1 {
		return false
	}
	return math.Abs(steps(four[0], four[2])-n/4) <= 1 && math.Abs(steps(four[1], four[2])-n/4) <= 1.5
}

// goesRound reports whether places follow each other in one direction along the
// edge.
func goesRound(order, number []int) bool {
	at := geometry.Picked(number, order)
	falls, rises := 0, 0
	for k := range at {
		if next := at[(k+1)%len(at)]; next < at[k] {
			falls++
		} else {
			rises++
		}
	}
	return falls == 1 || rises == 1
}

// inRound sorts places by their direction from the middle.
func inRound(places []int, deg []float64) []int {
	return geometry.Picked(places, geometry.Sorted(len(places), func(k int) float64 { return deg[places[k]] }))
}
