package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// First principles: whole turns do not change a direction.
func TestTurn(t *testing.T) {
	tests := map[float64]float64{
		0: 0, 360: 0, 720: 0, -360: 0, 359.5: 359.5, -90: 270, 450: 90, -725: 355, 1e6: 280,
		-1e-17: 0, // rounds up to a full turn, which is 0
	}
	for deg, want := range tests {
		if got := Turn(deg); got != want {
			t.Errorf("Turn(%v) = %v, want %v", deg, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		deg := rapid.Float64Range(-1e6, 1e6).Draw(t, "deg")
		if got := Turn(deg); got < 0 || got >= 360 || math.Abs(math.Remainder(got-deg, 360)) > 1e-9 {
			t.Fatalf("Turn(%v) = %v", deg, got)
		}
	})
}

// First principles: a place at a distance and direction is seen at that
// distance and direction.
func TestPolarAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		centre := Point{rapid.Float64Range(-50, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y")}
		radius, deg := rapid.Float64Range(1, 1000).Draw(t, "radius"), rapid.Float64Range(-720, 720).Draw(t, "deg")
		p := Polar(centre, radius, deg)
		if off := math.Remainder(p.AngleFrom(centre)-deg, 360); math.Abs(off) > 1e-9 {
			t.Fatalf("%v° is seen at %v°", deg, p.AngleFrom(centre))
		}
		if math.Abs(p.Distance(centre)-radius) > 1e-9 {
			t.Fatalf("distance %v, want %v", p.Distance(centre), radius)
		}
	})
}

// First principles: arithmetic.
func TestVectors(t *testing.T) {
	p, q := Point{3, -7}, Point{-2, 5}
	for what, ok := range map[string]bool{
		"sum":        p.Add(q) == Point{1, -2},
		"difference": p.Sub(q) == Point{5, -12},
		"distance":   p.Distance(q) == 13,
		"scaled":     p.Scale(-2) == Point{-6, 14},
		"product":    p.Dot(q) == -41,
		"left turn":  cross(Point{1, 1}, Point{4, 1}, Point{4, 3}) == 6,
		"centroid":   Centroid([]Point{p, q, {5, 5}}) == Point{2, 1},
		"no points":  Centroid(nil) == Point{} && Bounds(nil) == Box{},
		"box":        Bounds([]Point{p, q, {0, 9}}) == Box{Point{-2, -7}, Point{3, 9}},
		"sizes":      Bounds([]Point{p, q}).Width() == 5 && Bounds([]Point{p, q}).Height() == 12,
		"grown":      Box{Point{1, 2}, Point{3, 5}}.Grown(2) == Box{Point{-1, 0}, Point{5, 7}},
	} {
		if !ok {
			t.Errorf("%s is wrong", what)
		}
	}
}
