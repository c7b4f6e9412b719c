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

// sameCentreMm is how far apart the centres of lines round one hole may lie.
const sameCentreMm = 0.1

// Why says what a circle is that is no hole of its own.
type Why string

const (
	Hole         Why = ""             // it is a hole
	Repeated     Why = "repeated"     // drawn twice
	RoundAnother Why = "round"        // round a hole: counterbore, thread, washer face
	Construction Why = "construction" // runs through the centres of holes
)

// Merge says for each circle whether it is a hole. Of circles round one centre
// the innermost is the hole; a circle on which the centres of three smaller
// holes or more lie is a construction line.
func Merge(circles []Circle) []Why {
	why := make([]Why, len(circles))
	order := make([]int, len(circles))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(circles[a].DiameterMm, circles[b].DiameterMm) })
	index := squares{}
	var kept []int
	for _, i := range order {
		inner, found := index.near(circles, circles[i].Centre)
		switch {
		case !found:
			index.add(circles[i].Centre, i)
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

// markConstruction looks for circles through holes. Only the few largest can
// be; with them all the work stays in step with the number of circles.
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

// squares finds a centre near a place.
type squares map[[2]int][]int

func squareOf(p geometry.Point) [2]int {
	return [2]int{int(math.Floor(p.X / sameCentreMm)), int(math.Floor(p.Y / sameCentreMm))}
}

func (s squares) add(p geometry.Point, i int) { s[squareOf(p)] = append(s[squareOf(p)], i) }

func (s squares) near(circles []Circle, p geometry.Point) (int, bool) {
	at := squareOf(p)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, i := range s[[2]int{at[0] + dx, at[1] + dy}] {
				if circles[i].Centre.Distance(p) <= sameCentreMm {
					return i, true
				}
			}
		}
	}
	return 0, false
}
