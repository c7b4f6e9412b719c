package diagram

import (
	"math"
	"strconv"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// Heights of the capitals of sequence numbers, in millimetres.
const (
	largestCap = 6.0
	usualCap   = 5.0 // the least up to twenty fasteners on A4
	smallerCap = 4.0 // where to begin beyond twenty
	leastCap   = 3.0 // never under this
	capStep    = 0.25
	usualCount = 20
)

// size is how large numbers and marks are drawn.
type size struct {
	capMm  float64
	radius float64 // of a round mark
	led    bool    // numbers stand outside, on leader lines
}

func (z size) em() float64 { return z.capMm / font.CapHeight }

// settle picks the view and the size together, since large marks at the edge
// make the part smaller: the largest numbers that fit into their marks; where
// even the least do not, small marks with the numbers on leader lines.
func (s *sketch) settle() size {
	n := len(s.req.Order)
	first := largestCap
	if n > usualCount {
		first = smallerCap
	}
	for capMm := first; capMm >= leastCap; capMm -= capStep {
		z := size{capMm: capMm, radius: numberRadius(n, capMm)}
		s.view = s.fitWith(z.radius)
		if s.closest() >= 2*s.widest(z.radius)+marksApart {
			return z
		}
	}
	z := size{capMm: leastCap, led: true, radius: 2.2}
	s.view = s.fitWith(ledEdge)
	for z.radius > smallestMark && s.closest() < 2*s.widest(z.radius)+marksApart {
		z.radius -= 0.1
	}
	return z
}

const (
	marksApart   = 1.0 // between two marks
	smallestMark = 0.7
	ledEdge      = 10.0 // kept free round the fasteners for numbers on leaders
)

// numberRadius is the radius of a round mark that holds the widest number.
func numberRadius(count int, capMm float64) float64 {
	widest := font.Width("0", scene.Bold, capMm/font.CapHeight) * float64(len(strconv.Itoa(count)))
	return math.Hypot(widest/2, capMm/2) + 0.8
}

// fitWith fits the part into the box with marks of the given radius.
func (s *sketch) fitWith(radius float64) view {
	joint := s.req.Plan.Joint
	fasteners := geometry.Bounds(joint.Points())
	return fit(partBounds(joint), fasteners, room(s.req.Box, joint.Front), s.widest(radius)+ringGap+0.6)
}

// closest is the least distance between two fasteners on the page.
func (s *sketch) closest() float64 {
	least := math.Inf(1)
	for _, d := range geometry.NearestDistances(s.req.Plan.Joint.Points()) {
		least = math.Min(least, d)
	}
	return least * s.view.scale
}

// widest is the reach of the widest shape in use, for a round mark's radius.
func (s *sketch) widest(radius float64) float64 {
	widest := radius
	for i := range s.req.Plan.Kinds {
		widest = math.Max(widest, radius*shapeOf(i).reach)
	}
	return widest
}

// NumberCap tells how high the numbers would be in a box, without drawing, and
// whether they would stand outside their marks.
func NumberCap(req Request) (capMm float64, led bool) {
	z := (&sketch{req: req}).settle()
	return z.capMm, z.led
}
