package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// First principles: a square with an opening, counted by hand.
func TestOnPart(t *testing.T) {
	square := []Point{{-10, -10}, {10, -10}, {10, 10}, {-10, 10}}
	opening := []Point{{-3, -3}, {3, -3}, {3, 3}, {-3, 3}}
	beside := []Point{{20, 0}, {30, 0}, {30, 10}}
	outline := [][]Point{square, opening, beside}
	for p, want := range map[Point]bool{
		{5, 5}: true, {0, 0}: false, {3.2, 0}: true, {2.8, 0}: true, {10.3, 0}: true, {11, 0}: false, {28, 2}: true, {22, 9}: false,
	} {
		if got := OnPart(p, outline, 0.5); got != want {
			t.Errorf("%v: %v", p, got)
		}
	}
	if Opening(outline, 0) || !Opening(outline, 1) || Opening(outline, 2) {
		t.Error("openings")
	}
}

// First principles: if points around a centre are in order of direction, no
// edges cross. If two that are not adjacent are swapped, some do.
func TestCrossing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 40).Draw(t, "points")
		path := make([]Point, n)
		for i := range path {
			r, a := rapid.Float64Range(20, 100).Draw(t, "radius"), 2*math.Pi*float64(i)/float64(n)
			path[i] = Point{r * math.Cos(a), r * math.Sin(a)}
		}
		if i, k, found := Crossing(path, 0); found {
			t.Fatalf("%v: edges %d and %d cross", path, i, k)
		}
		round := Circle(n, 100, Point{}, 0, false)
		i := rapid.IntRange(0, n-2).Draw(t, "first")
		round[i], round[i+1] = round[i+1], round[i]
		if _, _, found := Crossing(round, 0); !found {
			t.Fatalf("%v: no crossing", round)
		}
		if _, _, found := Crossing(round, 1000); found {
			t.Fatal("the loop is smaller than that")
		}
	})
}

// First principles: bolts 100 mm apart, so the edge is 50 mm outside.
func TestInsideOwnEdge(t *testing.T) {
	square := []Point{{-50, -50}, {50, -50}, {50, 50}, {-50, 50}}
	for p, want := range map[Point]float64{{0, 0}: 100, {50, 0}: 50, {100, 0}: 0, {130, 0}: -30} {
		if got := InsideOwnEdge(p, square); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: %g, want %g", p, got, want)
		}
	}
	circle := Circle(8, 200, Point{}, 90, true) // 76.5 mm apart
	half := 100 * math.Sin(math.Pi/8)
	if got, want := InsideOwnEdge(Point{100, 0}, circle), half; math.Abs(got-want) > 1e-9 {
		t.Errorf("on the circle: %g, want %g", got, want)
	}
}
