package judge

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// workOf gives places the ids A0, A1 and so on, and puts them in an order.
func workOf(points []geometry.Point, order []int) *work {
	var j geometry.Joint
	step := make([]int, len(points))
	for i, p := range points {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: fmt.Sprintf("A%d", i), Kind: "main", At: p})
	}
	for k, i := range order {
		step[i] = k + 1
	}
	return newWork(j, order, step)
}

func listed(points []geometry.Point) *work { return workOf(points, geometry.Count(len(points))) }

var (
	circleOf11 = geometry.Circle(11, 300, geometry.Point{X: 4, Y: 9}, 90, true)
	headOf10   = geometry.Grid(5, 2, 95, 90, geometry.Point{})
	ovalOf11   = func() []geometry.Point { // nearest 60 mm, farthest 150 mm out
		return geometry.Mapped(geometry.Circle(11, 300, geometry.Point{}, 0, false), func(p geometry.Point) geometry.Point {
			return geometry.Point{X: p.X, Y: 0.4 * p.Y}
		})
	}()
)

const none = Severity("")

func severity(f Finding, found bool) Severity {
	if !found {
		return none
	}
	return f.Severity
}

// The severities of each rule at its limits, with a case on either side. The
// limits are design choices (common practice, no source).
func TestLimitsOfEachRule(t *testing.T) {
	t.Parallel()
	circle, head, oval := listed(circleOf11), listed(headOf10), listed(ovalOf11)
	flat := listed(geometry.Mapped(geometry.Circle(12, 300, geometry.Point{}, 0, false), func(p geometry.Point) geometry.Point {
		return geometry.Point{X: p.X, Y: 0.7 * p.Y} // 1.43 times as far out as the nearest
	}))
	row := listed(geometry.Row(5, 60, geometry.Point{}, 0))
	few := func(n int) measured {
		return measured{Figures: Figures{Neighbours: n}, adjacent: geometry.Count(n + 1)[1:]}
	}
	notAcross := func(n int) measured { return measured{notAcross: geometry.Count(n + 1)[1:]} }
	run := func(n int, pull float64) measured { return measured{Figures: Figures{Run: n, Pull: pull}, runFrom: 1} }
	out := func(inwards int, share float64) measured {
		return measured{Figures: Figures{Inwards: inwards}, outwards: share, inward: geometry.Count(inwards), beyond: geometry.Count(inwards)}
	}
	for _, c := range []struct {
		name string
		rule func(*work, measured, yardstick) (Finding, bool)
		w    *work
		m    measured
		a    yardstick
		want Severity
	}{
		{"as many inwards as allowed", (*work).judgeOutwards, head, out(2, 0), yardstick{inwards: 2}, none},
		{"one more", (*work).judgeOutwards, head, out(3, 0), yardstick{inwards: 2}, Remark},
		{"two more", (*work).judgeOutwards, head, out(4, 0), yardstick{inwards: 2}, Departure},
		{"on a circle", (*work).judgeOutwards, circle, out(4, 0), yardstick{}, none},
		{"out of turn as far as allowed", (*work).judgeOutwards, oval, out(1, 0.65), yardstick{inwards: 11, outwards: 0.65}, none},
		{"further", (*work).judgeOutwards, oval, out(1, 0.7), yardstick{inwards: 11, outwards: 0.65}, Remark},
		{"further, but never inwards", (*work).judgeOutwards, oval, out(0, 0.9), yardstick{inwards: 11, outwards: 0.65}, none},
		{"nearly much", (*work).judgeOutwards, oval, out(1, 0.75), yardstick{inwards: 11, outwards: 0.65}, Remark},
		{"much", (*work).judgeOutwards, oval, out(1, 0.751), yardstick{inwards: 11, outwards: 0.65}, Departure},
		{"much on a flatter edge", (*work).judgeOutwards, flat, out(1, 0.9), yardstick{inwards: 11, outwards: 0.65}, Remark},

		{"run as long as allowed", (*work).judgeOneSide, head, run(4, 0), yardstick{run: 4}, none},
		{"one more", (*work).judgeOneSide, head, run(5, 0), yardstick{run: 4}, Remark},
		{"two more", (*work).judgeOneSide, head, run(6, 0), yardstick{run: 4}, Departure},
		{"two on one side", (*work).judgeOneSide, row, run(2, 0), yardstick{run: 1}, none},
		{"three", (*work).judgeOneSide, row, run(3, 0), yardstick{run: 1}, Departure},
		{"a circle has sides", (*work).judgeOneSide, circle, run(5, 0), yardstick{run: 4}, Remark},
		{"an oval has none", (*work).judgeOneSide, oval, run(5, 1.59), yardstick{run: 4, pull: 1}, none},
		{"unless the part is drawn there", (*work).judgeOneSide, oval, run(5, 1.61), yardstick{run: 4, pull: 1}, Remark},

		{"neighbours as allowed", (*work).judgeNeighbours, circle, few(2), yardstick{neighbours: 2}, none},
		{"one more", (*work).judgeNeighbours, circle, few(3), yardstick{neighbours: 2}, Remark},
		{"two of ten steps more", (*work).judgeNeighbours, circle, few(4), yardstick{neighbours: 2}, Remark},
		{"three of ten", (*work).judgeNeighbours, circle, few(5), yardstick{neighbours: 2}, Departure},
		{"one of four", (*work).judgeNeighbours, row, few(2), yardstick{neighbours: 1}, Remark},
		{"two of four", (*work).judgeNeighbours, row, few(3), yardstick{neighbours: 1}, Departure},

		{"across as allowed", (*work).judgeAcross, circle, notAcross(3), yardstick{notAcross: 3}, none},
		{"one not", (*work).judgeAcross, circle, notAcross(4), yardstick{notAcross: 3}, Remark},
		{"two of ten", (*work).judgeAcross, circle, notAcross(5), yardstick{notAcross: 3}, Remark},
		{"three of ten", (*work).judgeAcross, circle, notAcross(6), yardstick{notAcross: 3}, Departure},
		{"on no circle", (*work).judgeAcross, oval, notAcross(6), yardstick{notAcross: 3}, none},

		{"pull as allowed", (*work).judgeBalance, head, run(0, 1.6), yardstick{pull: 1}, none},
		{"a hair more", (*work).judgeBalance, head, run(0, 1.6+0.9e-6), yardstick{pull: 1}, none},
		{"more", (*work).judgeBalance, head, run(0, 1.6+1.1e-6), yardstick{pull: 1}, Remark},
		{"nearly much", (*work).judgeBalance, head, run(0, 2.5), yardstick{pull: 1}, Remark},
		{"much", (*work).judgeBalance, head, run(0, 2.51), yardstick{pull: 1}, Departure},
		{"of more allowed", (*work).judgeBalance, head, run(0, 2.9), yardstick{pull: 2}, none},
		{"more of more", (*work).judgeBalance, head, run(0, 4.49), yardstick{pull: 2}, Remark},
		{"much of more", (*work).judgeBalance, head, run(0, 4.51), yardstick{pull: 2}, Departure},

		{"bent as allowed", (*work).judgeSaddle, oval, measured{Figures: Figures{Saddle: 2.4}}, yardstick{saddle: 2.4}, none},
		{"more", (*work).judgeSaddle, oval, measured{Figures: Figures{Saddle: 2.41}}, yardstick{saddle: 2.4}, Remark},
		{"nearly much", (*work).judgeSaddle, oval, measured{Figures: Figures{Saddle: 2.7}}, yardstick{saddle: 2.4}, Remark},
		{"much", (*work).judgeSaddle, oval, measured{Figures: Figures{Saddle: 2.71}}, yardstick{saddle: 2.4}, Departure},
	} {
		f, found := c.rule(c.w, c.m, c.a)
		if got := severity(f, found); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// What a finding contains: the steps and ids, what they are compared with, and
// the figures.
func TestWhatAFindingIsAbout(t *testing.T) {
	t.Parallel()
	w := workOf(circleOf11, []int{5, 3, 8, 0, 1, 2, 4, 6, 7, 9, 10})
	for _, c := range []struct {
		name string
		f    func() (Finding, bool)
		want Finding
	}{
		{"across", func() (Finding, bool) {
			return w.judgeAcross(measured{notAcross: []int{1, 4}}, yardstick{notAcross: 1})
		},
			Finding{Rule: Across, Severity: Remark, Steps: []int{2, 5}, IDs: []string{"A3", "A1"}, Against: []string{"A5", "A0"}, AgainstSteps: []int{1, 4}, Figure: 2, Allowed: 1, Of: 10}},
		{"neighbours", func() (Finding, bool) {
			return w.judgeNeighbours(measured{Figures: Figures{Neighbours: 2}, adjacent: []int{2, 3}}, yardstick{neighbours: 1})
		}, Finding{Rule: Neighbours, Severity: Remark, Steps: []int{3, 4}, IDs: []string{"A8", "A0"}, Against: []string{"A3", "A8"}, AgainstSteps: []int{2, 3}, Figure: 2, Allowed: 1}},
		{"one side", func() (Finding, bool) {
			return w.judgeOneSide(measured{Figures: Figures{Run: 3}, runFrom: 2}, yardstick{run: 2})
		}, Finding{Rule: OneSide, Severity: Remark, Steps: []int{3, 4, 5}, IDs: []string{"A8", "A0", "A1"}, Figure: 3, Allowed: 2}},
		{"balance", func() (Finding, bool) {
			return w.judgeBalance(measured{Figures: Figures{Pull: 2}, pullAt: 3}, yardstick{pull: 1})
		}, Finding{Rule: Balance, Severity: Remark, Steps: []int{4}, IDs: []string{"A0"}, Figure: 2, Allowed: 1}},
		{"saddle", func() (Finding, bool) {
			return w.judgeSaddle(measured{Figures: Figures{Saddle: 2}, saddleAt: 1}, yardstick{saddle: 1.9})
		}, Finding{Rule: Saddle, Severity: Remark, Steps: []int{2}, IDs: []string{"A3"}, Figure: 2, Allowed: 1.9}},
	} {
		got, found := c.f()
		if !found || fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
	head := workOf(headOf10, []int{0, 2, 1, 3, 4, 5, 6, 7, 8, 9})
	f, _ := head.judgeOutwards(measured{Figures: Figures{Inwards: 1}, inward: []int{1}, beyond: []int{0}}, yardstick{})
	if want := (Finding{Rule: Outwards, Severity: Remark, Steps: []int{2}, IDs: []string{"A2"}, Against: []string{"A0"}, AgainstSteps: []int{1}, Figure: 1}); fmt.Sprint(f) != fmt.Sprint(want) {
		t.Errorf("outwards: %+v, want %+v", f, want)
	}
	f, found := head.judgeMiddle(measured{}, yardstick{})
	if want := (Finding{Rule: Middle, Severity: Departure, Steps: []int{1}, IDs: []string{"A0"}, Against: []string{"A2", "A7"}}); !found || fmt.Sprint(f) != fmt.Sprint(want) {
		t.Errorf("middle: %+v, want %+v", f, want)
	}
}

// Where an order may start: in the innermost ring; except on rows and circles
// also inside, or hardly further out than the nearest.
func TestStartsInTheMiddle(t *testing.T) {
	t.Parallel()
	pan := geometry.Rectangle(5, 2, 300, 160, geometry.Point{})
	withInner := append(slices.Clone(pan), geometry.Point{X: 60}, geometry.Point{X: -20})
	rings := append(geometry.Circle(8, 160, geometry.Point{}, 90, true), geometry.Circle(12, 320, geometry.Point{}, 75, true)...)
	flanges := append(geometry.Circle(4, 90, geometry.Point{X: -150}, 30, true), geometry.Circle(5, 90, geometry.Point{X: 150, Y: 20}, 80, true)...)
	for _, c := range []struct {
		name   string
		points []geometry.Point
		first  int
		want   bool
	}{
		{"row, middle", geometry.Row(5, 60, geometry.Point{}, 0), 2, true}, {"row, beside", geometry.Row(5, 60, geometry.Point{}, 0), 1, false},
		{"even row, either", geometry.Row(6, 60, geometry.Point{}, 0), 3, true}, {"even row, beside", geometry.Row(6, 60, geometry.Point{}, 0), 4, false},
		{"head, middle", headOf10, 7, true}, {"head, beside", headOf10, 1, false},
		{"circle, any", circleOf11, 4, true}, {"flanges, any", flanges, 6, true},
		{"inner circle", rings, 3, true}, {"outer circle", rings, 9, false},
		{"pan, nearest", pan, 2, true}, {"pan, corner", pan, 0, false},
		{"pan, any inside", withInner, 14, true}, {"pan with some inside, at the edge", withInner, 2, false},
	} {
		order := slices.Insert(slices.DeleteFunc(geometry.Count(len(c.points)), func(i int) bool { return i == c.first }), 0, c.first)
		_, found := workOf(c.points, order).judgeMiddle(measured{}, yardstick{})
		if found == c.want {
			t.Errorf("%s: found %v", c.name, found)
		}
	}
	// On circles a ring is a ring, however close the next one is.
	near := workOf(rings, append(geometry.Count(20)[8:], geometry.Count(8)...))
	near.spacing = 1000
	if near.seen.Family != family.Circles || near.startsInMiddle() {
		t.Errorf("a %s may start in its outer ring", near.seen.Family)
	}
	// On an oval the first may be half a spacing further out than the nearest.
	w := listed(ovalOf11)
	w.ring = slices.Repeat([]int{1}, 11)
	out := geometry.Mapped(w.Points, w.centroid.Distance)
	for share, want := range map[float64]bool{0.49: true, 0.51: false} {
		w.spacing = (out[0] - slices.Min(out)) / share
		if got := w.startsInMiddle(); got != want {
			t.Errorf("%g of the spacing further out: %v", share, got)
		}
	}
}

// What the trade allows for each family (terms of the objective,
// thresholds.go).
func TestYardsticks(t *testing.T) {
	t.Parallel()
	inf := math.Inf(1)
	pan := geometry.Rectangle(5, 2, 300, 160, geometry.Point{})
	circle := func(n int) []geometry.Point { return geometry.Circle(n, 300, geometry.Point{}, 90, true) }
	free := []geometry.Point{{X: 0, Y: 0}, {X: 33, Y: 20}, {X: 80, Y: 3}, {X: 90, Y: 61}, {X: 41, Y: 77}, {X: 12, Y: 50}, {X: 55, Y: 41}, {X: 130, Y: 20}, {X: 122, Y: 88}, {X: 70, Y: 100}, {X: 25, Y: 30}, {X: 100, Y: 36}}
	for _, c := range []struct {
		name   string
		points []geometry.Point
		family family.Family
		want   yardstick
	}{
		{"row of 5", geometry.Row(5, 60, geometry.Point{}, 20), family.Row, yardstick{1, inf, inf, 1, 0, 1, 1, Figures{}}},
		{"circle of 7", circle(7), family.Circle, yardstick{1, 2.4, inf, 4, 7, 2, 0, Figures{}}},
		{"circle of 8", circle(8), family.Circle, yardstick{1, 2.4, inf, 3, 8, 2, 3, Figures{}}},
		{"circle of 9", circle(9), family.Circle, yardstick{1, 2.4, inf, 4, 9, 2, 2, Figures{}}},
		{"circle of 16", circle(16), family.Circle, yardstick{1, 2.4, inf, 3, 16, 3, 7, Figures{}}},
		{"circle of 16, one missing", circle(16)[1:], family.Circle, yardstick{1.5, 3.4, inf, 5, 15, 2, 4, Figures{}}},
		{"circle of 16, two missing", slices.Delete(circle(16)[1:], 4, 5), family.Circle, yardstick{2, 4.4, inf, 5, 14, 2, 6, Figures{}}},
		{"circles", append(geometry.Circle(8, 160, geometry.Point{}, 90, true), geometry.Circle(12, 320, geometry.Point{}, 75, true)...), family.Circles, yardstick{1, 2.4, inf, 4, 0, 3, 6, Figures{}}},
		{"flanges", append(geometry.Circle(4, 90, geometry.Point{X: -150}, 30, true), geometry.Circle(5, 90, geometry.Point{X: 150, Y: 20}, 80, true)...), family.Flanges, yardstick{2, inf, inf, 7, 9, 9, 2, Figures{}}},
		{"pan, deep", pan, family.Perimeter, yardstick{1, 2.4, 0.65, 4, 14, 2, 4, Figures{}}},
		{"square pan", geometry.Rectangle(4, 2, 180, 180, geometry.Point{}), family.Perimeter, yardstick{1, 2.4, 0.65, 4, 12, 2, 3, Figures{}}},
		{"flat oval", ovalOf11, family.Curve, yardstick{1, 2.4, 0.65, 4, 11, 2, 3, Figures{}}},
		{"strewn", free, family.Of(free).Family, yardstick{1, 2.4, 0.65, 4, 12, 2, 3, Figures{}}},
	} {
		w := listed(c.points)
		got := w.yardstick()
		if w.seen.Family == family.Free {
			c.want.neighbours = 4 // 0.4 of 12
		}
		if !w.deep(1.35) {
			c.want.outwards = inf
		}
		got.own = Figures{}
		if w.seen.Family != c.family || got != c.want {
			t.Errorf("%s, a %s: %+v, want %+v", c.name, w.seen.Family, got, c.want)
		}
	}
	for n, want := range map[int]int{1: 1, 3: 3, 4: 1, 5: 2, 8: 2, 11: 2, 15: 2, 16: 3, 20: 3, 21: 4, 26: 5} {
		if got := fewNeighbours(n); got != want {
			t.Errorf("neighbours of %d: %d, want %d", n, got, want)
		}
	}
	w := listed(ovalOf11)
	for times, want := range map[float64]bool{2: true, 2.35: true, 2.4: false} { // 150 to 63.1 mm
		if got := w.deep(times); got != want {
			t.Errorf("%g times: %v", times, got)
		}
	}
}
