package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestLongAxis(t *testing.T) {
	tests := []struct {
		name   string
		points []Point
		want   Point
	}{
		{"none", nil, Point{1, 0}},
		{"one", []Point{{3, 4}}, Point{1, 0}},
		{"one, twice", []Point{{3, 4}, {3, 4}}, Point{1, 0}},
		{"square, no direction stands out", Grid(3, 3, 50, 50, Point{7, 7}), Point{1, 0}},
		{"circle, no direction stands out", Circle(7, 200, Point{7, 7}, 33, true), Point{1, 0}},
		{"hardly taller than wide", Grid(3, 3, 90, 92, Point{7, 7}), Point{0, 1}},
		{"wide grid", Grid(5, 2, 95, 90, Point{-7, 7}), Point{1, 0}},
		{"tall grid", Grid(2, 5, 95, 90, Point{-7, 7}), Point{0, 1}},
		{"row drawn downwards points up", Row(5, 60, Point{7, 7}, -90), Point{0, 1}},
		{"row drawn to the left points right", Row(5, 60, Point{7, 7}, 180), Point{1, 0}},
		{"falling row", []Point{{10, 20}, {14, 17}, {22, 11}}, Point{0.8, -0.6}}, // the 3-4-5 triangle
		{"rising row", []Point{{22, 17}, {14, 11}, {10, 8}}, Point{0.8, 0.6}},
	}
	for _, tt := range tests {
		if got := LongAxis(tt.points); !closeTo(got, tt.want, 1e-9) {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

// First principles: no other direction has a larger sum of squares about the
// centroid, checked every half degree.
func TestLongAxisAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := anyPoints(t, 2, 30)
		axis, centroid := LongAxis(points), Centroid(points)
		if math.Abs(axis.Distance(Point{})-1) > 1e-12 || axis.X < -1e-9 {
			t.Fatalf("%v is no unit vector to the right", axis)
		}
		extent := func(direction Point) float64 {
			sum := 0.0
			for _, p := range points {
				sum += math.Pow(p.Sub(centroid).Dot(direction), 2)
			}
			return sum
		}
		for k := range 360 {
			direction := Polar(Point{}, 1, float64(k)/2)
			// Moments that differ by a millionth count as equal.
			if other := extent(direction); other > extent(axis)*(1+3e-6)+1e-9 {
				t.Fatalf("%v: %v has %v, %v has %v", points, axis, extent(axis), direction, other)
			}
		}
	})
}

// First principles: the axis turns with the part.
func TestLongAxisMovesWithThePart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points, m := scattered(rapid.IntRange(3, 40).Draw(t, "count"), 6, rapid.Uint64().Draw(t, "seed")), anyMove(t)
		if len(points) > 2 {
			points = append(points, Point{900, 100}) // so that one direction is the longest
		}
		turned := move{deg: m.deg, scale: 1}
		want := turned.point(LongAxis(points))
		if got := LongAxis(m.points(points)); !closeTo(got, want, 1e-7) && !closeTo(got, want.Scale(-1), 1e-7) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}

// First principles: distances from the line, and how they grow with the part.
func TestOffLine(t *testing.T) {
	points := []Point{{0, 3}, {10, 4}, {20, 2}, {30, 3}}
	if got := OffLine(points, Point{1, 0}); got != 1 {
		t.Errorf("%v, want 1", got)
	}
	if got := OffLine(points, Point{0, 1}); got != 15 {
		t.Errorf("across: %v, want 15", got)
	}
	if got := OffLine(Row(9, 40, Point{3, -8}, 29), LongAxis(Row(9, 40, Point{3, -8}, 29))); got > 1e-9 {
		t.Errorf("a row is off its own line by %v", got)
	}
}
