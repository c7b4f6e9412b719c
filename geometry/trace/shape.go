package trace

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Limits between a hole and a doubtful one, and between that and none. They
// are common practice, no source.
const (
	soundShare   = 0.85 // of the edge that has to be round
	roundShare   = 0.6  // below this it is no round hole
	soundStep    = 0.6  // of the picture's contrast
	fewPixels    = 12   // across a hole
	slotFill     = 0.9  // of the ellipse with its moments
	slotLength   = 2.5  // times its width
	portTimes    = 2.5  // times the smallest hole
	surePortMm   = 25   // as wide an opening is for no bolt
	widestSlotMm = 25
	hullShare    = 0.93 // of its hull that a smooth opening fills
	noticedShare = 0.02
)

// shape measures one patch cut out of the part and says what it is.
func (t *tracer) shape(b blob) Shape {
	e := t.edge(b)
	m := momentsOf(e.mm)
	s := Shape{Contrast: e.contrast, At: m.centre, DiameterMm: 2 * math.Sqrt(m.area/math.Pi), Group: -1, Edge: e.mm}
	sound := keep(e.mm, func(i int) bool { return e.sound[i] })
	c, ok := fitCircle(sound)
	tolerance := max(1.5*e.side, 0.12, noticedShare*c.radius*2)
	on := keep(sound, func(i int) bool { return math.Abs(c.off(sound[i])) <= tolerance })
	s.Kept = float64(len(on)) / float64(len(e.mm))
	oval := 0.0
	if ok && len(on) > 0 {
		oval = c.oval(on)
	}
	nearArea := math.Abs(2*c.radius-s.DiameterMm) < 0.2*s.DiameterMm
	if !ok || s.Kept < roundShare || !nearArea || oval > tolerance*0.75 {
		t.notRound(&s, m)
		return s
	}
	s.At, s.DiameterMm, s.ScatterMm = c.centre, 2*c.radius, c.scatter
	s.Group = 0 // grouped with the others
	s.doubtful(oval, e.side)
	return s
}

// notRound tells slots, openings and spots apart.
func (t *tracer) notRound(s *Shape, m moments) {
	filled := m.area / (math.Pi * m.long * m.short)
	hull := m.area / math.Abs(momentsOf(geometry.Hull(s.Edge)).area)
	slot := filled > slotFill && hull > hullShare && m.long < slotLength*m.short
	switch {
	case slot && 2*m.short < widestSlotMm:
		s.Group, s.slot = 0, true
		across := geometry.Point{X: -m.axis.Y, Y: m.axis.X}
		s.DiameterMm = extent(s.Edge, across)
		s.doubt(Long, finding.Values{"width": unit.Length(s.DiameterMm), "length": unit.Length(extent(s.Edge, m.axis))})
	case s.DiameterMm >= portTimes*t.options.SmallestMm:
		s.Role = Port
		if s.DiameterMm < surePortMm {
			s.doubt(PerhapsPort, nil)
		}
	default:
		s.Role = Spot
		s.doubt(Dirt, nil)
	}
}

// moments are the size and the spread of a closed shape.
type moments struct {
	area        float64
	centre      geometry.Point
	long, short float64        // half axes of the ellipse with the same second moments
	axis        geometry.Point // along the long one, of length 1
}

// extent is how far points reach along a direction.
func extent(points []geometry.Point, along geometry.Point) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = min(low, p.Dot(along)), max(high, p.Dot(along))
	}
	return high - low
}

// momentsOf sums over the triangles between the edge and its first point.
func momentsOf(edge []geometry.Point) moments {
	if len(edge) < 3 {
		return moments{}
	}
	first := edge[0]
	var area, x, y, xx, yy, xy float64
	for i := range edge {
		a, b := edge[i].Sub(first), edge[(i+1)%len(edge)].Sub(first)
		w := a.X*b.Y - a.Y*b.X
		area += w / 2
		x += w * (a.X + b.X) / 6
		y += w * (a.Y + b.Y) / 6
		xx += w * (a.X*a.X + a.X*b.X + b.X*b.X) / 12
		yy += w * (a.Y*a.Y + a.Y*b.Y + b.Y*b.Y) / 12
		xy += w * (2*a.X*a.Y + a.X*b.Y + b.X*a.Y + 2*b.X*b.Y) / 24
	}
	if area == 0 {
		return moments{centre: first}
	}
	x, y = x/area, y/area
	xx, yy, xy = xx/area-x*x, yy/area-y*y, xy/area-x*y
	sum, differ := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return moments{
		area:   math.Abs(area),
		centre: first.Add(geometry.Point{X: x, Y: y}),
		long:   2 * math.Sqrt(max(sum+differ, 0)),
		short:  2 * math.Sqrt(max(sum-differ, 0)),
		axis:   geometry.Polar(geometry.Point{}, 1, math.Atan2(2*xy, xx-yy)/2*180/math.Pi),
	}
}

// doubtful says of a round hole what an eye has to judge.
func (s *Shape) doubtful(oval, side float64) {
	if s.Kept < soundShare {
		s.doubt(Torn, finding.Values{"round": s.Kept})
	}
	if limit := max(0.12, 0.75*noticedShare*s.DiameterMm, side); oval > limit/2 {
		s.doubt(NotRound, finding.Values{"shortest": unit.Length(s.DiameterMm - 2*oval), "longest": unit.Length(s.DiameterMm + 2*oval)})
	}
	if s.Contrast < soundStep {
		s.doubt(Faint, finding.Values{"contrast": s.Contrast})
	}
	if across := s.DiameterMm / side; across < fewPixels {
		s.doubt(Coarse, finding.Values{"pixels": across})
	}
}

// doubt notes what an eye has to judge in the shape.
func (s *Shape) doubt(code finding.Code, values finding.Values) {
	s.Doubts = append(s.Doubts, finding.Warned(code, values))
}
