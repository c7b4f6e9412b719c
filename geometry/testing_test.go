package geometry

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func closeTo(p, q Point, tolerance float64) bool { return p.Distance(q) <= tolerance }

func samePoints(t *testing.T, what string, got, want []Point) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %d places %v, want %d", what, len(got), got, len(want))
	}
	for i := range want {
		if !closeTo(got[i], want[i], 1e-9) {
			t.Errorf("%s: place %d is %v, want %v", what, i+1, got[i], want[i])
		}
	}
}

// anyPoints draws points of many kinds: anywhere, on a coarse raster (which
// makes ties, duplicates and lines), on one slanted line.
func anyPoints(t *rapid.T, least, most int) []Point {
	n := rapid.IntRange(least, most).Draw(t, "count")
	kind := rapid.SampledFrom([]string{"anywhere", "raster", "line"}).Draw(t, "kind")
	points := make([]Point, n)
	for i := range points {
		x, y := float64(rapid.IntRange(-9, 12).Draw(t, "x")), float64(rapid.IntRange(-4, 6).Draw(t, "y"))
		switch kind {
		case "anywhere":
			x += rapid.Float64Range(0, 1).Draw(t, "more x")
			y += rapid.Float64Range(0, 1).Draw(t, "more y")
		case "line":
			y = 0.37*x + 2
		}
		points[i] = Point{37 + 11*x, -23 + 7*y}
	}
	return points
}

// move is a rotation, a scaling and a shift: the part as another picture shows
// it.
type move struct {
	deg, scale float64
	by         Point
}

func anyMove(t *rapid.T) move {
	return move{
		rapid.Float64Range(-180, 180).Draw(t, "turned"),
		rapid.Float64Range(0.05, 20).Draw(t, "scaled"),
		Point{rapid.Float64Range(-900, 900).Draw(t, "right"), rapid.Float64Range(-900, 900).Draw(t, "up")},
	}
}

func (m move) point(p Point) Point {
	s, c := math.Sincos(m.deg * math.Pi / 180)
	return Point{c*p.X - s*p.Y, s*p.X + c*p.Y}.Scale(m.scale).Add(m.by)
}

func (m move) points(points []Point) []Point { return Mapped(points, m.point) }

// scattered returns random points on a plate off the origin, at least gap
// apart.
func scattered(n int, gap float64, seed uint64) []Point {
	r := rand.New(rand.NewPCG(seed, 7))
	side := 60 * math.Sqrt(float64(n))
	var points []Point
	for len(points) < n {
		p := Point{37 + side*1.7*r.Float64(), -11 + side*r.Float64()}
		if !slices.ContainsFunc(points, func(q Point) bool { return p.Distance(q) < gap }) {
			points = append(points, p)
		}
	}
	return points
}
