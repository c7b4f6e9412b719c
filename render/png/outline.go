package png

import (
	"math"

	"drawdown/render/scene"
)

// A band sees little of a long line, and gg cuts a curve into pieces of one
// pixel, each of them with a joint. So paths come to gg as straight pieces that
// are as long as they may be, without those that cannot be seen in the band.

// straight is how far a chord may lie from its curve, in pixels.
const straight = 0.03

// mostChords bounds the pieces of one curve.
const mostChords = 1000

// outline is one sub-path as a run of points.
type outline struct {
	points []scene.Point
	closed bool
}

// outlines gives a path as straight pieces.
func outlines(path scene.Path, place func(scene.Point) scene.Point) []outline {
	var out []outline
	for _, seg := range path {
		if seg.Verb == scene.Move {
			out = append(out, outline{points: []scene.Point{place(seg.P[0])}})
			continue
		}
		o := &out[len(out)-1]
		switch seg.Verb {
		case scene.Line:
			o.points = append(o.points, place(seg.P[0]))
		case scene.Curve:
			o.curve(place(seg.P[0]), place(seg.P[1]), place(seg.P[2]))
		case scene.Close:
			o.closed = true
		}
	}
	return out
}

// curve adds a cubic curve as chords of even parameter. A chord over 1/n of the
// parameter strays from the curve by an eighth of the second derivative over n²
// at most; that derivative is largest at one of the ends.
func (o *outline) curve(b, c, d scene.Point) {
	a := o.points[len(o.points)-1]
	bend := 6 * max(
		math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y),
		math.Hypot(b.X-2*c.X+d.X, b.Y-2*c.Y+d.Y))
	n := int(min(math.Ceil(math.Sqrt(bend/(8*straight))), mostChords))
	for i := 1; i < n; i++ {
		o.points = append(o.points, scene.Bezier(a, b, c, d, float64(i)/float64(n)))
	}
	o.points = append(o.points, d)
}

// seen drops the points whose neighbours lie on the same side of the band as
// they do. The piece that then joins the neighbours lies there too.
func (o outline) seen(top, bottom float64) []scene.Point {
	side := func(q scene.Point) int {
		switch {
		case q.Y < top:
			return -1
		case q.Y > bottom:
			return 1
		}
		return 0
	}
	last := len(o.points) - 1
	out := make([]scene.Point, 0, 64)
	for i, q := range o.points {
		s := side(q)
		if i == 0 || i == last || s == 0 || side(o.points[i-1]) != s || side(o.points[i+1]) != s {
			out = append(out, q)
		}
	}
	return out
}
