package family

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
)

// last returns the largest value up to most, in steps of a 150th, up to which a
// condition holds without a gap.
func last(most float64, holds func(float64) bool) float64 {
	for k := range 150 {
		if !holds(most * float64(k) / 150) {
			return most * float64(k-1) / 150
		}
	}
	return most
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.02*want {
		t.Errorf("%s: up to %g, want %g", what, got, want)
	}
}

// A hole of a circle may be off its place by the share of the pitch that the
// search allows, and no more (limits of the design: common practice, no
// source).
func TestHowFarOffACircle(t *testing.T) {
	t.Parallel()
	circle := geometry.Circle(24, 480, geometry.Point{X: 5, Y: 8}, 0, true)
	moved := func(off float64) *seer {
		points := slices.Clone(circle)
		points[3] = geometry.Polar(points[3], off, points[3].AngleFrom(geometry.Point{X: 5, Y: 8})+90) // along the circle
		return newSeer(points)
	}
	for _, c := range []struct {
		name  string
		look  func(*seer) (Seen, bool)
		share float64
	}{{"circle", (*seer).circle, geometry.LevelShare}, {"loose circle", (*seer).looseCircle, geometry.LooseShare}} {
		var furthest Seen
		last(2*c.share*geometry.Spacing(circle), func(off float64) bool {
			seen, ok := c.look(moved(off))
			if ok {
				furthest = seen
			}
			return ok
		})
		near(t, c.name, furthest.OffMm/geometry.Spacing(circle), c.share)
		if len(furthest.Layout.Points) != 24 || !furthest.Layout.Regular || furthest.Layout.Points[3].Distance(circle[3]) > 1 {
			t.Errorf("%s: brought to %v", c.name, furthest.Layout)
		}
	}
	s := newSeer(geometry.Grid(4, 3, 50, 50, geometry.Point{}))
	s.named = true
	if seen, ok := s.looseCircle(); !ok || seen.Family != Circle || len(seen.Rings) != 1 || len(seen.Rings[0]) != 12 {
		t.Errorf("a grid named a circle: %+v, %v", seen, ok)
	}
}

// Rings are more than ringShare of the spacing apart. One place counts as the
// middle up to that distance from it. A ring around another centre is not a
// ring (limits of the design: common practice, no source).
func TestLimitsOfRings(t *testing.T) {
	t.Parallel()
	look := func(named bool, spacing float64, points ...[]geometry.Point) (Seen, bool) {
		s := newSeer(slices.Concat(points...))
		s.spacing, s.named = spacing, named
		return s.circles()
	}
	outer := geometry.Circle(12, 400, geometry.Point{}, 0, true)
	gap := last(60, func(gap float64) bool {
		seen, _ := look(true, 100, outer, geometry.Circle(12, 400-2*gap, geometry.Point{}, 15, true))
		return len(seen.Rings) == 1
	})
	near(t, "gap within a ring", gap, 30)
	middle := last(60, func(off float64) bool {
		seen, ok := look(false, 100, outer, []geometry.Point{{X: off}})
		return ok && len(seen.Rings) == 2
	})
	near(t, "middle place off the middle", middle, 30)
	if _, ok := look(false, 100, outer, []geometry.Point{{X: 30}}); !ok {
		t.Error("the limit itself counts")
	}
	eccentric := last(60, func(off float64) bool {
		_, ok := look(false, 100, outer, geometry.Circle(12, 200, geometry.Point{X: off}, 0, true))
		return ok
	})
	near(t, "ring off the middle", eccentric, 30)
	// Four of five places: their centroid is off by a quarter of the radius.
	if seen, ok := look(false, 60, outer, geometry.Circle(5, 200, geometry.Point{}, 0, true)[1:]); !ok || seen.Missing != 1 {
		t.Errorf("an inner ring with one missing: %v, %d missing", ok, seen.Missing)
	}
	if _, ok := look(false, 100, outer, []geometry.Point{{X: 20}, {X: -10, Y: 5}, {X: -12, Y: -18}}); ok {
		t.Error("three uneven places near the middle are a ring")
	}
	if seen, ok := look(false, 40, geometry.Circle(3, 100, geometry.Point{}, 0, true), []geometry.Point{{}}); !ok || seen.Family != Circles {
		t.Error("three places round a fourth are no circles")
	}
	if _, ok := look(false, 40, geometry.Circle(3, 100, geometry.Point{}, 0, true)); ok {
		t.Error("three places are circles")
	}
	for name, points := range map[string][]geometry.Point{
		"uneven": slices.Concat(outer[1:3], outer[6:], []geometry.Point{{X: 50, Y: 3}, {X: -40}}), "one ring": outer,
	} {
		if seen, ok := look(true, 40, points); !ok || seen.Family != Circles || len(slices.Concat(seen.Rings...)) != len(points) {
			t.Errorf("%s named circles: %+v", name, seen)
		}
	}
	inner := geometry.Circle(6, 240, geometry.Point{}, 0, true)
	off := 0.0
	last(60, func(by float64) bool {
		ring := slices.Clone(inner)
		ring[0].X -= by
		seen, ok := look(false, 200, outer, ring)
		if ok {
			off = seen.OffMm
		}
		return ok
	})
	near(t, "place off its ring", off/120, geometry.LooseShare)
}

// On a square of 200 mm with a spacing of 100 mm, places up to 30 mm inside the
// outline are along it.
func TestOnEdge(t *testing.T) {
	t.Parallel()
	points := append(geometry.Rectangle(3, 1, 200, 200, geometry.Point{}), geometry.Point{})
	for depth, want := range map[float64]bool{0: true, 29.9: true, 30: false, 32: false, 100: false} {
		points[8] = geometry.Point{X: 100 - depth}
		if got := (&seer{points: points, spacing: 100}).onEdge([]int{8}); got != want {
			t.Errorf("%g mm deep: %v", depth, got)
		}
	}
}

// A perimeter of 400 by 200 mm with a spacing of 100 mm: how far a place may be
// from its corner, how many places may be inside, and how few are enough.
func TestLimitsOfAPerimeter(t *testing.T) {
	t.Parallel()
	edge := geometry.Rectangle(5, 1, 400, 200, geometry.Point{})
	look := func(points []geometry.Point) (Seen, bool) { return (&seer{points: points, spacing: 100}).perimeter() }
	for in, corners := range map[float64]int{0: 4, 50: 4, 51: 3, 54: 3} {
		points := slices.Clone(edge)
		points[0].X += in
		points = append(points, geometry.Point{X: -200, Y: 20}) // keeps the left side in place
		if seen, _ := look(points); len(seen.Corners) != corners {
			t.Errorf("a place %g mm from its corner: corners %v", in, seen.Corners)
		}
	}
	inside := func(n int) []geometry.Point {
		var points []geometry.Point
		for k := range n {
			points = append(points, geometry.Point{X: 7 * float64(k%5), Y: 9 * float64(k/5)})
		}
		return points
	}
	long := geometry.Rectangle(9, 1, 800, 200, geometry.Point{}) // 20 places
	for name, c := range map[string]struct {
		points []geometry.Point
		want   bool
	}{
		"12 and 6 inside":   {slices.Concat(edge, inside(6)), true},
		"12 and 7 inside":   {slices.Concat(edge, inside(7)), false},
		"20 and 10 inside":  {slices.Concat(long, inside(10)), true},
		"20 and 11 inside":  {slices.Concat(long, inside(11)), false},
		"six":               {geometry.Rectangle(3, 0, 200, 100, geometry.Point{}), true},
		"five":              {geometry.Rectangle(3, 0, 200, 100, geometry.Point{})[1:], false},
		"corners alone":     {slices.Concat(geometry.Rectangle(2, 0, 300, 200, geometry.Point{}), []geometry.Point{{X: -10, Y: 5}, {X: -20, Y: -5}}), false},
		"9, one corner off": {slices.Delete(geometry.Rectangle(4, 1, 300, 200, geometry.Point{}), 0, 1), false},
	} {
		if seen, ok := look(c.points); ok != c.want || ok && seen.Family != Perimeter {
			t.Errorf("%s: %v, %+v", name, ok, seen)
		}
	}
	if seen, _ := look(edge[:5]); len(seen.Edge) != 5 {
		t.Errorf("the round of five is %v", seen.Edge)
	}
}

// A closed edge has at least five places, and at most half as many inside.
func TestLimitsOfACurve(t *testing.T) {
	t.Parallel()
	inside := func(n int) []geometry.Point { return geometry.Grid(n, 1, 3, 3, geometry.Point{}) }
	look := func(points []geometry.Point) (Seen, bool) { return (&seer{points: points, spacing: 100}).curve() }
	circle := func(n int) []geometry.Point { return geometry.Circle(n, 600, geometry.Point{}, 0, true) }
	for name, c := range map[string]struct {
		points []geometry.Point
		want   bool
	}{
		"four": {circle(4), false}, "five": {circle(5), true}, "four and three inside": {slices.Concat(circle(4), inside(3)), false},
		"five and two inside": {slices.Concat(circle(5), inside(2)), true}, "five and three inside": {slices.Concat(circle(5), inside(3)), false},
		"eight and four inside": {slices.Concat(circle(8), inside(4)), true},
		"twenty and ten inside": {slices.Concat(circle(20), inside(10)), true}, "twenty and eleven inside": {slices.Concat(circle(20), inside(11)), false},
	} {
		if seen, ok := look(c.points); ok != c.want || len(seen.Edge)+len(seen.Inner) != len(c.points) {
			t.Errorf("%s: %v, %+v", name, ok, seen)
		}
	}
}

// Places up to edgeShare of the spacing deep belong to the edge.
func TestParted(t *testing.T) {
	t.Parallel()
	s := &seer{points: []geometry.Point{{X: 7}, {X: 7.1}, {X: 2}}, spacing: 10}
	edge, inner, off := s.parted(func(p geometry.Point) float64 { return p.X })
	if !slices.Equal(edge, []int{0, 2}) || !slices.Equal(inner, []int{1}) || off != 7 {
		t.Errorf("edge %v up to %g mm off, inside %v", edge, off, inner)
	}
}

// hairpin goes out along one line and back along another 10 mm away, but only 1
// mm away in the columns listed in near. back is where the return begins.
func hairpin(back int, near ...int) *seer {
	var points []geometry.Point
	for x := range 10 {
		points = append(points, geometry.Point{X: float64(x)})
	}
	for x := back; x >= 0; x-- {
		y := 10.0
		if slices.Contains(near, x) {
			y = 1
		}
		points = append(points, geometry.Point{X: float64(x), Y: y})
	}
	return &seer{points: points, spacing: 1, round: geometry.Count(len(points))}
}

// A round is one edge if almost no place has a neighbour other than the two
// along it: at most a tenth as many such pairs as places. Consecutive places do
// not count, also from last to first.
func TestNeighboursBesideTheEdge(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		s    *seer
		want bool
	}{
		"none":                        {hairpin(9), true},
		"one of twenty":               {hairpin(9, 5), true},
		"two of twenty":               {hairpin(9, 3, 5), true},
		"three of twenty":             {hairpin(9, 3, 5, 7), false},
		"two, and both ends":          {hairpin(9, 0, 3, 5, 9), true},
		"two of nineteen":             {hairpin(8, 3, 5), false},
		"two of nineteen, one by two": {hairpin(8, 3, 8), false},
		"one of nineteen":             {hairpin(8, 8), true},
	} {
		for range 2 {
			if got := c.s.smoothRound(geometry.Count(8), []int{5}); got != c.want {
				t.Errorf("%s: %v", name, got)
			}
			slices.Reverse(c.s.round)
		}
	}
	s := hairpin(9)
	for deep, want := range map[int]bool{0: false, 9: true, 10: false} {
		if got := s.smoothRound([]int{1, 2, 3}, slices.Repeat([]int{5}, deep)); got != want {
			t.Errorf("%d deep of 3 near: %v", deep, got)
		}
	}
}

// An edge may turn by up to sharpDeg at a deep place, measured from the place
// before to the one after.
func TestSharpTurn(t *testing.T) {
	t.Parallel()
	for turn, want := range map[float64]bool{0: true, 60: true, 104: true, 106: false, 114: false, 180: false} {
		for _, mirror := range []float64{1, -1} {
			var points []geometry.Point
			at, heading := geometry.Point{}, 0.0
			for _, by := range []float64{20, 20, turn, 20, 20, 20} { // the places beside it turn the same way
				points = append(points, at)
				heading += by
				at = at.Add(geometry.Polar(geometry.Point{}, 10, mirror*heading))
			}
			s := &seer{points: points, spacing: 1, round: geometry.Count(len(points))}
			if got := s.smoothRound([]int{0}, []int{2}); got != want {
				t.Errorf("%g degrees: %v", mirror*turn, got)
			}
		}
	}
}

// First principles: around a 3-4-5 triangle every rectangle along a side has an
// area of 12; the one along the legs has the shortest sides. With a point
// beside a leg, only the one along the longest side has 12.
func TestSmallestRectangle(t *testing.T) {
	t.Parallel()
	for turn := 0.0; turn < 360; turn += 15 {
		for _, mirror := range []float64{1, -1} {
			for _, c := range []struct {
				points      []geometry.Point
				long, short float64
			}{
				{[]geometry.Point{{}, {X: 4}, {Y: 3}}, 4, 3},
				{[]geometry.Point{{}, {X: 4}, {Y: 3}, {X: 1, Y: -0.1}}, 5, 2.4},
			} {
				turned := geometry.Mapped(c.points, func(p geometry.Point) geometry.Point {
					return geometry.Polar(geometry.Point{}, p.Distance(geometry.Point{}), turn+mirror*p.AngleFrom(geometry.Point{}))
				})
				r := smallestRectangle(turned)
				if long, short := 2*max(r.half.X, r.half.Y), 2*min(r.half.X, r.half.Y); abs(long-c.long) > 1e-9 || abs(short-c.short) > 1e-9 {
					t.Errorf("%v turned by %g: %g by %g, want %g by %g", c.points, turn, long, short, c.long, c.short)
				}
			}
		}
	}
}

// A gap between flanges is gapShare times the widest step within one. A flange
// has at least three places. At most four flanges are looked for (limits of the
// design: common practice, no source).
func TestLimitsOfFlanges(t *testing.T) {
	t.Parallel()
	groups := func(gap float64, sizes ...int) []geometry.Point {
		var points []geometry.Point
		x := 0.0
		for _, n := range sizes {
			for range n {
				points = append(points, geometry.Point{X: x})
				x += 10
			}
			x += gap - 10
		}
		return points
	}
	for _, c := range []struct {
		name   string
		points []geometry.Point
		parts  int
		want   bool
	}{
		{"narrow", groups(18.9, 3, 3), 2, false}, {"the limit", groups(19, 3, 3), 2, true}, {"wide", groups(19.5, 3, 3), 2, true},
		{"a flange of two", groups(50, 3, 2), 2, false}, {"a flange of two in the middle", groups(50, 3, 2, 4), 3, false},
		{"three flanges", groups(50, 3, 3, 3), 3, true}, {"four", groups(50, 3, 3, 3, 3), 4, true},
		{"three places", groups(50, 2, 1), 2, false}, {"one place", groups(50, 1), 1, false},
	} {
		s := newSeer(c.points)
		seen, ok := s.flanges()
		if len(seen.Parts) != c.parts || ok != c.want {
			t.Errorf("%s: %v, %v", c.name, seen.Parts, ok)
		}
	}
	if _, ok := newSeer(groups(50, 3, 3, 3, 3, 3)).flanges(); ok {
		t.Error("five flanges are seen")
	}
	// Steps of 1, 2 and 4: each is twice the one before, and the first cut
	// gives more parts.
	if parts, _ := newSeer([]geometry.Point{{}, {X: 1}, {X: 3}, {X: 7}}).parts(); len(parts) != 3 {
		t.Errorf("parts %v", parts)
	}
}

// What every family reports: the spacing, and a row moved to its line, vertical
// or level. Four corners are tightened crosswise, as a circle.
func TestWhatIsSaid(t *testing.T) {
	t.Parallel()
	if seen := As(geometry.Grid(3, 3, 40, 40, geometry.Point{}), ""); seen.Family != Grid || seen.SpacingMm != 40 || seen.Named {
		t.Errorf("%+v", seen)
	}
	for _, upright := range []bool{false, true} {
		points := []geometry.Point{{}, {X: 100, Y: 12}, {X: 200, Y: -12}, {X: 300}}
		if upright {
			points = geometry.Mapped(points, func(p geometry.Point) geometry.Point { return geometry.Point{X: -p.Y, Y: p.X} })
		}
		if seen := Of(points); seen.Family != Row || len(seen.Layout.Points) != 4 || geometry.OffLine(seen.Layout.Points, geometry.LongAxis(seen.Layout.Points)) > 1e-9 {
			t.Errorf("upright %v: %+v", upright, seen)
		}
	}
	s := newSeer(geometry.Grid(2, 2, 120, 50, geometry.Point{}))
	if seen, ok := s.grid(); !ok || seen.Family != Circle || len(seen.Rings) != 1 || !slices.Equal(seen.Rings[0], []int{0, 1, 2, 3}) {
		t.Errorf("four corners: %v, %+v", ok, seen)
	}
	if seen, ok := newSeer(geometry.Grid(3, 2, 120, 50, geometry.Point{})).grid(); !ok || seen.Family != Grid {
		t.Errorf("six: %v, %+v", ok, seen)
	}
}
