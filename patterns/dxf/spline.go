package dxf

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// spline is a B-spline; with weights it is rational.
type spline struct {
	degree  int
	knots   []float64
	weights []float64 // one per control point
	control []geometry.Point
}

// highestDegree is more than any drawing program uses.
const highestDegree = 25

func (r *reader) spline(e entity, at place) {
	s := spline{degree: r.wholeOf(e, 71, 3)}
	for _, p := range e.pairs {
		switch p.code {
		case 10:
			s.control = append(s.control, geometry.Point{X: r.number(p)})
		case 20:
			if n := len(s.control); n > 0 {
				s.control[n-1].Y = r.number(p)
			}
		case 40:
			s.knots = append(s.knots, r.number(p))
		case 41:
			s.weights = append(s.weights, r.number(p))
		}
	}
	if len(s.control) == 0 {
		r.leaveOut(NoControlPoints, e)
		return
	}
	if !s.sound() {
		r.leaveOut(KnotsMisfit, e)
		return
	}
	for i, p := range s.control {
		s.control[i] = at.to.place(p) // flatten and transform give the same result in either order
	}
	r.addPiece(piece{points: s.flatten(), round: true, layer: at.layer, line: at.line})
}

// sound checks the counts, and adds weights if there are none.
func (s *spline) sound() bool {
	if len(s.weights) == 0 {
		s.weights = slices.Repeat([]float64{1}, len(s.control))
	}
	n := len(s.control)
	return s.degree >= 1 && s.degree <= highestDegree && n > s.degree && len(s.weights) == n && slices.Min(s.weights) > 0 &&
		len(s.knots) == n+s.degree+1 && slices.IsSorted(s.knots) && s.knots[n] > s.knots[s.degree]
}

// at returns the point at a parameter within a span of knots (de Boor).
func (s *spline) at(t float64, span int) geometry.Point {
	type weighted struct{ x, y, w float64 }
	var d [highestDegree + 1]weighted
	for j := range s.degree + 1 {
		p, w := s.control[span-s.degree+j], s.weights[span-s.degree+j]
		d[j] = weighted{p.X * w, p.Y * w, w}
	}
	for level := 1; level <= s.degree; level++ {
		for j := s.degree; j >= level; j-- {
			low, high := s.knots[span-s.degree+j], s.knots[span+1+j-level]
			share := 0.0
			if high > low {
				share = (t - low) / (high - low)
			}
			a, b := d[j-1], d[j]
			d[j] = weighted{a.x + share*(b.x-a.x), a.y + share*(b.y-a.y), a.w + share*(b.w-a.w)}
		}
	}
	p := d[s.degree]
	return geometry.Point{X: p.x / p.w, Y: p.y / p.w}
}

// flatten halves every span until no half deviates too far.
func (s *spline) flatten() []geometry.Point {
	var points []geometry.Point
	for span := s.degree; span < len(s.control); span++ {
		from, to := s.knots[span], s.knots[span+1]
		if to <= from {
			continue
		}
		if len(points) == 0 {
			points = append(points, s.at(from, span))
		}
		const first = 4 // pieces of a span, so that no wave hides between its ends
		for k := range first {
			a, b := from+(to-from)*float64(k)/first, from+(to-from)*float64(k+1)/first
			points = s.halve(points, span, a, b, s.at(b, span), 0)
		}
	}
	return points
}

// halve adds the points from one parameter, whose point is already there, to
// another.
func (s *spline) halve(points []geometry.Point, span int, from, to float64, end geometry.Point, depth int) []geometry.Point {
	const deepest = 8
	middle := (from + to) / 2
	m, begin := s.at(middle, span), points[len(points)-1]
	if depth >= deepest || fromLine(m, begin, end) <= FlatMm/2 {
		return append(points, end)
	}
	points = s.halve(points, span, from, middle, m, depth+1)
	return s.halve(points, span, middle, to, end, depth+1)
}

// fromLine returns the distance of a point from the straight line through a and
// b.
func fromLine(p, a, b geometry.Point) float64 {
	v := b.Sub(a)
	length := math.Hypot(v.X, v.Y)
	if length == 0 {
		return p.Distance(a)
	}
	w := p.Sub(a)
	along := math.Max(0, math.Min(1, (w.X*v.X+w.Y*v.Y)/(length*length)))
	return p.Distance(a.Add(v.Scale(along)))
}
