package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Usual layouts have no strays (first principles: each place has a neighbour,
// or the whole is as wide as its widest gap).
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

// Random places on a part are not strays.
func TestNoStrayByChance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Uniform draws: rapid's own prefer the ends of their range.
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

// A coordinate ten times too large, or without its decimal point, is found on a
// grid of six or more, at every corner, however the part is turned.
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

// First principles: one place that is off on a regular part is found, by two
// symmetries, one symmetry, or a circle. Regular and irregular parts have none.
func TestFindOdd(t *testing.T) {
	grid := func(moved int, by Point) []Point {
		var all []Point
		for _, y := range []float64{45, -45} {
			for x := -190.; x <= 190; x += 95 {
				all = append(all, Point{x, y})
			}
		}
		all[moved] = all[moved].Add(by)
		return all
	}
	circle := func(n int, by Point) []Point {
		var all []Point
		for k := range n {
			all = append(all, Polar(Point{5, 3}, 100, 20+360*float64(k)/float64(n)))
		}
		all[1] = all[1].Add(by)
		return all
	}
	one := func(points []Point) []Point { // symmetric left and right only
		return append(points, Point{-60, -120}, Point{60, -120})
	}
	cover := func(left, right float64) []Point { // symmetric left and right except for the last two
		return []Point{{-58, 92}, {58, 92}, {-84, -40}, {84, -40}, {0, 128}, {0, -116}, {-78, 40}, {78, 40}, {-62, left}, {62, right}}
	}
	row := []Point{{-90, 0}, {-60, 0}, {-30, 0}, {0, 0}, {30, 0}, {60, 0}, {99, 0}}
	rowOff := []Point{{-90, 0}, {-60, 0}, {-30, 9}, {0, 0}, {30, 0}, {60, 0}, {90, 0}}
	irregular := []Point{{-90, 0}, {-52, 7}, {-30, 60}, {4, 71}, {30, 22}, {66, -9}, {90, -40}, {11, -31}}
	for _, c := range []struct {
		name   string
		points []Point
		want   Odd
		found  bool
	}{
		{"whole grid", grid(0, Point{}), Odd{}, false},
		{"grid, across", grid(2, Point{0, 9}), Odd{2, -1, 9}, true},
		{"grid, along", grid(0, Point{36, 0}), Odd{0, -1, 36}, true},
		{"grid, a corner both ways", grid(4, Point{6, 8}), Odd{4, -1, 10}, true},
		{"a little, as for one way round", grid(4, Point{4, 0}), Odd{}, false},
		{"measured by hand", grid(4, Point{0.5, -0.4}), Odd{}, false},
		{"one symmetry", one(grid(4, Point{20, 0})), Odd{4, -1, 20}, true},
		{"circle of 7", circle(7, Point{12, 5}), Odd{1, -1, 13}, true},
		{"whole circle of 7", circle(7, Point{}), Odd{}, false},
		{"one missing", grid(4, Point{})[:9], Odd{}, false},
		{"too few", []Point{{-9, -9}, {9, -9}, {9, 9}, {-7, 9}}, Odd{}, false},
		{"row, along", append(row, Point{-120, 0}), Odd{6, 7, 9}, true},
		{"row, across", rowOff, Odd{2, -1, 9}, true},
		{"irregular", irregular, Odd{}, false},
		{"a sign lost", cover(-104, 104), Odd{8, 9, 208}, true},
		{"two across a corner", cover(-104, 90), Odd{}, false},
	} {
		got, found := FindOdd(c.points)
		if found != c.found || found && (got.Index != c.want.Index || got.Other != c.want.Other || math.Abs(got.Off-c.want.Off) > 0.5) {
			t.Errorf("%s: %+v %v, want %+v %v", c.name, got, found, c.want, c.found)
		}
	}
}

// A point off both symmetries is found however far it is off. A point off one
// only, or where few others keep them, may be intended (first principles).
func TestOddByMoreThanASpacing(t *testing.T) {
	grid := func(columns int, moved Point) []Point {
		var points []Point
		for i := range 2 * columns {
			points = append(points, Point{60 * (float64(i%columns) - float64(columns-1)/2), 90 * (float64(i/columns) - 0.5)})
		}
		points[1] = moved
		return points
	}
	for name, c := range map[string]struct {
		points []Point
		want   bool
	}{
		"a row and a half further": {grid(5, Point{-60 - 90, -45}), true},
		"a place of another row":   {grid(5, Point{12, -45}), true},
		"on the middle line":       {grid(5, Point{-60, 0}), true},
		"of six":                   {grid(3, Point{0 - 90, -45}), false},
		"of eight":                 {grid(4, Point{-30 - 100, -45}), true},
		"a second one, opposite":   {append(grid(5, Point{-150, -45}), Point{150, 45}), false},
	} {
		odd, found := FindOdd(c.points)
		if found != c.want || found && odd.Index != 1 {
			t.Errorf("%s: %+v, %v", name, odd, found)
		}
	}
}
