package survey

import (
	"slices"
	"testing"

	"drawdown/geometry"
)

func inAll(n int) []bool { return slices.Repeat([]bool{true}, n) }

// First principles: mirrored on a line, and within a tolerance of it.
func TestLineOfTwoHoles(t *testing.T) {
	t.Parallel()
	a, b := geometry.Point{X: 1, Y: 1}, geometry.Point{X: 5, Y: 4}
	if p := reflected(geometry.Point{X: 1 - 3, Y: 1 + 4}, a, b); p.Distance(geometry.Point{X: 1 + 3, Y: 1 - 4}) > 1e-12 {
		t.Errorf("mirrored to %v", p)
	}
	if p := reflected(b, a, b); p.Distance(b) > 1e-12 {
		t.Errorf("on the line: %v", p)
	}
	on := onLine(at(0, 0, 10, 0, 5, 0.29, 90, -0.29, 5, 0.3, 5, -0.31), geometry.Point{}, geometry.Point{X: 10}, 0.3)
	if !slices.Equal(on, []bool{true, true, true, true, false, false}) {
		t.Errorf("on the line: %v", on)
	}
}

// Two triangles on each side of a line, and a separate pair: the part with the
// most anchors stays. Holes outside the core are in no part.
func TestParts(t *testing.T) {
	t.Parallel()
	n := Network{Holes: 8}
	readings := []Reading{{0, 2, 1}, {1, 2, 1}, {2, 3, 1}, {3, 4, 1}, {5, 6, 1}, {6, 7, 1}, {0, 5, 1}, {4, 5, 1}}
	core := []bool{true, true, true, true, true, true, true, false}
	on := []bool{true, true, false, false, false, false, false, false}
	core[4] = false // its readings connect nothing
	if parts := n.parts(readings, core, on); len(parts) != 1 || !slices.Equal(parts[0], []int{5, 6}) && !slices.Equal(parts[0], []int{2, 3}) {
		t.Errorf("parts %v", parts)
	}
	n.Above = []int{6}
	if parts := n.parts(readings, core, on); len(parts) != 1 || !slices.Equal(parts[0], []int{2, 3}) {
		t.Errorf("with an anchor in the second: parts %v", parts)
	}
	n.Above = []int{3}
	if parts := n.parts(readings, core, on); len(parts) != 1 || !slices.Equal(parts[0], []int{5, 6}) {
		t.Errorf("with an anchor in the first: parts %v", parts)
	}
	on[3] = true
	core[7] = true // now three against one
	n.Above = nil
	if parts := n.parts(readings, core, on); len(parts) != 1 || !slices.Equal(parts[0], []int{2}) {
		t.Errorf("the larger stays: parts %v", parts)
	}
	core[2] = false
	if parts := n.parts(readings, core, on); parts != nil {
		t.Errorf("one part alone: %v", parts)
	}
}

// A level hole weighs twice as much as one that is named for its side, and
// either weighs more than any number of others.
func TestAnchors(t *testing.T) {
	t.Parallel()
	n := Network{Holes: 10, Level: [2]int{0, 1}, Above: []int{2}, Below: []int{3}}
	for _, c := range []struct{ hole, want int }{{0, 41}, {1, 41}, {2, 21}, {3, 21}, {4, 1}} {
		if got := n.anchors([]int{c.hole}); got != c.want {
			t.Errorf("hole %d: %d, want %d", c.hole, got, c.want)
		}
	}
	if got := n.anchors([]int{0, 2, 4, 5}); got != 64 {
		t.Errorf("four: %d", got)
	}
	n.Level = [2]int{4, 4}
	if got := n.anchors([]int{4}); got != 1 {
		t.Errorf("no level holes: %d", got)
	}
}

// Holes overlap if their centres are closer than the sum of their radii, or
// closer than half a millimetre if a diameter is unknown.
func TestOverlaps(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		diameters []float64
		apart     float64
		want      int
	}{
		{nil, 0.49, 1}, {nil, 0.5, 0}, {nil, 0.52, 0}, {[]float64{8, 0}, 0.49, 1}, {[]float64{8, 0}, 0.51, 0}, {[]float64{0, 8}, 3, 0},
		{[]float64{8, 6}, 6.9, 1}, {[]float64{8, 6}, 7, 0}, {[]float64{0.2, 0.2}, 0.4, 1},
	} {
		n := Network{Diameters: c.diameters}
		if got := n.overlaps(at(0, 0, c.apart, 0), inAll(2)); got != c.want {
			t.Errorf("%v, %g mm apart: %d", c.diameters, c.apart, got)
		}
	}
	n := Network{}
	if got := n.overlaps(at(0, 0, 0, 0, 0, 0), []bool{true, true, false}); got != 1 {
		t.Errorf("outside the core: %d", got)
	}
	if got := n.overlaps(at(0, 0, 0, 0, 0, 0), inAll(3)); got != 3 {
		t.Errorf("three on each other: %d", got)
	}
	same(t, "spread", spread(at(0, 0, 3, 4, 100, 0, 0, -5), []bool{true, true, false, true}), 5+5+hypot(3, 9))
}

func hypot(x, y float64) float64 { return geometry.Point{X: x, Y: y}.Distance(geometry.Point{}) }

// Of two positions that fit, prefer the one with named holes on their sides,
// then the one without overlaps, then the wider one.
func TestPreferred(t *testing.T) {
	t.Parallel()
	n := Network{Above: []int{2}}
	wide, narrow := at(0, 0, 10, 0, 5, 9), at(0, 0, 10, 0, 5, 3)
	below, onto := at(0, 0, 10, 0, 5, -30), at(0, 0, 10, 0, 30, 0)
	onto[2] = onto[1]
	for _, c := range []struct {
		name string
		a, b []geometry.Point
		want bool
	}{
		{"on its side", narrow, below, true}, {"on the wrong side", below, narrow, false},
		{"apart", narrow, onto, true}, {"on another", onto, narrow, false},
		{"wider", wide, narrow, true}, {"narrower", narrow, wide, false}, {"the same", wide, wide, false},
	} {
		if got := n.preferred(c.a, c.b, inAll(3)); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A corner held by two readings can be on either side of the line between their
// ends, and fits equally well when mirrored. It must not overlap another hole,
// a named hole must not be on its wrong side, and a position within a
// millimetre is not another one (first principles).
func TestTurnedOver(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 60, 50, 40, -30)
	pairs := [][2]int{{0, 1}, {0, 2}, {1, 2}, {0, 3}, {1, 3}}
	read := func(places []geometry.Point) []Reading {
		var all []Reading
		for _, p := range pairs {
			all = append(all, Reading{p[0], p[1], places[p[0]].Distance(places[p[1]])})
		}
		return all
	}
	n := Network{Holes: 4, Level: [2]int{0, 1}, Above: []int{2}}
	over := func(n Network, places []geometry.Point, readings []Reading) (fold, bool) {
		return n.turnedOver(places, readings, inAll(4), []int{3}, places[0], places[1], squares(places, readings, 0.05), 0.05)
	}
	f, ok := over(n, places, read(places))
	if !ok || f.at[3].Distance(geometry.Point{X: 40, Y: 30}) > 1e-6 || !slices.Equal(f.holes, []int{3}) {
		t.Errorf("%v, %v", ok, f)
	}
	below := n
	below.Below = []int{3}
	if _, ok := over(below, places, read(places)); ok {
		t.Error("a named hole lies on its wrong side")
	}
	onto := at(0, 0, 100, 0, 60, 50, 60.2, -50)
	if _, ok := over(n, onto, read(onto)); ok {
		t.Error("one hole lies on another")
	}
	flat := at(0, 0, 100, 0, 60, 50, 40, -0.4)
	if _, ok := over(n, flat, read(flat)); ok {
		t.Error("0.8 mm apart are two places")
	}
	flat[3].Y = -0.6
	if _, ok := over(n, flat, read(flat)); !ok {
		t.Error("1.2 mm apart are one place")
	}
	// One more reading, off by d in the mirrored position, costs d², less what
	// the other two readings take up. The limit is 9 squared accuracies.
	pairs = append(pairs, [2]int{2, 3})
	if _, ok := over(n, places, read(places)); ok {
		t.Error("a reading says otherwise, by 52 mm")
	}
}

// Every fold is found once. Two holes within a millimetre of each other do not
// define a line.
func TestFolds(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 100, 0, 60, 50, 40, -30)
	var readings []Reading
	for _, p := range [][2]int{{0, 1}, {0, 2}, {1, 2}, {0, 3}, {1, 3}} {
		readings = append(readings, Reading{p[0], p[1], places[p[0]].Distance(places[p[1]])})
	}
	n := Network{Holes: 4, Level: [2]int{0, 1}, Above: []int{2}}
	if found := n.folds(places, readings, inAll(4), 0.05); len(found) != 1 || !slices.Equal(found[0].holes, []int{3}) {
		t.Errorf("folds %v", found)
	}
	if found := n.folds(places, readings, []bool{true, false, true, true}, 0.05); len(found) != 0 {
		t.Errorf("outside the core: %v", found)
	}
	got, left := n.unfold(at(0, 0, 100, 0, 60, 50, 40, 30), readings, inAll(4), 0.05)
	if got[3].Distance(places[3]) > 1e-6 || len(left) != 1 {
		t.Errorf("spread to %v, %d left", got[3], len(left))
	}
}
