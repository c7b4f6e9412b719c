package diagram

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/font"
)

// Capital heights of sequence numbers, in millimetres.
const (
	writtenCap = 7.0 // start value for an empty mark, for a number written by hand
	largestCap = 6.0 // for a few fasteners
	largerCap  = 5.5
	usualCap   = 5.0 // the least for up to twenty fasteners on A4
	smallerCap = 4.0 // start value for more than twenty
	leastCap   = 3.0 // never smaller
	capStep    = 0.5
	fewCount   = 10
	usualCount = 20
)

// size is the size of numbers and marks.
type size struct {
	capMm  float64
	radius float64 // of a round mark
	led    bool    // numbers are outside the marks, on leader lines where crowded
	edge   float64 // kept free around the fasteners for outside numbers
}

func (z size) em() float64 { return z.capMm / font.CapHeight }

// sizes returns the sizes to try, best first. It fits view and size together,
// because large marks at the edge make the part smaller. The first is the
// largest at which the numbers fit into their marks; the next are slightly
// smaller, down to the usual height. If not even the least fits, the numbers go
// outside.
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
		if len(sizes) > 0 && capMm < usualCap && !s.req.Modest {
			break
		}
		if z := (size{capMm: capMm, radius: math.Hypot(s.widestText(capMm/font.CapHeight)/2, capMm/2) + 0.8}); s.apart(z) {
			sizes = append(sizes, z)
		}
	}
	if len(sizes) > 0 {
		return sizes
	}
	return s.ledSizes()
}

// ledSizes returns the sizes to try for outside numbers: marks with room for a
// number between them, the largest marks that do not touch, small marks, then
// small marks on a smaller part with numbers all around it.
func (s *sketch) ledSizes() []size {
	var sizes []size
	roomy, large := s.largestLed(s.leavesRoom, ledEdges[0]), s.largestLed(s.apart, ledEdges[0])
	if roomy.radius >= fairMark {
		sizes = append(sizes, roomy)
	}
	sizes = append(sizes, large)
	smalls := []size{{radius: fairMark, edge: ledEdges[0]}, {radius: fairMark, edge: ledEdges[1]}, {radius: tinyMark, edge: ledEdges[0]}, {radius: tinyMark, edge: fullEdge}}
	if s.fans(large) {
		sizes, smalls = nil, nil
		for _, spare := range fanSpares {
			smalls = append(smalls, size{radius: tinyMark, edge: 2*s.widestText(large.em()) + gapAside + fanReach + 1.5 + spare})
		}
	}
	for _, small := range smalls {
		z := s.largestLed(s.apart, small.edge)
		z.radius = math.Min(z.radius, small.radius)
		if !slices.Contains(sizes, z) {
			sizes = append(sizes, z)
		}
	}
	return sizes
}

// ledEdges are the widths to keep free around the fasteners for outside
// numbers, in millimetres.
var ledEdges = [2]float64{10, 17}

// fanSpares are added in turn to the edge that a fan needs, in millimetres, if
// the last few numbers do not fit.
var fanSpares = []float64{0, 0.8, 1.6}

func (s *sketch) largestLed(test func(size) bool, edge float64) size {
	z := size{capMm: leastCap, led: true, edge: edge, radius: 2.2}
	for z.radius > smallestMark && !test(z) {
		z.radius -= 0.1
	}
	return z
}

func (s *sketch) leavesRoom(z size) bool {
	return s.closest()*s.fitWith(z).scale >= 2*s.widest(z.radius)+tallText+2*besideGap+comfortable.nearerBy
}

func (s *sketch) apart(z size) bool {
	closest := s.closest() * s.fitWith(z).scale
	gap := marksApart
	if z.led {
		gap = math.Min(gap, closest/4)
	}
	return closest >= 2*s.widest(z.radius)+gap
}

const (
	marksApart   = 1.0 // between two marks
	smallestMark = 0.4
	fairMark     = 1.1 // radius of a mark that is easy to see
	tinyMark     = 0.5
	fullEdge     = 4.0 // kept free around the fasteners where the part needs the whole box
	tallText     = 3.2 // height taken up by a number of the least size
)

func (s *sketch) fitWith(z size) view {
	joint := s.req.Plan.Joint
	edge := s.widest(z.radius) + ringGap + 0.6
	if z.led {
		edge = z.edge
	}
	box := s.labelRoom(room(s.req.Box, joint.Front, s.req.SmallEm))
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

func (s *sketch) widest(radius float64) float64 {
	widest := radius
	for i := range s.req.Plan.Kinds {
		widest = math.Max(widest, radius*shapeOf(i).reach)
	}
	return widest
}

// NumberCap returns the height of the numbers or words in a box without
// drawing, and whether they would be outside their marks.
func NumberCap(req Part) (capMm float64, led bool) {
	z := newSketch(req).sizes()[0]
	return z.capMm, z.led
}
