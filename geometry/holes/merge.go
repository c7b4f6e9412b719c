package holes

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// Circle is a round line of a drawing.
type Circle struct {
	Centre     geometry.Point
	DiameterMm float64
}

// sameCentreMm is the greatest distance between the centres of lines round one
// hole.
const sameCentreMm = 0.1

// Why is the reason that a circle is not a separate hole.
type Why string

const (
	Hole         Why = ""             // it is a hole
	Repeated     Why = "repeated"     // drawn twice
	RoundAnother Why = "round"        // round a hole: counterbore, thread, washer face
	Construction Why = "construction" // runs through the centres of holes
)

// Merge classifies each circle as a hole or not. Of concentric circles the
// innermost is the hole; a circle through the centres of three or more smaller
// holes is a construction line.
func Merge(circles []Circle) []Why {
	why := make([]Why, len(circles))
	order := make([]int, len(circles))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(circles[a].DiameterMm, circles[b].DiameterMm) })
	index := geometry.Squares{Side: sameCentreMm}
	var kept []int
	for _, i := range order {
		inner, found := index.Find(circles[i].Centre, func(k int) bool { return circles[k].Centre.Distance(circles[i].Centre) <= sameCentreMm })
		switch {
		case !found:
			index.Add(circles[i].Centre, i)
			kept = append(kept, i)
		case circles[i].DiameterMm-circles[inner].DiameterMm < sameCentreMm/10:
			why[i] = Repeated
		default:
			why[i] = RoundAnother
		}
	}
	markConstruction(circles, kept, why)
	return why
}

// markConstruction looks for circles through holes. Only the few largest can be
// such; checking only these keeps the work proportional to the number of
// circles.
func markConstruction(circles []Circle, kept []int, why []Why) {
	const through, largest = 3, 50
	for _, i := range kept[max(0, len(kept)-largest):] {
		on := 0
		for _, k := range kept {
			off := math.Abs(circles[k].Centre.Distance(circles[i].Centre) - circles[i].DiameterMm/2)
			if why[k] == Hole && circles[k].DiameterMm < circles[i].DiameterMm && off < sameCentreMm {
				on++
			}
		}
		if on >= through {
			why[i] = Construction
		}
	}
}
