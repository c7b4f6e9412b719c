package way

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

func nearly(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

func points(x ...float64) []geometry.Point {
	all := make([]geometry.Point, len(x)/2)
	for i := range all {
		all[i] = geometry.Point{X: x[2*i], Y: x[2*i+1]}
	}
	return all
}

// Turns of an edge: positive at a corner, negative at a knee, in both
// directions (first principles on an L).
func TestTurnsAlong(t *testing.T) {
	t.Parallel()
	l := points(0, 0, 20, 0, 20, 10, 10, 10, 10, 30, 0, 30, 0, 15)
	want := []float64{90, 90, 90, -90, 90, 90, 0}
	edge := geometry.Count(7)
	for _, s := range []float64{1, -1} {
		if got := sense(l, edge); got != s {
			t.Errorf("sense %g, want %g", got, s)
		}
		if got := turnsAlong(l, edge); !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("turns %v, want %v", got, want)
		}
		slices.Reverse(edge)
		slices.Reverse(want)
	}
	for of, want := range map[float64]float64{-1: 0, 0: 0, 1: 0.25, 4: 1, 5: 1} {
		nearly(t, "share", share(of, 4), want)
	}
}

// A place of an edge is trapped between two that are further out by a fiftieth
// of the farthest. It is a corner from a turn of 45° on, and counts in full
// from 90°.
func TestTrappedAndCorners(t *testing.T) {
	t.Parallel()
	o := &objective{at: points(0, 0, 20, 0, 20, 20, 0, 20), far: []float64{1, 0.9, 0.89, 0.91}}
	o.lookAlong([]int{0, 1, 2, 3})
	for i, want := range []float64{0, 0, 0.5, 0} {
		nearly(t, "trapped", o.along[i].trapped, want)
		nearly(t, "corner", o.along[i].corner, 0.75)
	}
	o.far[2] = 0.85
	o.lookAlong([]int{0, 1, 2, 3})
	nearly(t, "trapped in full", o.along[2].trapped, 1)
	if o.along[2].last != 1 || o.along[2].next != 3 || o.along[3].next != 0 || o.along[0].last != 3 || len(o.sides) != 0 {
		t.Errorf("along %+v, sides %v", o.along, o.sides)
	}
	// A turn of 60° costs a third of a corner, one of 40° nothing.
	for _, c := range []struct {
		n    int
		want float64
	}{{6, 0.25}, {9, 0}, {8, 0}} {
		o := &objective{at: geometry.Circle(c.n, 2, geometry.Point{}, 0, true), far: []float64{5, 4, 3, 2, 1, 6, 7, 8, 9}[:c.n]}
		o.lookAlong(geometry.Count(c.n))
		nearly(t, "corner", o.along[1].corner, c.want)
		if c.want == 0 && (len(o.sides) != c.n || !slices.Equal(o.sides[:5], []int{4, 3, 2, 1, 0})) {
			t.Errorf("sides %v", o.sides)
		}
	}
	for _, c := range []struct {
		last, next bool
		want       float64
	}{{false, false, 1.5}, {true, false, 0.75}, {false, true, 0.75}, {true, true, 0.4}} {
		o := &objective{along: []along{{last: 1, next: 2, trapped: 0.4, corner: 0.75}}}
		nearly(t, "closing", o.closing(0, []bool{false, c.last, c.next}), c.want)
	}
	o = &objective{along: []along{{last: 1, next: 2}, {last: 1, next: 2, trapped: 0.3}}}
	nearly(t, "neither", o.closing(0, []bool{true, true, true}), 0)
	nearly(t, "trapped alone", o.closing(1, []bool{true, true, true}), 0.3)
	nearly(t, "not yet trapped", o.closing(1, []bool{true, true, false}), 0)
}

// Passing over a nearer place on the other side costs three times how much
// nearer it is, beyond a fiftieth, times how far what is tight leans away from
// it.
func TestPassedOver(t *testing.T) {
	t.Parallel()
	o := &objective{at: points(0.9, 0, -0.5, 0, -0.6, 0.1, 0.4, 0, -0.88, 0), along: make([]along, 5)}
	for _, p := range o.at {
		o.far = append(o.far, p.Distance(geometry.Point{}))
	}
	pull := geometry.Point{X: 0.8}
	tight := make([]bool, 5)
	nearly(t, "one", o.passedOver(0, []int{1}, tight, pull), 3*(0.4-0.02)*0.8)
	nearly(t, "two", o.passedOver(0, []int{1, 2}, tight, pull), 3*(0.4-0.02)*0.8+3*(0.9-o.far[2]-0.02)*0.8*0.6/o.far[2])
	nearly(t, "on the same side", o.passedOver(0, []int{3}, tight, pull), 0)
	nearly(t, "hardly nearer", o.passedOver(0, []int{4}, tight, pull), 0)
	nearly(t, "leaning towards it", o.passedOver(0, []int{1}, tight, pull.Scale(-1)), 0)
	tight[1] = true
	nearly(t, "tight since", o.passedOver(0, []int{1}, tight, pull), 0)
	o.along[0].corner = 0.1
	tight[1] = false
	nearly(t, "a corner", o.passedOver(0, []int{1}, tight, pull), 0)
}

// The cost of a step, term by term, with the weights of the objective.
func TestCostOfAStep(t *testing.T) {
	t.Parallel()
	o := &objective{
		at: points(1, 0, -0.5, 0, 0.6, 0.8), far: []float64{1, 0.5, 1}, turnAt: []float64{0.5, 0.9, 1}, near: 0.5,
		bent: points(0, 0, 0, 0, 0.5, 0), beside: [][]int{{2}, nil, {0}}, along: make([]along, 3),
	}
	nearly(t, "its turn", o.outOfTurn(1, 0), 0)
	nearly(t, "out of turn", o.outOfTurn(0, 0), 15*0.25)
	nearly(t, "after the last step", o.outOfTurn(1, 7), 15*0.25)
	nearly(t, "balanced", o.step(1, -1, 0, geometry.Point{X: 0.6, Y: 0.8}, geometry.Point{}), 1)
	nearly(t, "excess", o.step(1, -1, 0, geometry.Point{X: 1.5}, geometry.Point{}), 1.5+6*0.25)
	nearly(t, "as bent as a pair", o.step(1, -1, 0, geometry.Point{}, geometry.Point{Y: -1}), 0)
	nearly(t, "saddle", o.step(1, -1, 0, geometry.Point{}, geometry.Point{X: 1.2, Y: 1.6}), 0.6)
	nearly(t, "less what is expected", o.step(2, -1, 2, geometry.Point{}, geometry.Point{X: 2.5}), 0.6)
	nearly(t, "after the first", o.step(1, 0, 0, geometry.Point{}, geometry.Point{}), 0)
	nearly(t, "far across", o.succession(1, 0), 0)
	nearly(t, "a neighbour on one side", o.succession(0, 2), 2+0.15*0.6)
	o.at[2] = geometry.Point{X: 1, Y: 0.25}
	nearly(t, "and near", o.succession(2, 0), 2+0.6*0.25+0.15)
	o.beside = make([][]int, 3)
	nearly(t, "near alone", o.succession(2, 0), 0.6*0.25+0.15)
}

// First principles on a rectangle: lengths are in units of the farthest place
// from the point of balance, squares are those of complex numbers.
func TestObjectiveOfARectangle(t *testing.T) {
	t.Parallel()
	at := geometry.Rectangle(3, 0, 160, 120, geometry.Point{X: 7, Y: 5}) // corners 100 mm out, the others 60
	o := newObjective(at, nil, nil, [][]int{geometry.Count(6)})
	for i, p := range at {
		want := geometry.Point{X: (p.X - 7) / 100, Y: (p.Y - 5) / 100}
		if o.at[i].Distance(want) > 1e-9 || o.square[i].Distance(geometry.Point{X: want.X*want.X - want.Y*want.Y, Y: 2 * want.X * want.Y}) > 1e-9 {
			t.Errorf("place %d: %v, squared %v", i, o.at[i], o.square[i])
		}
		nearly(t, "far", o.far[i], want.Distance(geometry.Point{}))
	}
	nearly(t, "near", o.near, 3*geometry.Spacing(at)/100)
	if len(o.turnAt) != 6 || len(o.bent) != 6 {
		t.Fatalf("%d turns, %d bends", len(o.turnAt), len(o.bent))
	}
	for k, want := range []float64{0.6, 0.6, 1, 1, 1, 1} {
		nearly(t, "turn", o.turnAt[k], want)
	}
	// The two in the middle come first: each bends by -0.36 along x; the
	// corners by 0.28 each, as 0.8² - 0.6², whatever they do diagonally.
	for k, want := range []float64{-0.36, -0.72, -0.44, -0.16, 0.12, 0.4} {
		if math.Abs(o.bent[k].X-want) > 0.03 || math.Abs(o.bent[k].Y) > 1e-9 {
			t.Errorf("bent after %d by %v, want %g", k+1, o.bent[k], want)
		}
	}
	both := newObjective(at, nil, nil, [][]int{{0, 2}, {1, 3, 4, 5}})
	if len(both.turnAt) != 6 || math.Abs(both.turnAt[2]-0.6) > 1e-9 || both.bent[1].Distance(both.square[0].Add(both.square[2])) > 1e-6 {
		t.Errorf("two stages: turns %v, bends %v", both.turnAt, both.bent)
	}
}

// Weigh by hand: two across, then the other two, on a rectangle of four.
func TestWeigh(t *testing.T) {
	t.Parallel()
	at := points(80, 60, -80, -60, 80, -60, -80, 60, 0, 0)
	w := Weigh(at, []int{4, 0, 1, 2, 3})
	for k, want := range []float64{0, 1, 0, 1, 0} {
		nearly(t, "pull", w.Pull[k], want)
	}
	nearly(t, "outwards", w.Outwards, 0)
	// The middle comes last instead of first: each of the five is off by the
	// whole distance at the first step and at the last. n = 5, spread 4/5 -
	// 16/25.
	w = Weigh(at, []int{0, 1, 2, 3, 4})
	nearly(t, "inwards", w.Outwards, 2/(2*5*(4./5-16./25)))
	if w := Weigh(at[:4], []int{0, 1, 2, 3}); w.Outwards != 0 || len(w.Saddle) != 4 {
		t.Errorf("all alike: %+v", w)
	}
	if w := Weigh(nil, nil); w.Pull != nil || w.Outwards != 0 {
		t.Errorf("none: %+v", w)
	}
}

// Ends of arms and corners of an L. A rectangle, a part with a notch, and a
// part with an arm so short that a side is further out than its end have none.
func TestArms(t *testing.T) {
	t.Parallel()
	layoutOf := func(x ...float64) *layout {
		at := points(x...)
		l := &layout{at: at}
		l.seen.Edge = geometry.Count(len(at))
		return l
	}
	l := layoutOf(0, 0, 70, 0, 140, 0, 200, 0, 200, 30, 200, 60, 130, 60, 60, 60, 60, 130, 60, 200, 30, 200, 0, 200, 0, 140, 0, 70)
	ends, corners := l.arms()
	if !slices.Equal(ends, []int{4, 10}) || !slices.Equal(corners, []int{0, 3, 5, 9, 11}) {
		t.Errorf("an L has ends %v, corners %v", ends, corners)
	}
	for name, l := range map[string]*layout{
		"rectangle": layoutOf(0, 0, 100, 0, 200, 0, 200, 60, 200, 120, 100, 120, 0, 120, 0, 60),
		"notch":     layoutOf(0, 0, 100, 0, 200, 0, 200, 50, 200, 100, 130, 100, 100, 40, 70, 100, 0, 100, 0, 50),
		"short arm": layoutOf(0, 0, 70, 0, 140, 0, 200, 0, 200, 30, 200, 60, 130, 60, 60, 60, 60, 75, 60, 90, 30, 90, 0, 90, 0, 60, 0, 30),
	} {
		if ends, corners := l.arms(); ends != nil || corners != nil {
			t.Errorf("%s: ends %v, corners %v", name, ends, corners)
		}
	}
}

// Neighbours: the adjacent ones along an edge; at a fold, also the places
// beside it.
func TestBeside(t *testing.T) {
	t.Parallel()
	l := newLayout(geometry.Rectangle(4, 1, 300, 160, geometry.Point{}))
	beside := l.beside()
	n := len(l.seen.Edge)
	for k, i := range l.seen.Edge {
		got := slices.Sorted(slices.Values(beside[i]))
		want := slices.Sorted(slices.Values([]int{l.seen.Edge[(k+n-1)%n], l.seen.Edge[(k+1)%n]}))
		if !slices.Equal(got, want) {
			t.Errorf("place %d: beside %v, want %v", i, got, want)
		}
	}
	fold := &layout{at: points(-10, 10, 0, 5, 10, 10), radius: []float64{20, 15, 20}, slack: 1}
	for _, c := range []struct {
		radius, apart float64
		want          bool
	}{{15, 10, true}, {18.9, 10, true}, {19.1, 10, false}, {15, 8, true}, {15, 13, false}} {
		fold.radius[1] = c.radius
		fold.at[0].X, fold.at[2].X = -c.apart, c.apart
		// The step is as long as the distance from the middle to a side.
		fold.at[1].Y = 10 - math.Sqrt(math.Max(0, 200-c.apart*c.apart))
		if got := fold.folds(0, 1, 2); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// Stages: what is inside comes first if it is balanced, corners last.
func TestStages(t *testing.T) {
	t.Parallel()
	pan := geometry.Rectangle(5, 2, 400, 200, geometry.Point{})
	for name, c := range map[string]struct {
		inside []geometry.Point
		want   []int // how many in each stage
	}{
		"none inside": {nil, []int{10, 4}}, "a pair inside": {points(70, 0, -70, 0), []int{2, 10, 4}}, "both on one side": {points(110, 10, 110, -10), []int{2, 10, 4}},
		"three on one side": {points(120, 20, 120, -20, 90, 0), []int{13, 4}},
	} {
		l := layoutAs(slices.Concat(pan, c.inside), family.Perimeter)
		if l.seen.Family != family.Perimeter || len(l.seen.Inner) != len(c.inside) {
			t.Fatalf("%s: a %s with %d inside", name, l.seen.Family, len(l.seen.Inner))
		}
		if got := geometry.Mapped(l.stages(), func(s []int) int { return len(s) }); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	l := &layout{at: points(100, 0, -100, 0, 0, 50, 0, -50)}
	nearly(t, "pull", l.pull([]int{0, 2}), math.Hypot(1, 0.5))
	nearly(t, "balanced", l.pull([]int{0, 1}), 0)
	nearly(t, "spread", l.spread([]int{0, 2}), math.Hypot(100, 50))
	nearly(t, "reach of none", reachFrom(geometry.Point{}, nil), 1e-9)
	l.slack = 3
	if got := l.furthestAside([]int{0, 2, 3}); !slices.Equal(got, []int{2, 3}) {
		t.Errorf("furthest aside %v", got)
	}
	l.at[3].Y = -43
	if got := l.furthestAside([]int{0, 2, 3}); len(got) != 1 {
		t.Errorf("furthest aside %v", got)
	}
}

// The picture decides: the highest, then the side that the turn prefers.
func TestHighest(t *testing.T) {
	t.Parallel()
	l := &layout{at: points(-10, 50, 0, 49, 10, 50, 20, 47), slack: 2}
	for turn, want := range map[Turn]int{TurnLeft: 0, TurnRight: 2} {
		if got := l.highest(geometry.Count(4), turn); got != want {
			t.Errorf("%s: %d", turn, got)
		}
	}
	l.at[0].Y = 47.9
	if got := l.highest(geometry.Count(4), TurnLeft); got != 1 {
		t.Errorf("below the top: %d", got)
	}
	l.Regular, l.at[1].Y, l.slack = true, 48.6, 1.5
	if got := l.highest(geometry.Count(4), TurnLeft); got != 1 {
		t.Errorf("of few places: %d", got)
	}
	l.at = append(l.at, slices.Repeat(points(0, 0), 26)...) // of thirty, two thirds of the slack
	if got := l.highest(geometry.Count(4), TurnLeft); got != 2 {
		t.Errorf("of many places: %d", got)
	}
}

// Places tie within a slack that depends on how exact the layout is; in an
// irregular one only those that the part does not distinguish.
func TestTies(t *testing.T) {
	t.Parallel()
	l := &layout{spacing: 100, slack: 6}
	nearly(t, "irregular", l.levelRadius(), 6)
	l.Regular = true
	nearly(t, "true", l.levelRadius(), 2)
	l.seen.OffMm = 6
	nearly(t, "as far off as the slack", l.levelRadius(), 2)
	l.seen.OffMm = 6.1
	nearly(t, "seen loosely", l.levelRadius(), 17)
	l.at, l.radius = points(10, 0, -10.5, 0, 0, 30), []float64{10, 10.5, 30}
	nearly(t, "reach", l.reach(0), 20.5+math.Hypot(10, 30))
	if !l.closer(0, 1) || l.closer(1, 0) || l.closer(0, 0) {
		t.Error("by the distance from the middle")
	}
	l.radius[1] = 10
	if l.closer(1, 0) || !l.closer(0, 1) {
		t.Error("by the distances to all others")
	}
	l.Regular, l.slack = false, 6
	if got := l.tiedFor([]int{0, 1, 2}); !slices.Equal(got, []int{0, 1}) {
		t.Errorf("alike: %v", got)
	}
	l.at, l.around, l.reaches = points(10, 0, -10, 0, 0, 30, 12, 4), nil, nil
	l.radius = []float64{10, 10, 30, 13}
	if got := l.tiedFor([]int{0, 1, 2, 3}); !slices.Equal(got, []int{0, 3}) { // place 3 has nearly the same surroundings
		t.Errorf("told apart on the part: %v", got)
	}
	l.Regular, l.seen.OffMm = true, 0
	if got := l.tiedFor([]int{1, 0, 2, 3}); !slices.Equal(got, []int{1, 0}) {
		t.Errorf("regular: %v", got)
	}
	l.tied = func([]int) []int { return []int{1} }
	if got := l.tiedFor([]int{0, 1, 2, 3}); !slices.Equal(got, []int{1}) {
		t.Errorf("as a larger part prefers: %v", got)
	}
}

// Two places have the same surroundings if the distances match, except one on
// each side if there are six places.
func TestAlike(t *testing.T) {
	t.Parallel()
	at := func(a, b []float64) *layout {
		n := len(a)
		l := &layout{at: make([]geometry.Point, n), slack: 1, around: make([][]float64, n)}
		l.around[0], l.around[1] = a, b
		return l
	}
	five, six := []float64{0, 10, 20, 30, 40}, []float64{0, 10, 20, 30, 40, 50}
	for _, c := range []struct {
		name string
		a, b []float64
		want bool
	}{
		{"the same", five, five, true}, {"within the slack", five, []float64{0, 11, 19, 30, 41}, true}, {"beyond it", five, []float64{0, 11.1, 20, 30, 40}, false},
		{"one lacks its partner, of six", six, []float64{0, 10, 15, 20, 30, 40}, true}, {"one lacks, of five", five, []float64{0, 10, 15, 20, 30}, false},
		{"two lack", six, []float64{0, 10, 13, 17, 20, 30}, false}, {"one on each side", six, []float64{0, 10, 20, 25, 40, 50}, true},
		{"two of one side", []float64{0, 10, 13, 17, 20, 30}, six, false}, {"at the end", six, []float64{0, 10, 20, 30, 40, 80}, true},
	} {
		if got := at(c.a, c.b).alike(0, 1); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// Places are on one spoke within the slack, measured along the place's own
// circle; across is within 47° of opposite.
func TestSpokesAndAcross(t *testing.T) {
	t.Parallel()
	l := &layout{radius: []float64{100, 100, 100, 10}, angle: []float64{0, 140, 185, 190}, slack: 5, spacing: 50}
	for _, c := range []struct {
		i    int
		deg  float64
		want bool
	}{{0, 2.8, true}, {0, 2.9, false}, {0, 357.2, true}, {0, 357.1, false}, {3, 28, true}, {3, 29, false}} {
		if got := l.onSpoke(c.i, c.deg); got != c.want {
			t.Errorf("place %d, %g degrees: %v", c.i, c.deg, got)
		}
	}
	for _, c := range []struct {
		rest []int
		want int
	}{{[]int{1, 2}, 1}, {[]int{2, 1}, 0}, {[]int{1}, 0}, {nil, -1}} {
		if got := l.across(0, c.rest); got != c.want {
			t.Errorf("across of %v: %d", c.rest, got)
		}
	}
	l.angle = []float64{0, 134, 132, 177.5, 175}
	l.radius = []float64{100, 100, 100, 100, 100}
	for _, c := range []struct {
		rest []int
		want int
	}{{[]int{2}, -1}, {[]int{2, 1}, 1}, {[]int{4, 3}, 0}, {[]int{1, 3}, 1}} {
		if got := l.across(0, c.rest); got != c.want {
			t.Errorf("across of %v: %d, want %d", c.rest, got, c.want)
		}
	}
	if !l.central(0) == (l.radius[0] < 0.15*l.spacing) {
		t.Error("central")
	}
	for r, want := range map[float64]bool{7.4: true, 7.6: false} {
		l.radius[0] = r
		if l.central(0) != want {
			t.Errorf("%g mm from the centre: central %v", r, l.central(0))
		}
	}
	l.angle = []float64{30, 100}
	nearly(t, "to the left", l.turned(1, 30, TurnLeft), 70)
	nearly(t, "to the right", l.turned(1, 30, TurnRight), 290)
}

// Columns are divided at steps along the row of more than a quarter of the
// spacing. A grid is taken by its rows if they are along the shorter extent.
func TestColumns(t *testing.T) {
	t.Parallel()
	l := &layout{at: points(0, 0, 24, 10, 120, 0, 146, 0, 300, 0), spacing: 100}
	if got := l.columns(); len(got) != 4 || !slices.Equal(got[0], []int{0, 1}) {
		t.Errorf("columns %v", got)
	}
	for _, c := range []struct {
		columns, rows int
		x, y          float64
		turn          float64
		want          int
	}{{5, 3, 100, 100, 0, 5}, {3, 5, 100, 100, 0, 5}, {3, 3, 100, 100, 0, 3}, {4, 3, 100, 131, 0, 4}, {4, 3, 100, 140, 0, 4}, {4, 3, 100, 175, 0, 3}} {
		l := newLayout(geometry.Grid(c.columns, c.rows, c.x, c.y, geometry.Point{}))
		if got := l.columns(); len(got) != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// The star of an odd or even count, and single bolts between pairs.
func TestStarPieces(t *testing.T) {
	t.Parallel()
	for n, want := range map[int][]int{0: {}, 1: {0}, 2: {0, 1}, 3: {0, 1, 2}, 4: {0, 2, 1, 3}, 5: {0, 2, 4, 1, 3}, 6: {0, 3, 1, 4, 2, 5}} {
		if got := scattered(n); !slices.Equal(got, want) {
			t.Errorf("scattered %d: %v", n, got)
		}
	}
	for n, want := range map[int][]int{3: {0, 1, 2}, 6: {0, 3, 1, 4, 2, 5}, 7: {0, 3, 6, 2, 5, 1, 4}, 8: {0, 4, 2, 6, 1, 5, 3, 7}, 10: {0, 5, 2, 7, 4, 9, 1, 6, 3, 8}} {
		if got := starPlaces(n); !slices.Equal(got, want) {
			t.Errorf("star of %d: %v, want %v", n, got, want)
		}
	}
	for _, c := range []struct {
		name  string
		order []int
		count int
		want  []int
	}{
		{"none missing", []int{0, 4, 2, 6, 1, 5, 3, 7}, 8, []int{0, 4, 2, 6, 1, 5, 3, 7}},
		{"one missing: it comes in its turn", []int{0, 2, 6, 1, 5, 3, 7}, 8, []int{0, 2, 6, 1, 5, 3, 7}},
		{"odd counts have no opposite", []int{0, 2, 4, 1}, 5, []int{0, 2, 4, 1}},
		{"two missing beside each other", []int{0, 2, 6, 1, 3, 7}, 8, []int{0, 2, 6, 3, 7, 1}},
	} {
		if got := loneLast(slices.Clone(c.order), c.count); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	for _, c := range []struct {
		order        []int
		place, count int
		want         int
	}{{[]int{0, 6, 3, 9}, 6, 12, 4}, {[]int{0, 6, 3, 9}, 10, 12, 2}, {[]int{3, 9, 0, 6}, 8, 12, 4}, {[]int{4, 8, 0}, 1, 12, 1}, {[]int{0}, 1, 12, 1}, {[]int{5, 0}, 1, 12, 2}} {
		if got := latest(c.order, c.place, c.count); got != c.want {
			t.Errorf("%d among %v: %d, want %d", c.place, c.order, got, c.want)
		}
	}
}

// What a mend changes.
func TestMends(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func([]int)
		want   []int
	}{"swap": {swapEnds, []int{4, 2, 3, 1}}, "first to end": {firstToEnd, []int{2, 3, 4, 1}}, "last to front": {lastToFront, []int{4, 1, 2, 3}}} {
		places := []int{1, 2, 3, 4}
		if c.change(places); !slices.Equal(places, c.want) {
			t.Errorf("%s: %v", name, places)
		}
	}
	if got := without([]int{4, 5, 6}, 5); !slices.Equal(got, []int{4, 6}) {
		t.Errorf("%v", got)
	}
	if got := without([]int{4, 5, 6}, 7); !slices.Equal(got, []int{4, 5, 6}) {
		t.Errorf("%v", got)
	}
}
