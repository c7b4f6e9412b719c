package patterns

import (
	"math"

	"drawdown/geometry"
)

// leastDistanceMm is nearer than any two fasteners can stand; under it the same
// hole was listed twice.
const leastDistanceMm = 0.5

type cell struct{ x, y int }

// checkDistances reports fasteners that stand on each other. Squares of the
// least distance keep the work in step with the number of fasteners: one that
// stands on another is left out, so that no square fills up.
func (r *reader) checkDistances() {
	squares := map[cell][]int{}
	reported := map[[2]*node]bool{}
	for i, f := range r.input.Joint.Fasteners {
		other, found := r.nearFastener(squares, f.At)
		if !found {
			c := cellOf(f.At)
			squares[c] = append(squares[c], i)
			continue
		}
		here, there := r.fasteners.from[i], r.fasteners.from[other]
		if pair := [2]*node{here, there}; !reported[pair] {
			reported[pair] = true
			r.fail(here, "", "%s stands on %s (%s), nearer than %g mm",
				f.ID, r.input.Joint.Fasteners[other].ID, there.placeSeenFrom(here), leastDistanceMm)
		}
	}
}

func cellOf(p geometry.Point) cell {
	return cell{int(math.Floor(p.X / leastDistanceMm)), int(math.Floor(p.Y / leastDistanceMm))}
}

func (r *reader) nearFastener(squares map[cell][]int, at geometry.Point) (int, bool) {
	c := cellOf(at)
	for dx := -1; dx <= 1; dx++ {
		for dy := -1; dy <= 1; dy++ {
			for _, i := range squares[cell{c.x + dx, c.y + dy}] {
				if r.input.Joint.Fasteners[i].At.Distance(at) < leastDistanceMm {
					return i, true
				}
			}
		}
	}
	return 0, false
}

// checkStray warns of a fastener that lies far outside the others. Where some
// could not be read nobody knows what it lies outside of.
func (r *reader) checkStray() {
	if r.errorsSince(0) {
		return
	}
	s, found := geometry.FindStray(r.input.Joint.Points())
	if !found {
		return
	}
	r.warn(r.fasteners.from[s.Index], "%s lies %.0f mm from the nearest other fastener, and all the others lie within %.0f mm; is its place right?",
		r.input.Joint.Fasteners[s.Index].ID, s.Gap, s.Span)
}
