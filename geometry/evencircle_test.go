package geometry

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestOneCircle(t *testing.T) {
	circle := Circle(8, 240, Point{7, -3}, 13, true) // chord 91.8 mm, a tenth is 9.2 mm
	off := func(by float64) []Point {
		points := slices.Clone(circle)
		points[2] = Polar(Point{7, -3}, 120+by, points[2].AngleFrom(Point{7, -3}))
		return points
	}
	for name, tt := range map[string]struct {
		points []Point
		want   bool
	}{
		"true":               {circle, true},
		"one 9 mm outside":   {off(9), true},
		"one 9 mm inside":    {off(-9), true},
		"one 10 mm outside":  {off(10), false},
		"one 10 mm inside":   {off(-10), false},
		"half of it":         {circle[:4], true},
		"two places":         {circle[:2], false},
		"none":               {nil, false},
		"two circles":        {append(Circle(8, 150, Point{7, -3}, 0, true), circle...), false},
		"a grid of 2 by 2":   {Grid(2, 2, 90, 40, Point{7, -3}), true},
		"a grid of 3 by 2":   {Grid(3, 2, 90, 40, Point{7, -3}), false},
		"a place in the hub": {append([]Point{{7, -3}}, circle...), false},
	} {
		if got := OneCircle(tt.points, Point{7, -3}); got != tt.want {
			t.Errorf("%s: %v", name, got)
		}
	}
	if OneCircle(circle, Point{17, -3}) {
		t.Error("one circle about a centre 10 mm beside it")
	}
}

// First principles: directions in steps of the circle, some left out.
func TestEvenPlaces(t *testing.T) {
	tests := []struct {
		name   string
		deg    []float64
		places []int
		count  int
	}{
		{"four", []float64{0, 90, 180, 270}, []int{0, 1, 2, 3}, 4},
		{"four, a little off", []float64{0, 97, 172, 284}, []int{0, 1, 2, 3}, 4},
		{"four of five", []float64{0, 72, 216, 288}, []int{0, 1, 3, 4}, 5},
		{"four of six: too many gone", []float64{0, 60, 240, 300}, nil, 4},
		{"ten of twelve", []float64{0, 30, 60, 120, 150, 180, 210, 270, 300, 330}, []int{0, 1, 2, 4, 5, 6, 7, 9, 10, 11}, 12},
		{"last one nearly round", []float64{0, 120, 359}, nil, 3},
		{"two in one place", []float64{0, 0, 180}, nil, 3},
		{"no even places", []float64{0, 37, 110, 270}, nil, 4},
		{"five of eight: too many gone", []float64{0, 45, 90, 135, 225}, nil, 5},
	}
	for _, tt := range tests {
		places, count := EvenPlaces(tt.deg)
		if !slices.Equal(places, tt.places) || count != tt.count {
			t.Errorf("%s: %v of %d, want %v of %d", tt.name, places, count, tt.places, tt.count)
		}
	}
}

// First principles: the places drawn are the places found. Each hole is up to a
// tenth of a step off, so none is more than a fifth off the common phase. A
// full circle of n is tried first, so n places are never taken for more than n.
func TestEvenPlacesFindsWhatWasDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.IntRange(3, 40).Draw(t, "count")
		deg, want := make([]float64, count), make([]int, count)
		for k := range deg {
			off := 0.0
			if k > 0 {
				off = rapid.Float64Range(-0.1, 0.1).Draw(t, "off")
			}
			deg[k], want[k] = 360*(float64(k)+off)/float64(count), k
		}
		if places, got := EvenPlaces(deg); got != count || !slices.Equal(places, want) {
			t.Fatalf("%v: %v of %d", deg, places, got)
		}
		// One bolt missing, not the first, the others exact. With few bolts, a
		// circle and one with a gap cannot be told apart.
		if gone := rapid.IntRange(1, count-1).Draw(t, "gone"); count > 8 {
			few, left := slices.Delete(slices.Clone(want), gone, gone+1), []float64{}
			for _, k := range few {
				left = append(left, 360*float64(k)/float64(count))
			}
			if places, got := EvenPlaces(left); got != count || !slices.Equal(places, few) {
				t.Fatalf("without %d of %d: %v of %d", gone, count, places, got)
			}
		}
	})
}
