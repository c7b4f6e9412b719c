package tile

import (
	"math"
	"testing"

	"drawdown/render/scene"
)

// A circle cut by a window: what remains is in the window and on the circle,
// and nothing of the circle in the window is missing (first principles: the
// length of its arcs).
func TestCutCircle(t *testing.T) {
	const r = 75.0
	circle := scene.Circle(0, 0, r)
	window := scene.Box{Left: -40, Top: -200, Right: 200, Bottom: 30}
	length := 0.0
	var here scene.Point
	for _, s := range cut(circle, window) {
		switch s.Verb {
		case scene.Move:
			here = s.P[0]
		case scene.Line:
			length += math.Hypot(s.P[0].X-here.X, s.P[0].Y-here.Y)
			for k := range 11 {
				q := scene.Point{X: here.X + (s.P[0].X-here.X)*float64(k)/10, Y: here.Y + (s.P[0].Y-here.Y)*float64(k)/10}
				// Four cubic curves deviate from a circle by 0.027 %;
				// coordinates are rounded to a hundredth.
				if off := math.Abs(math.Hypot(q.X, q.Y) - r); off > flatness+0.00028*r+0.01 {
					t.Fatalf("%.3f lies %.3f mm off the circle", q, off)
				}
				if !window.Grown(0.006).Contains(q) {
					t.Fatalf("%.3f lies outside the window", q)
				}
			}
			here = s.P[0]
		default:
			t.Fatalf("verb %d is left in a path that was cut", s.Verb)
		}
	}
	// y is at most 30: upwards from asin(30/75) on both sides. On the left the
	// part beyond x = −40 is missing, down to y = 30.
	low, left := math.Asin(30/r), math.Acos(40/r)
	want := r * ((math.Pi/2 + low) + (math.Pi/2 - left)) // the right half and the upper part of the left
	if math.Abs(length-want) > 0.1 {
		t.Errorf("%.3f mm of line are left, want %.3f", length, want)
	}
}

func TestCutKeepsWhatLiesInside(t *testing.T) {
	circle := scene.Circle(50, 50, 10)
	whole := cut(circle, scene.Box{Right: 100, Bottom: 100})
	if len(whole) != len(circle) || whole[1].Verb != scene.Curve {
		t.Errorf("a circle within the window became %d segments", len(whole))
	}
	if rest := cut(circle, scene.Box{Left: 61, Right: 100, Bottom: 100}); len(rest) > 0 {
		t.Errorf("a circle outside the window left %d segments", len(rest))
	}
	// A window inside the circle contains none of its line.
	if rest := cut(scene.Circle(50, 50, 40), scene.Box{Left: 40, Top: 40, Right: 60, Bottom: 60}); len(rest) > 0 {
		t.Errorf("a window within a circle shows %d segments", len(rest))
	}
	// A line through the window is one piece, from edge to edge.
	line := cut(scene.Polyline([]scene.Point{{X: -10, Y: 5}, {X: 5, Y: 5}, {X: 30, Y: 5}}, false), scene.Box{Right: 20, Bottom: 20})
	want := scene.Polyline([]scene.Point{{X: 0, Y: 5}, {X: 5, Y: 5}, {X: 20, Y: 5}}, false)
	if len(line) != 3 || line[0] != want[0] || line[1] != want[1] || line[2] != want[2] {
		t.Errorf("the line is cut to %v, want %v", line, want)
	}
}
