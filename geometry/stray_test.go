package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Places that a person drew are no strays (first principles: each has a
// neighbour, or the whole is as wide as its widest gap).
func TestNoStrayInLayouts(t *testing.T) {
	row := func(n int, pitch float64) []Point {
		var all []Point
		for i := range n {
			all = append(all, Point{X: float64(i) * pitch})
		}
		return all
	}
	manifold := append(row(12, 60), Point{X: 4000}, Point{X: 4000, Y: 50}) // one far pair
	for name, points := range map[string][]Point{
		"none": nil, "one": row(1, 1), "two": row(2, 1), "three, one far": {{}, {X: 1}, {X: 900}},
		"row of 4": row(4, 60), "row of 40": row(40, 60), "manifold with a far pair": manifold,
		"bracket and its far bolt":  append(row(5, 30), Point{X: 420}),
		"six, and one twice as far": append(row(6, 20), Point{X: 300}),
	} {
		if s, found := FindStray(points); found {
			t.Errorf("%s: %+v", name, s)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 60).Draw(t, "count")
		radius := rapid.Float64Range(10, 2000).Draw(t, "radius")
		var circle []Point
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			circle = append(circle, Point{radius * math.Cos(a), radius * math.Sin(a)})
		}
		if s, found := FindStray(circle); found {
			t.Fatalf("circle of %d: %+v", n, s)
		}
	})
}

// Places scattered over a part are no strays.
func TestNoStrayByChance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Even draws: rapid's own lean to the ends of their range.
		random := newRandom(rapid.Uint64().Draw(t, "seed"))
		n := 4 + int(random()*60)
		width, height := 20+980*random(), 20+980*random()
		points := make([]Point, n)
		for i := range points {
			points[i] = Point{width * random(), height * random()}
		}
		if s, found := FindStray(points); found {
			t.Fatalf("%d places: %+v", n, s)
		}
	})
}

func newRandom(seed uint64) func() float64 {
	return func() float64 {
		seed += 0x9e3779b97f4a7c15
		z := seed
		z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
		z = (z ^ z>>27) * 0x94d049bb133111eb
		return float64((z^z>>31)>>11) / (1 << 53)
	}
}

// A coordinate ten times too large is found on a grid of six and more, at every
// corner, whichever way the part lies; so is one without its point.
func TestStrayIsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns, rows := rapid.IntRange(3, 9).Draw(t, "columns"), rapid.IntRange(2, 4).Draw(t, "rows")
		pitch := rapid.Float64Range(20, 120).Draw(t, "pitch")
		var points []Point
		for i := range columns * rows {
			points = append(points, Point{pitch * (float64(i%columns) - float64(columns-1)/2), pitch * (float64(i/columns) - float64(rows-1)/2)})
		}
		slip := rapid.SampledFrom([]int{0, columns - 1, columns*rows - 1}).Draw(t, "slip")
		points[slip].X *= rapid.SampledFrom([]float64{20, 100}).Draw(t, "times")
		s, found := FindStray(points)
		if !found || s.Index != slip {
			t.Fatalf("%d × %d: found %v %+v, want %d", columns, rows, found, s, slip)
		}
	})
	head := []Point{{-190, 45}, {-95, 45}, {0, 45}, {95, 45}, {190, 45}, {-190, -45}, {-95, -45}, {0, -45}, {95, -45}, {1900, -45}}
	if s, found := FindStray(head); !found || s.Index != 9 || math.Abs(s.Gap-math.Hypot(1710, 90)) > 1e-9 {
		t.Errorf("1900 for 190: %v %+v", found, s)
	}
}
