package survey

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
)

func is(places []geometry.Point, want ...geometry.Point) bool {
	return slices.EqualFunc(places, want, func(a, b geometry.Point) bool { return a.Distance(b) < 1e-9 })
}

// Intersections of two circles (first principles: 3-4-5).
func TestMeet(t *testing.T) {
	t.Parallel()
	a, b := geometry.Point{X: 1, Y: 2}, geometry.Point{X: 9, Y: 2}
	if got := meet(a, 5, b, 5); !is(got, at(5, 5, 5, -1)...) {
		t.Errorf("two places: %v", got)
	}
	if got := meet(a, 5, geometry.Point{X: 1, Y: 12}, math.Sqrt(65)); !is(got, at(-3, 5, 5, 5)...) {
		t.Errorf("unequal circles: %v", got)
	}
	if got := meet(a, 3, b, 4); !is(got, geometry.Point{X: 1 + (64.+9-16)/16, Y: 2}) {
		t.Errorf("they miss each other: %v", got)
	}
	if got := meet(a, 3, b, 5); !is(got, geometry.Point{X: 4, Y: 2}) {
		t.Errorf("they touch: %v", got)
	}
	if got := meet(a, 3, a, 4); !is(got, geometry.Point{X: 4, Y: 2}) {
		t.Errorf("round one middle: %v", got)
	}
}

// A hole without readings is placed apart; one with one reading, around its
// end; one with two, where the circles intersect, those with centres furthest
// apart first.
func TestPlacesOfAHole(t *testing.T) {
	t.Parallel()
	s := state{at: at(0, 0, 80, 0, 80, 20, 0, 0), placed: []bool{true, true, true, false}}
	readings := []Reading{{0, 3, 50}, {3, 1, 50}, {2, 3, 41}}
	if got := s.places(3, nil, readings); !is(got, at(180, 57)...) {
		t.Errorf("no reading: %v", got)
	}
	got := s.places(3, []int{1}, readings)
	if len(got) != 7 || got[0].Distance(geometry.Polar(geometry.Point{X: 80}, 50, 20)) > 1e-9 {
		t.Errorf("one reading: %v", got)
	}
	for k, p := range got {
		same(t, "distance", p.Distance(geometry.Point{X: 80}), 50)
		same(t, "step", p.Distance(got[(k+1)%7]), 100*math.Sin(math.Pi/7))
	}
	if got := s.places(3, []int{0, 1}, readings); len(got) != 2 || math.Abs(math.Abs(got[0].Y)-30) > 1e-9 || math.Abs(got[0].X-40) > 1e-9 {
		t.Errorf("two readings: %v", got)
	}
	// Each pair of circles intersects at or near (40, 30), and at its mirror
	// image.
	got = s.places(3, []int{0, 1, 2}, readings)
	isNear := func(p geometry.Point) bool { return p.Distance(geometry.Point{X: 40, Y: 30}) < 0.5 }
	if len(got) > 6 || !slices.ContainsFunc(got, isNear) {
		t.Errorf("three readings: %v", got)
	}
	for i := range got {
		for k := range i {
			if got[i].Distance(got[k]) < 0.5 {
				t.Errorf("one place twice: %v", got)
			}
		}
	}
}

// The reading with the most holes measured from both its ends comes first, then
// the longest; at most eight.
func TestBases(t *testing.T) {
	t.Parallel()
	readings := []Reading{{3, 4, 90}, {0, 1, 10}, {2, 0, 30}, {1, 2, 20}, {1, 3, 40}, {2, 3, 50}}
	g := [][]int{{1, 2}, {1, 3, 4}, {2, 3, 5}, {0, 4, 5}, {0}}
	// 1-2 is measured from 0 and 3; 2-3 and 1-3 from each other's end, 0-2 and
	// 0-1 too.
	if got := bases(g, readings); !slices.Equal(got, []int{3, 5, 4, 2, 1, 0}) {
		t.Errorf("bases %v", got)
	}
	many, all := make([][]int, 2), make([]Reading, 12)
	for i := range all {
		all[i] = Reading{0, 1, float64(i)}
		many[0], many[1] = append(many[0], i), append(many[1], i)
	}
	if got := bases(many, all); !slices.Equal(got, []int{11, 10, 9, 8, 7, 6, 5, 4}) {
		t.Errorf("bases %v", got)
	}
	hole, links := nextHole(g, readings, []bool{true, false, true, false, false})
	if hole != 1 || !slices.Equal(links, []int{1, 3}) {
		t.Errorf("next hole %d by %v", hole, links)
	}
	hole, links = nextHole(g, readings, []bool{false, true, true, false, false})
	if hole != 0 || !slices.Equal(links, []int{1, 2}) {
		t.Errorf("of two alike the first: hole %d by %v", hole, links)
	}
	if hole, links = nextHole(make([][]int, 3), nil, []bool{true, false, false}); hole != 1 || links != nil {
		t.Errorf("no readings: hole %d by %v", hole, links)
	}
}

// A fit is good enough if one reading, plus one in twenty, is more than four
// accuracies off.
func TestGoodEnough(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		readings, out int
		off           float64
		want          bool
	}{{3, 1, 1, true}, {3, 2, 1, false}, {3, 2, 0.19, true}, {3, 2, -0.21, false}, {3, 2, 0.21, false}, {19, 2, 1, false}, {20, 2, 1, true}, {20, 3, 1, false}, {40, 3, 1, true}} {
		readings := make([]Reading, c.readings)
		for i := range readings {
			readings[i] = Reading{0, 1, 100}
			if i < c.out {
				readings[i].Distance += c.off
			}
		}
		if got := goodEnough(at(0, 0, 100, 0), readings, 0.05); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// One hole against two fixed ones: the least-squares step by hand, with weights
// of 1/(1+v²)². If the readings are in one direction, the hole stays.
func TestNudged(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 100, 100, 0)
	readings := []Reading{{0, 2, 101}, {2, 1, 98}} // along x one too long, along y two too short
	if got := nudged(places, 2, []int{0, 1}, readings, 1); !is(at(got.X, got.Y), at(101, 2)...) {
		t.Errorf("nudged to %v", got)
	}
	if got := nudged(places, 2, []int{0}, readings, 1); got != places[2] {
		t.Errorf("one direction: %v", got)
	}
	// Two readings along x, off by one and by three times the scale: 1/4 and 1/100.
	both := append(readings, Reading{0, 2, 103})
	if got, want := nudged(places, 2, []int{0, 1, 2}, both, 1), 100+(0.25+0.03)/0.26; math.Abs(got.X-want) > 1e-9 || math.Abs(got.Y-2) > 1e-9 {
		t.Errorf("nudged to %v, want %g", got, want)
	}
	// On a scale of 2 mm they weigh 1/1.5625 and 1/10.5625.
	if got, want := nudged(places, 2, []int{0, 1, 2}, both, 2), 100+(1/1.5625+3/10.5625)/(1/1.5625+1/10.5625); math.Abs(got.X-want) > 1e-9 {
		t.Errorf("nudged to %v, want %g", got, want)
	}
	for off, want := range map[float64]geometry.Point{14.1: {X: 114.1, Y: -14.1}, 14.2: {X: 100}} { // distance 19.9 and 20.1 mm
		readings := []Reading{{0, 2, 100 + off}, {1, 2, 100 + off}}
		if got := nudged(places, 2, []int{0, 1}, readings, 1); got.Distance(want) > 1e-9 {
			t.Errorf("%g mm off each way: to %v", off, got)
		}
	}
	// Along the sides of 3-4-5 and 4-3-5 triangles: the hole is where both
	// readings fit.
	aslant := at(-30, -40, 40, -30, 0, 0)
	want := geometry.Point{X: 0.001, Y: -0.002}
	exact := []Reading{{0, 2, aslant[0].Distance(want)}, {2, 1, aslant[1].Distance(want)}}
	if got := nudged(aslant, 2, []int{0, 1}, exact, 1); got.Distance(want) > 1e-6 {
		t.Errorf("nudged to %v, want %v", got, want)
	}
	aslant[1] = geometry.Point{X: -40, Y: 10} // not square to each other
	exact[1].Distance = aslant[1].Distance(want)
	if got := nudged(aslant, 2, []int{0, 1}, exact, 1); got.Distance(want) > 1e-6 {
		t.Errorf("nudged to %v, want %v", got, want)
	}
	s := state{at: places, placed: []bool{true, true, false}, cost: 3}
	next := s.with(2, geometry.Point{X: 100.5, Y: 0.4}, []int{0, 1}, []Reading{{0, 2, 100}, {1, 2, 100}}, 0.1)
	if !next.placed[2] || s.placed[2] || next.at[2].Distance(geometry.Point{X: 100}) > 1e-6 || s.at[2] != places[2] || math.Abs(next.cost-3) > 1e-9 {
		t.Errorf("%+v", next)
	}
	// Two readings 2 mm apart, each 1 mm off in the middle: on a scale of ten
	// times an accuracy of 0.1 mm.
	next = s.with(2, geometry.Point{X: 100}, []int{0, 1, 2}, []Reading{{0, 2, 101}, {1, 2, 100}, {0, 2, 99}}, 0.1)
	if math.Abs(next.cost-4) > 1e-6 {
		t.Errorf("cost %g", next.cost)
	}
}

// Built from one reading, a rigid part comes out as it is or mirrored.
func TestGrow(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 60, 50, 30, -40, 80, 90)
	var readings []Reading
	g := make([][]int, 5)
	for i := range places {
		for k := range i {
			g[i], g[k] = append(g[i], len(readings)), append(g[k], len(readings))
			readings = append(readings, Reading{i, k, places[i].Distance(places[k])})
		}
	}
	states := grow(g, readings, 0, 0.05)
	if len(states) == 0 || len(states) > keptResults || states[0].cost > 1e-9 || !slices.Equal(states[0].placed, inAll(5)) {
		t.Fatalf("%d states, the first %+v", len(states), states[0])
	}
	for i, r := range readings {
		if math.Abs(r.residual(states[0].at)) > 1e-6 {
			t.Errorf("reading %d is off by %g", i, r.residual(states[0].at))
		}
	}
	for k := range states[1:] {
		if states[k+1].cost < states[k].cost {
			t.Errorf("state %d is better than the one before", k+1)
		}
	}
	best := start(5, readings, 0.05)
	if squares(best, readings, 0.05) > 1e-6 {
		t.Errorf("the start is off: %v", best)
	}
}
