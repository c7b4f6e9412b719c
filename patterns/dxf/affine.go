package dxf

import (
	"math"

	"drawdown/geometry"
)

// affine maps places of a block to the view: x becomes x·p.X + y·q.X + move.X,
// and likewise y.
type affine struct{ p, q, move geometry.Point }

func scaled(f float64) affine {
	return affine{p: geometry.Point{X: f}, q: geometry.Point{Y: f}}
}

func moved(by geometry.Point) affine {
	return affine{geometry.Point{X: 1}, geometry.Point{Y: 1}, by}
}

func (t affine) direction(v geometry.Point) geometry.Point { return t.p.Scale(v.X).Add(t.q.Scale(v.Y)) }

func (t affine) place(v geometry.Point) geometry.Point { return t.direction(v).Add(t.move) }

// after returns the transform that applies first, and then t.
func (t affine) after(first affine) affine {
	return affine{t.direction(first.p), t.direction(first.q), t.place(first.move)}
}

// even returns the scale factor of a transform that keeps circles round; ok is
// false for any other.
func (t affine) even() (factor float64, ok bool) {
	a, b := math.Hypot(t.p.X, t.p.Y), math.Hypot(t.q.X, t.q.Y)
	across := t.p.X*t.q.X + t.p.Y*t.q.Y
	const slack = 1e-9
	return a, math.Abs(a-b) <= slack*a && math.Abs(across) <= slack*a*b
}

// mirrored is the plane of entities whose extrusion points down: x runs to the
// left (by the format's arbitrary axis algorithm for 0, 0, -1).
var mirrored = affine{p: geometry.Point{X: -1}, q: geometry.Point{Y: 1}}

// ellipse is a curve: centre + a·cos t + b·sin t.
type ellipse struct{ centre, a, b geometry.Point }

func circleOf(centre geometry.Point, radius float64) ellipse {
	return ellipse{centre, geometry.Point{X: radius}, geometry.Point{Y: radius}}
}

func (e ellipse) in(t affine) ellipse {
	return ellipse{t.place(e.centre), t.direction(e.a), t.direction(e.b)}
}

func (e ellipse) at(t float64) geometry.Point {
	return e.centre.Add(e.a.Scale(math.Cos(t))).Add(e.b.Scale(math.Sin(t)))
}

// FlatMm is the greatest distance between a curve and its straight pieces.
const FlatMm = 0.05

// mostPieces limits the pieces of one curve.
const mostPieces = 4096

// flatten returns points on the curve from parameter t0 over sweep, including
// both ends.
func (e ellipse) flatten(t0, sweep float64) []geometry.Point {
	// No point of the curve is further from its centre than this, so no piece
	// bulges more than on a circle of that radius.
	radius := math.Hypot(math.Hypot(e.a.X, e.a.Y), math.Hypot(e.b.X, e.b.Y))
	if across := e.a.X*e.b.X + e.a.Y*e.b.Y; math.Abs(across) < 1e-9*radius*radius {
		radius = math.Max(math.Hypot(e.a.X, e.a.Y), math.Hypot(e.b.X, e.b.Y))
	}
	step := math.Pi / 4
	if radius > FlatMm {
		step = math.Min(step, 2*math.Acos(1-FlatMm/radius))
	}
	pieces := int(math.Min(mostPieces, math.Max(1, math.Ceil(math.Abs(sweep)/step-1e-9))))
	points := make([]geometry.Point, pieces+1)
	for i := range points {
		points[i] = e.at(t0 + sweep*float64(i)/float64(pieces))
	}
	return points
}

// Flat returns a circle as a closed path.
func Flat(centre geometry.Point, diameterMm float64) []geometry.Point {
	points := circleOf(centre, diameterMm/2).flatten(0, 2*math.Pi)
	return points[:len(points)-1]
}

// bulge returns the arc between two vertices: the bulge is the tangent of a
// quarter of the arc's angle, positive for anticlockwise.
func bulge(from, to geometry.Point, b float64) (arc ellipse, t0, sweep float64) {
	chord := to.Sub(from)
	left := geometry.Point{X: -chord.Y, Y: chord.X}
	centre := from.Add(to).Scale(0.5).Add(left.Scale((1 - b*b) / (4 * b)))
	radius := centre.Distance(from)
	return circleOf(centre, radius), math.Atan2(from.Y-centre.Y, from.X-centre.X), 4 * math.Atan(b)
}
