package geometry

import (
	"math"
	"slices"
	"testing"
)

// First principles: the disc is on the longest side of an obtuse triangle,
// through all corners of an acute one, and on the ends of a line in any listing
// order.
func TestEncloseByTriangles(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		points []Point
		centre Point
		radius float64
	}{
		{"none", nil, Point{}, 0},
		{"one", []Point{{3, 4}}, Point{3, 4}, 0},
		{"two", []Point{{0, 0}, {6, 8}}, Point{3, 4}, 5},
		{"line", []Point{{10, 0}, {0, 0}, {4, 0}}, Point{5, 0}, 5},
		{"obtuse", []Point{{0, 0}, {100, 0}, {50, 10}}, Point{50, 0}, 50},
		{"right", []Point{{0, 0}, {60, 0}, {0, 80}}, Point{30, 40}, 50},
		{"acute", []Point{{-30, 0}, {30, 0}, {0, 90}}, Point{0, 40}, 50},
		{"rectangle without a corner", []Point{{0, 0}, {60, 0}, {0, 80}, {30, 40}}, Point{30, 40}, 50},
	} {
		for range 3 {
			got := Enclose(c.points)
			if !closeTo(got.Centre, c.centre, 1e-9) || math.Abs(got.Radius-c.radius) > 1e-9 {
				t.Errorf("%s: %+v, want %v and %g", c.name, got, c.centre, c.radius)
			}
			if len(c.points) > 0 {
				c.points = append(c.points[1:], c.points[0])
			}
		}
	}
	for _, abc := range [][3]Point{{{0, 0}, {10, 0}, {4, 0}}, {{0, 0}, {4, 0}, {10, 0}}, {{4, 0}, {0, 0}, {10, 0}}} {
		if got := through(abc[0], abc[1], abc[2]); got != (Disc{Point{5, 0}, 5}) {
			t.Errorf("through %v: %+v", abc, got)
		}
	}
}

// First principles: sectors of 30°, each including its first direction.
func TestTwelfths(t *testing.T) {
	t.Parallel()
	for k := range 12 {
		for _, deg := range []float64{0.01, 15, 29.99} {
			if got := twelfth(Polar(Point{}, 7, float64(30*k)+deg)); got != k {
				t.Errorf("%g° lies in twelfth %d, want %d", float64(30*k)+deg, got, k)
			}
		}
	}
	for d, want := range map[Point]int{{1, 0}: 0, {0, 1}: 3, {-1, 0}: 6, {0, -1}: 9} {
		if got := twelfth(d); got != want {
			t.Errorf("%v lies in twelfth %d, want %d", d, got, want)
		}
	}
}

// First principles: lines that cross inside both, and lines that only touch,
// share an end, or miss each other.
func TestSegmentsThatCross(t *testing.T) {
	t.Parallel()
	a, b := Point{0, 0}, Point{10, 0}
	for _, c := range []struct {
		r, s Point
		want bool
	}{
		{Point{5, -5}, Point{5, 5}, true}, {Point{5, 0}, Point{5, 5}, false}, {Point{5, 5}, Point{5, 0}, false}, {Point{10, -5}, Point{10, 5}, false},
		{Point{11, -5}, Point{11, 5}, false}, {Point{0, -5}, Point{0, 5}, false}, {Point{2, 0}, Point{8, 0}, false}, {Point{5, 1}, Point{5, 5}, false},
	} {
		if got := SegmentsCross(a, b, c.r, c.s); got != c.want || SegmentsCross(c.r, c.s, a, b) != got {
			t.Errorf("from %v to %v: %v", c.r, c.s, got)
		}
	}
	eight := []Point{{0, 0}, {40, 20}, {40, 0}, {0, 20}} // its loops are 20 mm high
	for least, want := range map[float64]bool{20: true, 20.1: false} {
		if first, second, found := Crossing(eight, least); found != want || found && (first != 0 || second != 2) {
			t.Errorf("loops of %g mm: %d, %d, %v", least, first, second, found)
		}
		turned := Mapped(eight, func(p Point) Point { return Point{p.Y, p.X} })
		if _, _, found := Crossing(turned, least); found != want {
			t.Errorf("upright, loops of %g mm: %v", least, found)
		}
	}
	if _, _, found := Crossing([]Point{{0, 0}, {40, 0}, {40, 20}, {0, 20}}, 1); found {
		t.Error("a rectangle crosses itself")
	}
}

// A stray is further away than the span of all others, and so far that fewer
// than one set in a thousand has it by chance: 2·(span/(gap + span))^(n−2).
func TestHowFarAStrayStands(t *testing.T) {
	t.Parallel()
	const span = 100
	for _, n := range []int{6, 8, 12, 30} {
		var points []Point
		for k := range n - 1 {
			points = append(points, Point{X: span * float64(k) / float64(n-2)})
		}
		limit := span * (math.Pow(1e-3/2, -1/float64(n-2)) - 1)
		for off, want := range map[float64]bool{max(limit, span) * 0.999: false, max(limit, span) * 1.001: true} {
			s, found := FindStray(append(slices.Clone(points), Point{X: span + off}))
			if found != want || found && (s.Index != n-1 || math.Abs(s.Gap-off) > 1e-9 || math.Abs(s.Span-span) > 1e-9) {
				t.Errorf("%d places, one %g mm off: %+v, %v", n, off, s, found)
			}
		}
	}
}

// The middle of the widest interval between two values; without values, the
// middle of all.
func TestQuietSpansAndNarrowRings(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		values []float64
		want   float64
	}{{nil, 5}, {[]float64{4}, 7}, {[]float64{6}, 3}, {[]float64{2, 9}, 5.5}, {[]float64{0, 10, 12, -3}, 5}, {[]float64{5}, 2.5}} {
		if got := quietest(c.values, 0, 10); got != c.want {
			t.Errorf("%v: %g, want %g", c.values, got, c.want)
		}
	}
	distance := []float64{0, 1, 5, 6, 7}
	for width, want := range map[float64]int{0: 1, 7: 1, 6.9: 2, 1.9: 3, 0.9: 5} {
		if got := appendNarrow(nil, []int{0, 1, 2, 3, 4}, distance, width); len(got) != want || !slices.Equal(slices.Concat(got...), []int{0, 1, 2, 3, 4}) {
			t.Errorf("as narrow as %g: %v", width, got)
		}
	}
	if got := appendNarrow(nil, []int{0, 1, 2, 3}, distance, 6); len(got) != 1 {
		t.Errorf("just as narrow: %v", got)
	}
	if got := appendNarrow(nil, []int{0, 1, 2, 3}, []float64{0, 3, 6, 8}, 5); !slices.Equal(got[0], []int{0}) {
		t.Errorf("of two jumps alike the first is cut: %v", got)
	}
}

// Three places can be a circle, two cannot. A circle or a line may be off by a
// tenth of the spacing.
func TestFewestOnACircle(t *testing.T) {
	t.Parallel()
	three := Circle(3, 100, Point{}, 0, true)
	if !OneCircle(three, Point{}) || OneCircle(three[:2], Point{}) {
		t.Error("three places make a circle, two do not")
	}
	if even, count := EvenCircle(three, LevelShare); count != 3 || !closeTo(even[1], three[1], 1e-9) {
		t.Errorf("%v of %d", even, count)
	}
	if even, _ := EvenCircle(three[:2], LevelShare); even != nil {
		t.Errorf("two places: %v", even)
	}
	for off, want := range map[float64]bool{0: true, 5.9: true, 14: false} { // the middle place moves the line by a third
		line := []Point{{0, 0}, {50, off}, {100, 0}}
		if got := OneLine(line); got != want {
			t.Errorf("one of three %g mm beside the line: %v", off, got)
		}
	}
	for off, want := range map[float64]bool{0: true, 129.9: true, 130.1: false} {
		if got := Neighbours(Point{}, Point{off, 0}, 100); got != want {
			t.Errorf("%g mm apart at a spacing of 100 mm: neighbours %v", off, got)
		}
	}
	for deg, want := range map[float64]bool{132.9: false, 133: true, 180: true, 227: true, 227.1: false} {
		if got := Across(deg, 0); got != want || Across(10, Turn(10-deg)) != want {
			t.Errorf("%g° apart: across %v", deg, got)
		}
	}
}

// Skipped levels have values and numbers too.
func TestSkippedLevels(t *testing.T) {
	t.Parallel()
	points := []Point{{0, 0}, {100, 0}, {202, 0}, {500, 0}, {500, 3}}
	l := newLevels(points, alongX, 4)
	if !l.straighten() || len(l.value) != 6 || !slices.Equal(l.of, []int{0, 1, 2, 5, 5}) {
		t.Fatalf("%+v", l)
	}
	for k, v := range l.value {
		if math.Abs(v-l.value[0]-float64(k)*(l.value[5]-l.value[0])/5) > 1e-9 {
			t.Errorf("level %d lies at %g of %v", k, v, l.value)
		}
	}
	for slack, want := range map[float64]int{1.49: 2, 1.5: 1} {
		if got := newLevels([]Point{{0, 0}, {3, 0}}, alongX, slack); len(got.value) != want || !got.tight() {
			t.Errorf("3 mm apart with %g mm to either side: %d levels", slack, len(got.value))
		}
	}
	chain := newLevels([]Point{{0, 0}, {3, 0}, {6, 0}}, alongX, 1.5)
	if len(chain.value) != 1 || chain.tight() || chain.value[0] != 3 || chain.widest != 6 {
		t.Errorf("a chain is one wide level: %+v", chain)
	}
	for k, got := range symmetric([]float64{0, 12, 30}) {
		if want := []float64{-1, 14, 29}[k]; math.Abs(got-want) > 1e-9 {
			t.Errorf("symmetric: value %d is %g, want %g", k, got, want)
		}
	}
}

// Picked, and the index by id.
func TestPickedAndIndex(t *testing.T) {
	t.Parallel()
	if got := Picked([]string{"a", "b", "c"}, []int{2, 0, 2}); !slices.Equal(got, []string{"c", "a", "c"}) {
		t.Errorf("%v", got)
	}
	j := Joint{Fasteners: []Fastener{{ID: "A"}, {ID: "B"}, {ID: "C"}}}
	if index := j.Index(); index["A"] != 0 || index["B"] != 1 || index["C"] != 2 || len(index) != 3 {
		t.Errorf("%v", index)
	}
	squares := Squares{Side: 10}
	for k, p := range []Point{{5, 5}, {15, 15}, {-5, -5}, {35, 5}} {
		squares.Add(p, k)
	}
	for number, want := range []bool{true, true, true, false} {
		got, found := squares.Find(Point{6, 6}, func(n int) bool { return n == number })
		if found != want || found && got != number {
			t.Errorf("number %d: found %v", number, found)
		}
	}
	if c := Centroid([]Point{{0, 0}, {9, 0}, {0, 6}}); !closeTo(c, Point{3, 2}, 1e-12) {
		t.Errorf("centroid %v", c)
	}
}
