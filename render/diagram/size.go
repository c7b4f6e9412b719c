package diagram

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/font"
)

// Heights of the capitals of sequence numbers, in millimetres.
const (
	writtenCap = 7.0 // to begin with in an empty mark, for a number written by hand
	largestCap = 6.0 // for a few fasteners
	largerCap  = 5.5
	usualCap   = 5.0 // the least up to twenty fasteners on A4
	smallerCap = 4.0 // where to begin beyond twenty
	leastCap   = 3.0 // never under this
	capStep    = 0.5
	fewCount   = 10
	usualCount = 20
)

// size is how large numbers and marks are drawn.
type size struct {
	capMm  float64
	radius float64 // of a round mark
	led    bool    // numbers stand outside, on leader lines
	// bowRoom is kept free round the part for arrows that pass outside it.
	bowRoom float64
}

func (z size) em() float64 { return z.capMm / font.CapHeight }

// sizes gives the sizes to try, best first. View and size are settled
// together, since large marks at the edge make the part smaller. The first is
// the largest at which the numbers fit into their marks; further ones are a
// little smaller, down to the usual height. Where not even the least fits,
// the numbers stand on leader lines: by marks as large as keep apart, then by
// marks that leave room for a number between them.
func (s *sketch) sizes() []size {
	n := s.count()
	first := largestCap
	switch {
	case s.req.Show == Blank:
		first = writtenCap
	case n > usualCount:
		first = smallerCap
	case n > fewCount:
		first = largerCap
	}
	var sizes []size
	for capMm := first; capMm >= leastCap; capMm -= capStep {
		if len(sizes) > 0 && capMm < usualCap {
			break
		}
		if z := (size{capMm: capMm, radius: s.holdingRadius(capMm)}); s.apart(z) {
			sizes = append(sizes, z)
		}
	}
	if len(sizes) > 0 {
		return sizes
	}
	return []size{s.largestLed(s.apart), s.largestLed(s.leavesRoom)}
}

// largestLed gives the largest marks, with their texts outside, that pass the test.
func (s *sketch) largestLed(test func(size) bool) size {
	z := size{capMm: leastCap, led: true, radius: 2.2}
	for z.radius > smallestMark && !test(z) {
		z.radius -= 0.1
	}
	return z
}

// leavesRoom says whether a number has room between two marks of that size.
func (s *sketch) leavesRoom(z size) bool {
	return s.closest()*s.fitWith(z).scale >= 2*s.widest(z.radius)+leastCap+1.4
}

// apart says whether marks of that size keep apart.
func (s *sketch) apart(z size) bool {
	return s.closest()*s.fitWith(z).scale >= 2*s.widest(z.radius)+marksApart
}

const (
	marksApart   = 1.0 // between two marks
	smallestMark = 0.7
	ledEdge      = 10.0 // kept free round the fasteners for numbers on leaders
)

// fitWith fits the part into the box with marks of the given size.
func (s *sketch) fitWith(z size) view {
	joint := s.req.Plan.Joint
	edge := s.widest(z.radius) + ringGap + 0.6
	if z.led {
		edge = ledEdge
	}
	box := s.labelRoom(room(s.req.Box, joint.Front)).Grown(-z.bowRoom)
	return fit(s.bounds, geometry.Bounds(joint.Points()), box, edge)
}

// closest is the least distance between two fasteners of the part, in
// millimetres.
func (s *sketch) closest() float64 {
	if s.nearest == 0 {
		s.nearest = slices.Min(geometry.NearestDistances(s.req.Plan.Joint.Points()))
	}
	return s.nearest
}

// widest is the reach of the widest shape in use, for a round mark's radius.
func (s *sketch) widest(radius float64) float64 {
	widest := radius
	for i := range s.req.Plan.Kinds {
		widest = math.Max(widest, radius*shapeOf(i).reach)
	}
	return widest
}

// NumberCap tells how high the numbers or words would be in a box, without
// drawing, and whether they would stand outside their marks.
func NumberCap(req Request) (capMm float64, led bool) {
	z := newSketch(req).sizes()[0]
	return z.capMm, z.led
}
