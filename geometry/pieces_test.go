package geometry

import (
	"math"
	"slices"
	"testing"
)

// Crossing paths, by numbers (first principles): the loop of a figure of eight
// is found whichever axis the edges are short on, unless it is too small.
func TestCrossingOfNarrowAndFlat(t *testing.T) {
	t.Parallel()
	for _, flat := range []bool{false, true} {
		for _, c := range []struct {
			name          string
			path          []Point
			least         float64
			first, second int
			found         bool
		}{
			{"a bow", []Point{{0, 0}, {100, 10}, {100, 0}, {0, 10}}, 1, 0, 2, true},
			{"a bow, as large as asked", []Point{{0, 0}, {100, 10}, {100, 0}, {0, 10}}, 10, 0, 2, true},
			{"a bow, too small", []Point{{0, 0}, {100, 10}, {100, 0}, {0, 10}}, 11, 0, 0, false},
			{"a box", []Point{{0, 0}, {100, 0}, {100, 10}, {0, 10}}, 0, 0, 0, false},
			{"listed from the right", []Point{{100, 0}, {0, 10}, {0, 0}, {100, 10}}, 1, 0, 2, true},
			{"far along", []Point{{0, 0}, {40, 1}, {80, 0}, {200, 10}, {200, 0}, {80, 11}, {40, 10}, {0, 11}}, 1, 3, 0, false},
			{"late edges", []Point{{0, 0}, {50, -30}, {100, 0}, {150, 40}, {160, 0}, {110, 45}, {60, 60}, {0, 50}}, 1, 3, 4, false},
		} {
			path := c.path
			if flat {
				path = Mapped(path, func(p Point) Point { return Point{p.Y, p.X} })
			}
			first, second, found := Crossing(path, c.least)
			want := slowCrossing(path, c.least)
			if found != want || c.found && (first != c.first || second != c.second) {
				t.Errorf("%s, flat %v: %d, %d, %v, want %v", c.name, flat, first, second, found, want)
			}
		}
	}
}

// slowCrossing compares every edge with all others.
func slowCrossing(path []Point, least float64) bool {
	for a := range path {
		for b := a + 1; b < len(path); b++ {
			if edgesCross(path, a, b) && loop(path, a, b) >= least {
				return true
			}
		}
	}
	return false
}

// First principles: points inside, also at slanted edges, and points within a
// tolerance of an edge.
func TestOnADiamond(t *testing.T) {
	t.Parallel()
	diamond := []Point{{0, -10}, {10, 0}, {0, 10}, {-10, 0}}
	hole := []Point{{-2, -2}, {2, -2}, {2, 2}, {-2, 2}}
	other := []Point{{30, -2}, {34, -2}, {34, 2}, {30, 2}}
	outline := [][]Point{diamond, hole, other}
	for p, want := range map[Point]bool{
		{4, 5}: true, {-4, 5}: true, {4, -5}: true, {-4, -5}: true, {6, 6}: false, {-6, 6}: false, {6, -6}: false, {-6, -6}: false,
		{0, 0}: false, {2.5, 0}: true, {1.6, 0}: true, {1.4, 0}: false, {32, 0}: true, {36, 0}: false, {10.5, 0}: true, {10.6, 0}: false,
	} {
		if got := OnPart(p, outline, 0.5); got != want {
			t.Errorf("%v: %v", p, got)
		}
	}
	if got := FromEdge(Point{14, 3}, diamond); math.Abs(got-5) > 1e-12 { // beyond the corner
		t.Errorf("from the corner: %g", got)
	}
	if got := FromEdge(Point{7, 7}, diamond); math.Abs(got-2*math.Sqrt2) > 1e-12 {
		t.Errorf("from the side: %g", got)
	}
	if got := (Point{3, 4}).fromSegment(Point{}, Point{}); got != 5 {
		t.Errorf("from a point: %g", got)
	}
}

// Places on a circle of n with some missing: numbered from the first, however
// turned. A place more than a fifth of a step off does not fit.
func TestEvenPlacesByHand(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		deg    []float64
		places []int
		count  int
	}{
		{[]float64{0, 90, 180, 270}, []int{0, 1, 2, 3}, 4},
		{[]float64{0, 90, 180}, nil, 3},
		{[]float64{0, 72, 144, 288}, []int{0, 1, 2, 4}, 5},
		{[]float64{0, 60, 120, 180, 240, 318}, nil, 6},                     // 18° of 60° is too far, though the fit takes up a sixth
		{[]float64{0, 60, 120, 180, 240, 313}, []int{0, 1, 2, 3, 4, 5}, 6}, // 13° less a sixth is not too far
		{[]float64{0, 45, 90, 135, 180, 270, 315}, []int{0, 1, 2, 3, 4, 6, 7}, 8},
		{[]float64{0, 1, 120, 240}, nil, 4},
	} {
		places, count := EvenPlaces(c.deg)
		if !slices.Equal(places, c.places) || c.places != nil && count != c.count {
			t.Errorf("%v: %v of %d, want %v of %d", c.deg, places, count, c.places, c.count)
		}
	}
	if places, count := EvenPlaces([]float64{0, 1, 120, 240}); places != nil || count != 4 {
		t.Errorf("on no places: %v, %d", places, count)
	}
}

// Least squares on a circle of four, by hand: one place 4 mm too far out moves
// the centre by 1 mm and the radius by 1 mm, and remains 2 mm off.
func TestFitCircleByHand(t *testing.T) {
	t.Parallel()
	points := []Point{{104, 0}, {0, 100}, {-100, 0}, {0, -100}}
	even := fitCircle(points, []int{0, 1, 2, 3}, []int{0, 1, 2, 3}, 4)
	for i, want := range []Point{{102, 0}, {1, 101}, {-100, 0}, {1, -101}} {
		if even[i].Distance(want) > 1e-9 {
			t.Errorf("place %d at %v, want %v", i, even[i], want)
		}
	}
	// Turned: the sums solve for the direction too.
	turned := rotated(points, 33)
	back := rotated(fitCircle(turned, []int{0, 1, 2, 3}, []int{0, 1, 2, 3}, 4), -33)
	for i := range back {
		if back[i].Distance(even[i]) > 1e-9 {
			t.Errorf("turned: place %d at %v, want %v", i, back[i], even[i])
		}
	}
	if one := fitCircle(points[:1], []int{0}, []int{0}, 4); one[0] != points[0] {
		t.Errorf("one place: %v", one)
	}
}

// Loose levels are divided where the jumps grow most. Places within twice the
// loose share are one level.
func TestLooseLevels(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		at   []float64
		want []int // the level of each
	}{
		{"one row", []float64{0, 20, -13, 9}, []int{0, 0, 0, 0}},
		{"as wide as one row is", []float64{0, 34}, []int{0, 0}},
		{"wider", []float64{0, 35}, []int{0, 1}},
		{"two rows, off", []float64{0, 10, 90, 100, 5}, []int{0, 0, 1, 1, 0}},
		{"three rows, unsorted", []float64{202, 4, 98, 0, 107, 195}, []int{2, 0, 1, 0, 1, 2}},
		{"even steps", []float64{0, 40, 80, 120}, []int{0, 1, 2, 3}},
	} {
		points := Mapped(c.at, func(x float64) Point { return Point{x, 3 * x} })
		if got := looseLevels(points, alongX, 100); !slices.Equal(got.of, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got.of, c.want)
		}
	}
	side := longestSide([]Point{{0, 0}, {30, 0}, {40, 60}, {0, 50}})
	if d := side.Distance(Point{}); math.Abs(d-math.Hypot(10, 60)) > 1e-9 {
		t.Errorf("longest side %v", side)
	}
	if _, ok := LooseRows([]Point{{}}); ok {
		t.Error("one place has rows")
	}
	if layout, ok := LooseRows([]Point{{}, {10, 3}}); !ok || max(layout.Columns, layout.Rows) != 2 {
		t.Errorf("two places: %+v, %v", layout, ok)
	}
	if !sameShape(Layout{Columns: 2, Rows: 5}, Layout{Columns: 5, Rows: 2}) || sameShape(Layout{Columns: 2, Rows: 5}, Layout{Columns: 2, Rows: 4}) || sameShape(Layout{Columns: 2, Rows: 5}, Layout{Columns: 3, Rows: 5}) {
		t.Error("the same shape")
	}
}

// Rows turned by a small angle: least squares finds it (first principles), and
// a point moves by its sine.
func TestTilts(t *testing.T) {
	t.Parallel()
	grid := Grid(5, 3, 80, 60, Point{})
	for _, deg := range []float64{-3, -0.5, 0.2, 2} {
		turned := rotated(grid, deg)
		slack := 20.0
		if got := tiltOf(turned, newLevels(turned, alongX, slack), newLevels(turned, alongY, slack)); math.Abs(got-deg) > 1e-6 {
			t.Errorf("turned by %g: %g", deg, got)
		}
		if got := neighbourTilt(turned); math.Abs(got-deg) > 1e-6 {
			t.Errorf("turned by %g: neighbours by %g", deg, got)
		}
	}
	if got, want := shift([]Point{{-100, 0}, {100, 0}}, 30), 50.; math.Abs(got-want) > 1e-9 {
		t.Errorf("a turn of 30° moves the ends by %g", got)
	}
	if got := tiltOf([]Point{{1, 1}}, newLevels([]Point{{1, 1}}, alongX, 1), newLevels([]Point{{1, 1}}, alongY, 1)); got != 0 {
		t.Errorf("one place is turned by %g", got)
	}
	// A tilt that would be visible is kept; one that would not is levelled.
	for tilt, level := range map[float64]bool{0.3: true, 0.9: false, 5: false} {
		layout := NewLayout(rotated(Grid(9, 2, 60, 60, Point{}), tilt))
		if isLevel := math.Abs(layout.Points[0].Y-layout.Points[8].Y) < 1e-9; isLevel != level || layout.Columns != 9 {
			t.Errorf("turned by %g: level %v, %d columns", tilt, isLevel, layout.Columns)
		}
	}
}

// First principles, on a rectangle and its middle: neighbours have no third
// point closer to both. On a line they are the adjacent points.
func TestRelatedByHand(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		points []Point
		want   [][]int
	}{
		{"rectangle", []Point{{0, 0}, {100, 0}, {100, 60}, {0, 60}}, [][]int{{1, 3}, {0, 2}, {1, 3}, {0, 2}}},
		{"with its middle", []Point{{0, 0}, {100, 0}, {100, 60}, {0, 60}, {50, 30}}, [][]int{{4}, {4}, {4}, {4}, {0, 1, 2, 3}}},
		{"line", []Point{{0, 0}, {30, 40}, {60, 80}, {3, 4}}, [][]int{{3}, {2, 3}, {1}, {0, 1}}},
		{"equilateral", []Point{{0, 0}, {10, 0}, {5, 5 * math.Sqrt(3)}}, [][]int{{1, 2}, {0, 2}, {0, 1}}},
		{"one", []Point{{4, 4}}, [][]int{nil}},
	} {
		for i, got := range Related(c.points) {
			if slices.Sort(got); !slices.Equal(got, c.want[i]) {
				t.Errorf("%s, place %d: %v, want %v", c.name, i, got, c.want[i])
			}
		}
	}
	// A sector is 30°, anticlockwise from the right.
	for k := range 12 {
		for _, in := range []float64{0.5, 29.5} {
			if got := twelfth(Polar(Point{}, 10, 30*float64(k)+in)); got != k {
				t.Errorf("%g degrees: twelfth %d, want %d", 30*float64(k)+in, got, k)
			}
		}
	}
	if near := nearestNeighbours([]Point{{1, 1}}); near[0] != 0 {
		t.Errorf("a lone point's neighbour is %d", near[0])
	}
	if near := nearestNeighbours([]Point{{50, 0}, {0, 0}, {9, 0}, {20, 0}, {21, 30}}); !slices.Equal(near, []int{3, 2, 1, 2, 3}) {
		t.Errorf("nearest %v", near)
	}
}

// Steps of a round: its length, its start, and stretches that are reversed if
// that makes it shorter (first principles on a square).
func TestPiecesOfARound(t *testing.T) {
	t.Parallel()
	square := []Point{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	if got := lengthOf(square, []int{0, 2, 1, 3}); math.Abs(got-(20+20*math.Sqrt2)) > 1e-9 {
		t.Errorf("crossed: %g mm long", got)
	}
	round := []int{0, 2, 1, 3}
	if !shorten(square, round) || math.Abs(lengthOf(square, round)-40) > 1e-9 || shorten(square, round) {
		t.Errorf("shortened to %v", round)
	}
	if from(round, 3); round[0] != 3 {
		t.Errorf("from 3: %v", round)
	}
	// On a line with a bulge, every round is twice as long as the line.
	for _, c := range []struct {
		points []Point
		want   []int
	}{
		{[]Point{{0, 0}, {10, 0}, {5, 8}}, []int{0, 1, 2}},
		{[]Point{{0, 0}, {20, 0}, {20, 20}, {0, 20}, {10, 1}}, []int{0, 4, 1, 2, 3}},
		{[]Point{{0, 0}, {30, 0}, {30, 20}, {0, 20}, {20, 2}, {10, 3}, {12, 18}}, []int{0, 5, 4, 1, 2, 6, 3}},
	} {
		got := Round(c.points)
		from(got, 0)
		if !slices.Equal(got, c.want) && len(c.points) > 3 || len(got) != len(c.points) {
			t.Errorf("%v: round %v, want %v", c.points, got, c.want)
		}
	}
}

// First principles: the long axis of a rectangle; none of a square; to the
// right, or up if it is vertical.
func TestLongAxisByHand(t *testing.T) {
	t.Parallel()
	for deg, want := range map[float64]Point{0: {1, 0}, 30: Polar(Point{}, 1, 30), 90: {0, 1}, 150: Polar(Point{}, 1, -30), 180: {1, 0}, 270: {0, 1}} {
		if got := LongAxis(rotated(Grid(2, 2, 30, 10, Point{}), deg)); got.Distance(want) > 1e-9 {
			t.Errorf("turned by %g: %v, want %v", deg, got, want)
		}
	}
	for _, points := range [][]Point{nil, {{3, 3}}, {{3, 3}, {3, 3}}, Grid(2, 2, 10, 10, Point{})} {
		if got := LongAxis(points); got != (Point{1, 0}) {
			t.Errorf("%v: %v", points, got)
		}
	}
	if c := Centroid(nil); c != (Point{}) {
		t.Errorf("the middle of none: %v", c)
	}
	if c := Centroid([]Point{{2, 4}, {4, 10}}); c != (Point{3, 7}) {
		t.Errorf("the middle of two: %v", c)
	}
}

// Grids with gaps, and perimeters.
func TestFilledByHand(t *testing.T) {
	t.Parallel()
	grid := func(columns, rows int, without ...[2]int) Layout {
		l := Layout{Columns: columns, Rows: rows}
		for c := range columns {
			for r := range rows {
				if !slices.Contains(without, [2]int{c, r}) {
					l.Points, l.Column, l.Row = append(l.Points, Point{float64(c), float64(r)}), append(l.Column, c), append(l.Row, r)
				}
			}
		}
		return l
	}
	for name, c := range map[string]struct {
		l    Layout
		want bool
	}{
		"two by two": {grid(2, 2), true}, "two by two, one missing": {grid(2, 2, [2]int{0, 0}), true}, "two by two, two missing": {grid(2, 2, [2]int{0, 0}, [2]int{1, 1}), false},
		"one row": {grid(5, 1), false}, "three by three": {grid(3, 3), true}, "nothing inside": {grid(3, 3, [2]int{1, 1}), false},
		"five by four, two missing": {grid(5, 4, [2]int{0, 0}, [2]int{4, 3}), true}, "five by four, three missing": {grid(5, 4, [2]int{0, 0}, [2]int{4, 3}, [2]int{4, 0}), false},
		"one column": {grid(1, 5), false}, "two columns": {grid(2, 5), true}, "two rows": {grid(5, 2), true},
	} {
		if got := c.l.Filled(); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
	if gaps := grid(3, 2, [2]int{2, 0}).gaps([]float64{0, 10, 20}, []float64{5, 15}); !slices.Equal(gaps, []Point{{20, 5}}) {
		t.Errorf("gaps %v", gaps)
	}
}

// A line holds places within a tenth of their spacing. Four corners are rows
// and columns, however they are turned.
func TestLinesAndCorners(t *testing.T) {
	t.Parallel()
	for off, want := range map[float64]bool{0: true, 4.9: true, 5.4: false} { // of 50 mm; the line takes up a twentieth
		row := Row(21, 50, Point{}, 20)
		row[10] = row[10].Add(Polar(Point{}, off, 110))
		if got := OneLine(row); got != want {
			t.Errorf("%g mm off: %v", off, got)
		}
	}
	for _, size := range [][2]float64{{100, 50}, {50, 100}, {90, 70}} {
		if got := NewLayout(Grid(2, 2, size[0], size[1], Point{})); got.Columns != 2 || got.Rows != 2 {
			t.Errorf("%v: %+v", size, got)
		}
	}
	if OneLine([]Point{{0, 0}, {50, 14}, {100, 0}, {150, 14}, {200, 0}}) || !OneLine([]Point{{0, 0}, {3, 9}}) {
		t.Error("a zigzag is a line, or two places are none")
	}
}

// A point far from all others, of at least four. A point off its regular place,
// by how much, and whose mirror image it should be.
func TestStraysAndOddOnes(t *testing.T) {
	t.Parallel()
	for n, want := range map[int]bool{3: false, 4: true, 5: true} {
		if s, found := FindStray(append(Row(n-1, 1, Point{}, 0), Point{X: 500})); found != want || found && s.Index != n-1 {
			t.Errorf("%d places: %+v, %v", n, s, found)
		}
	}
	for share, want := range map[float64]bool{0.0699: false, 0.0701: true, 0.5: true, 0.8999: true, 0.9001: false} {
		if got := isOdd(share*40, 40); got != want {
			t.Errorf("%g of the spacing: %v", share, got)
		}
	}
	// A middle bolt 10 mm beside the middle of a head of ten: it is its own
	// mirror image.
	head := append(Grid(5, 2, 100, 100, Point{}), Point{X: 10})
	if odd, found := FindOdd(head); !found || odd.Index != 10 || odd.Other != -1 || math.Abs(odd.Off-10) > 1e-9 {
		t.Errorf("%+v, %v", odd, found)
	}
	// One of a circle of eight, moved 12 mm along the circle.
	circle := Circle(8, 200, Point{}, 0, true)
	circle[3] = Polar(Point{}, 100, circle[3].AngleFrom(Point{})+7)
	if odd, found := FindOdd(circle); !found || odd.Index != 3 || odd.Other != -1 || math.Abs(odd.Off-200*math.Sin(3.5*math.Pi/180)) > 0.01 {
		t.Errorf("%+v, %v", odd, found)
	}
	if odd, found := FindOdd(Circle(8, 200, Point{}, 0, true)); found {
		t.Errorf("none is off, and %+v", odd)
	}
	if odd, found := FindOdd(circle[:5]); found {
		t.Errorf("five places: %+v", odd)
	}
}

// Levels in even steps, some skipped; otherwise symmetric about their mean;
// otherwise unchanged (first principles).
func TestLevelsByHand(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		value []float64
		even  bool
		want  []float64
		of    []int
	}{
		{"even", []float64{0, 10, 20.3, 30.1}, true, []float64{0.01, 10.07, 20.13, 30.19}, []int{0, 1, 2, 3}},
		{"one skipped", []float64{0, 10, 30}, true, []float64{0, 10, 20, 30}, []int{0, 1, 3}},
		{"symmetric", []float64{0, 10, 23.8, 33.8}, true, []float64{0, 10, 23.8, 33.8}, []int{0, 1, 2, 3}},
		{"neither", []float64{0, 10, 24, 46}, false, []float64{0, 10, 24, 46}, []int{0, 1, 2, 3}},
		{"too many steps skipped", []float64{0, 10, 140}, false, []float64{0, 10, 140}, []int{0, 1, 2}},
	} {
		l := &levels{value: slices.Clone(c.value), of: Count(len(c.value)), slack: 0.5}
		if got := l.straighten(); got != c.even || !slices.EqualFunc(l.value, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) || !slices.Equal(l.of, c.of) {
			t.Errorf("%s: %v, %v of %v", c.name, got, l.of, l.value)
		}
	}
	if got := symmetric([]float64{0, 10, 24, 33}); !slices.EqualFunc(got, []float64{0.25, 9.75, 23.75, 33.25}, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
		t.Errorf("symmetric: %v", got)
	}
	if got := quietest([]float64{0, 9.9, 10, 11, 2}, 0, 10); math.Abs(got-5.95) > 1e-9 { // between 2 and 9.9
		t.Errorf("quietest %g", got)
	}
	if got := quietest([]float64{1, 12}, 4, 8); got != 6 {
		t.Errorf("nothing between: %g", got)
	}
}

// Rings wider than half a spacing are divided at the widest jump. Those of a
// grid are counted in columns and rows from its middle.
func TestRingsByHand(t *testing.T) {
	t.Parallel()
	distance := []float64{10, 10.5, 14, 15, 19, 40}
	for width, want := range map[float64][]int{100: {6}, 10: {5, 1}, 6: {4, 1, 1}, 0: {6}} {
		got := Mapped(appendNarrow(nil, Count(6), distance, width), func(ring []int) int { return len(ring) })
		if !slices.Equal(got, want) {
			t.Errorf("up to %g wide: %v, want %v", width, got, want)
		}
	}
	for _, c := range []struct {
		columns, rows int
		want          []int
	}{{5, 2, []int{2, 4, 4}}, {4, 3, []int{2, 4, 6}}, {3, 3, []int{1, 8}}, {2, 2, []int{4}}, {4, 4, []int{4, 12}}} {
		l := NewLayout(Grid(c.columns, c.rows, 60, 50, Point{}))
		l.Columns, l.Rows, l.Column, l.Row = c.columns, c.rows, nil, nil
		for range c.rows {
			l.Column = append(l.Column, Count(c.columns)...)
		}
		for r := range c.rows {
			l.Row = append(l.Row, slices.Repeat([]int{c.rows - 1 - r}, c.columns)...)
		}
		if got := Mapped(l.gridRings(), func(ring []int) int { return len(ring) }); !slices.Equal(got, c.want) {
			t.Errorf("%d by %d: rings of %v, want %v", c.columns, c.rows, got, c.want)
		}
	}
	if distanceRings(nil, Point{}) != nil {
		t.Error("no places have rings")
	}
	// The axis on which edges are shorter in total.
	flat, tall := []Box{{Point{0, 0}, Point{10, 1}}, {Point{3, 5}, Point{9, 7}}}, []Box{{Point{0, 0}, Point{1, 10}}, {Point{3, 5}, Point{4, 9}}}
	if from, to := sides(flat); !slices.Equal(from, []float64{0, 5}) || !slices.Equal(to, []float64{1, 7}) {
		t.Errorf("flat edges from %v to %v", from, to)
	}
	if from, to := sides(tall); !slices.Equal(from, []float64{0, 3}) || !slices.Equal(to, []float64{1, 4}) {
		t.Errorf("tall edges from %v to %v", from, to)
	}
	// Loose levels do not depend on the origin.
	for _, shift := range []float64{0, 1000, -700} {
		points := Mapped([]float64{202, 4, 98, 0, 107, 195}, func(x float64) Point { return Point{X: x + shift} })
		if got := looseLevels(points, alongX, 100); !slices.Equal(got.of, []int{2, 0, 1, 0, 1, 2}) {
			t.Errorf("shifted by %g: %v", shift, got.of)
		}
	}
}
