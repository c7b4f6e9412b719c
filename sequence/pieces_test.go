package sequence

import (
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

func all(j geometry.Joint) []int { return geometry.Count(len(j.Fasteners)) }

// Unloaded clusters come before all others, or after them if the maker says so;
// if all are unloaded they are treated as usual.
func TestUnloadedFirstOrLast(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		unloaded []string
		firstOff bool
		want     string
	}{
		{nil, false, "C1 C2 D1 D2 B1 B2 E1 E2 A1 A2"}, {nil, true, "C1 C2 D1 D2 B1 B2 E1 E2 A1 A2"},
		{[]string{"A"}, false, "A1 A2 C1 C2 D1 D2 B1 B2 E1 E2"}, {[]string{"A"}, true, "C1 C2 D1 D2 B1 B2 E1 E2 A1 A2"},
		{[]string{"A", "B", "C", "D", "E"}, false, "C1 C2 D1 D2 B1 B2 E1 E2 A1 A2"}, {[]string{"A", "B", "C", "D", "E"}, true, "C1 C2 D1 D2 B1 B2 E1 E2 A1 A2"},
	} {
		j := caps(c.unloaded...)
		j.UnloadedFirstOff = c.firstOff
		order, err := Order(j, []Group{{Way: RowWay}})
		if err != nil || ids(j, order) != c.want {
			t.Errorf("%v, first off %v: %s, %v", c.unloaded, c.firstOff, ids(j, order), err)
		}
	}
}

// Units: clusters, and each other fastener alone. Members that are not asked
// for are left out of their cluster.
func TestUnits(t *testing.T) {
	t.Parallel()
	j := caps("B")
	j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: "S", Kind: "side"})
	free, loaded := Units(j, []int{0, 1, 2, 3, 4, 10})
	if want := [][]int{{2, 3}}; !slices.EqualFunc(free, want, slices.Equal[[]int]) {
		t.Errorf("free %v", free)
	}
	if want := [][]int{{0, 1}, {4}, {10}}; !slices.EqualFunc(loaded, want, slices.Equal[[]int]) {
		t.Errorf("loaded %v", loaded)
	}
	if free, loaded := Units(j, []int{2, 3}); free != nil || len(loaded) != 1 {
		t.Errorf("unloaded alone: free %v, loaded %v", free, loaded)
	}
	for name, c := range map[string]struct {
		members []int
		want    bool
	}{"a cap": {[]int{0}, true}, "an unloaded cap": {[]int{2, 3}, false}, "both": {[]int{3, 4}, true}, "no cap": {[]int{10}, false}, "none": {nil, false}} {
		if got := Sprung(j, c.members); got != c.want {
			t.Errorf("%s: springs press %v", name, got)
		}
	}
	at := Centres(j, [][]int{{0, 1}, {10}, {4}})
	if at[0] != (geometry.Point{}) || at[1] != (geometry.Point{}) || at[2] != (geometry.Point{X: 190, Y: 22}) {
		t.Errorf("centres %v", at)
	}
}

// A cap with four is tightened crosswise, one with three in a row from its
// middle.
func TestOrderOfAUnit(t *testing.T) {
	t.Parallel()
	var j geometry.Joint
	for k, at := range slices.Concat(geometry.Grid(2, 2, 60, 40, geometry.Point{}), geometry.Row(3, 50, geometry.Point{X: 200}, 90)) {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: string(rune('A' + k)), At: at})
	}
	four := orderUnit(j, []int{0, 1, 2, 3}, TurnDefault)
	if a, b := j.Fasteners[four[0]].At, j.Fasteners[four[1]].At; a.X == b.X || a.Y == b.Y {
		t.Errorf("four: %s is not crosswise", ids(j, four))
	}
	if three := orderUnit(j, []int{4, 5, 6}, TurnDefault); three[0] != 5 {
		t.Errorf("three: %s does not begin in the middle", ids(j, three))
	}
	one := []int{2}
	if got := orderUnit(j, one, TurnDefault); !slices.Equal(got, one) {
		t.Errorf("one: %v", got)
	}
}

// Either all of a group have cast numbers or not; an empty group has none.
func TestNumbered(t *testing.T) {
	t.Parallel()
	j := geometry.Joint{Fasteners: []geometry.Fastener{{ID: "A", Cast: 2}, {ID: "B"}, {ID: "C", Cast: 1}}}
	for name, c := range map[string]struct {
		members []int
		want    bool
	}{"all": {[]int{0, 2}, true}, "one is not": {[]int{0, 1, 2}, false}, "none": {[]int{1}, false}, "nothing": {nil, false}} {
		if got := Numbered(j, c.members); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// A named way is used for any layout; results for circles and flanges list the
// fasteners.
func TestSettledAndSeen(t *testing.T) {
	t.Parallel()
	var j geometry.Joint
	j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: "first", Kind: "side"})
	for k, at := range slices.Concat(geometry.Circle(6, 100, geometry.Point{}, 90, true), geometry.Circle(12, 240, geometry.Point{}, 90, true)) {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: string(rune('A' + k)), Kind: "main", At: at})
	}
	members := all(j)[1:]
	for way, want := range map[Way]Way{Auto: Star, "": Star, Spiral: Spiral, RowWay: RowWay, Cast: Cast} {
		if got := SettledGroup(j, members, Group{Way: way}); got != want {
			t.Errorf("%q: %s", way, got)
		}
	}
	seen := SeenGroup(j, members, Group{})
	if seen.Family != family.Circles || len(seen.Rings) != 2 || len(seen.Rings[0]) != 6 || slices.Min(seen.Rings[0]) != 1 || slices.Max(seen.Rings[1]) != 18 {
		t.Errorf("seen %+v", seen)
	}
	rings := Rings(j, members)
	if len(rings) != 2 || len(rings[0]) != 6 || slices.Min(rings[0]) != 1 || slices.Min(rings[1]) != 7 {
		t.Errorf("rings %v", rings)
	}
}

// A round order can start at another of its members; a row cannot.
func TestFrom(t *testing.T) {
	t.Parallel()
	var round, row geometry.Joint
	for k := range 6 {
		round.Fasteners = append(round.Fasteners, geometry.Fastener{At: geometry.Polar(geometry.Point{}, 50, 60*float64(k))})
		row.Fasteners = append(row.Fasteners, geometry.Fastener{At: geometry.Point{X: 40 * float64(k)}})
	}
	order := []int{0, 2, 4, 1, 3, 5}
	for _, c := range []struct {
		j     geometry.Joint
		first int
		want  []int
	}{{round, 4, []int{4, 1, 3, 5, 0, 2}}, {round, 0, order}, {round, 9, order}, {row, 4, order}, {row, 9, order}} {
		if got := From(c.j, order, c.first); !slices.Equal(got, c.want) {
			t.Errorf("from %d: %v, want %v", c.first, got, c.want)
		}
	}
}
