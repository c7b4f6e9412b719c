package judge

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

func close(a, b float64) bool { return math.Abs(a-b) < 1e-9 }

// Directions are on one side if they are within 180° less 3.7°, measured from
// the last. A place at the middle ends a run (first principles).
func TestRuns(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		deg  []float64
		want bool
	}{
		{[]float64{10}, true}, {[]float64{0, 176}, true}, {[]float64{0, 176.5}, false}, {[]float64{350, 166}, true}, {[]float64{350, 166.5}, false},
		{[]float64{10, 200}, true}, {[]float64{10, 189}, false}, {[]float64{200, 10}, true}, {[]float64{0, 90, 176}, true}, {[]float64{0, 270, 100}, false}, {[]float64{90, 0, 270}, false},
		{[]float64{100, 280, 10}, false}, {[]float64{95, 275, 5}, false}, {[]float64{90, 300, 10}, true},
	} {
		p := places{deg: c.deg}
		if got := p.oneSide(geometry.Count(len(c.deg))); got != c.want {
			t.Errorf("%v: %v", c.deg, got)
		}
	}
	p := places{deg: []float64{0, 90, 170, 20, 40, 200, 250, 300}, radius: slices.Repeat([]float64{100}, 8), spacing: 100}
	for name, c := range map[string]struct {
		order      []int
		middle     float64 // radius of the fourth
		run, start int
	}{
		"all on one side but the last": {[]int{0, 1, 2, 3}, 100, 4, 0}, "the middle parts it": {[]int{0, 1, 3, 2}, 14.9, 2, 0}, "just out of the middle": {[]int{0, 1, 3, 2}, 15.1, 4, 0},
		"the last ends it": {[]int{2, 7, 5, 6, 0}, 100, 4, 0}, "later": {[]int{0, 1, 5, 6}, 100, 3, 1},
		"the first of two as long": {[]int{0, 1, 6, 7}, 100, 2, 0},
	} {
		p.radius[3] = c.middle
		var m measured
		m.run(p, c.order)
		if m.Run != c.run || m.runFrom != c.start {
			t.Errorf("%s: %d from %d", name, m.Run, m.runFrom)
		}
	}
}

// Across is 133° or more; or each of the last three is at least 77° from the
// others, by direction or by its number along the circle.
func TestCrosses(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		deg  []float64
		want bool
	}{
		{[]float64{0, 134}, true}, {[]float64{0, 132}, true}, {[]float64{0, 78}, true}, {[]float64{0, 76}, false}, {[]float64{0, 227}, true},
		{[]float64{0, 180, 90}, true}, {[]float64{0, 180, 76}, false}, {[]float64{0, 180, 104}, false}, {[]float64{0, 100, 40}, false}, {[]float64{40, 200, 0, 100}, true},
		{[]float64{60, 200, 0, 100}, true}, {[]float64{95, 0, 210, 90}, true}, {[]float64{300, 90, 20, 100}, false}, {[]float64{10, 20, 15, 150}, true},
	} {
		if got := crossesBy(c.deg, geometry.Count(len(c.deg))); got != c.want {
			t.Errorf("%v: %v, want %v", c.deg, got, c.want)
		}
	}
	p := places{deg: []float64{0, 60}, turn: []float64{0, 180}}
	if !p.crosses([]int{0, 1}) {
		t.Error("across by its turn")
	}
	p = places{turn: []float64{0, 60}, deg: []float64{0, 180}}
	if !p.crosses([]int{0, 1}) {
		t.Error("across by its direction")
	}
	if got := evenly([]float64{10, 300, 20, 40}); !slices.Equal(got, []float64{0, 270, 90, 180}) {
		t.Errorf("turns %v", got)
	}
}

// Neighbours along an edge are the adjacent ones, also from last to first.
// Inside an edge there are none; elsewhere those close enough.
func TestNeighbours(t *testing.T) {
	t.Parallel()
	p := places{along: []onEdge{{0, 0, 5}, {0, 1, 5}, {0, 2, 5}, {0, 4, 5}, {1, 1, 5}, {}, {}}, seen: family.Seen{Edge: []int{0}}, spacing: 10}
	p.Points = slices.Repeat([]geometry.Point{{}}, 7)
	for pair, want := range map[[2]int]bool{{0, 1}: true, {1, 0}: true, {0, 2}: false, {0, 3}: true, {3, 0}: true, {1, 3}: false, {0, 4}: false, {4, 0}: false, {0, 5}: false, {5, 6}: false} {
		if got := p.neighbours(pair[0], pair[1]); got != want {
			t.Errorf("%v: %v", pair, got)
		}
	}
	p = places{along: make([]onEdge, 2), spacing: 10}
	for apart, want := range map[float64]bool{12.9: true, 13.1: false} {
		p.Points = []geometry.Point{{}, {X: apart}}
		if got := p.neighbours(0, 1); got != want {
			t.Errorf("%g mm apart: %v", apart, got)
		}
	}
}

// Further in means a ring further in; on layouts other than grids, rows and
// circles also a quarter of the spacing nearer the middle, and on a long part
// also along it.
func TestInside(t *testing.T) {
	t.Parallel()
	long := []float64{10, 20}
	for _, c := range []struct {
		name          string
		family        family.Family
		columns, rows int
		ring          []int
		radius        []float64
		length        []float64
		want          bool
	}{
		{"same ring", family.Curve, 0, 0, []int{1, 1}, []float64{10, 90}, nil, false},
		{"ring further out", family.Curve, 0, 0, []int{2, 1}, []float64{10, 90}, nil, false},
		{"a quarter nearer", family.Curve, 0, 0, []int{0, 1}, []float64{10, 12.6}, nil, true},
		{"hardly nearer", family.Curve, 0, 0, []int{0, 1}, []float64{10, 12.4}, nil, false},
		{"a grid tells its rings", family.Grid, 4, 4, []int{0, 1}, []float64{10, 10}, nil, true},
		{"a row", family.Row, 5, 1, []int{0, 1}, []float64{10, 10}, nil, true},
		{"circles", family.Circles, 0, 0, []int{0, 1}, []float64{10, 10}, nil, true},
		{"a narrow head, as far along", family.Grid, 5, 3, []int{0, 1}, []float64{10, 90}, []float64{20, 22.4}, false},
		{"a narrow head, further along", family.Grid, 5, 3, []int{0, 1}, []float64{10, 90}, []float64{20, 22.6}, true},
		{"columns of three", family.Grid, 3, 6, []int{0, 1}, []float64{10, 90}, []float64{20, 22.4}, false},
		{"a wide grid, as far along", family.Grid, 5, 4, []int{0, 1}, []float64{10, 90}, []float64{20, 20}, true},
		{"a long edge, as far along", family.Curve, 0, 0, []int{0, 1}, []float64{10, 90}, []float64{20, 22.4}, false},
		{"a long edge, further along", family.Curve, 0, 0, []int{0, 1}, []float64{10, 90}, long, true},
	} {
		p := places{seen: family.Seen{Family: c.family}, ring: c.ring, radius: c.radius, length: c.length, spacing: 10}
		p.Columns, p.Rows = c.columns, c.rows
		if got := p.inside(0, 1); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	p := places{seen: family.Seen{Family: family.Grid}, ring: []int{0, 2, 1, 1, 3}, spacing: 10}
	p.Columns, p.Rows = 4, 4
	var m measured
	m.inwards(p, []int{2, 1, 0, 4, 3})
	if !slices.Equal(m.inward, []int{2, 4}) || !slices.Equal(m.beyond, []int{1, 3}) || m.Inwards != 2 {
		t.Errorf("inwards %v, beyond %v", m.inward, m.beyond)
	}
}

// Places have a length if they are 1.3 times as long as wide: the distances
// from the middle along it.
func TestLengths(t *testing.T) {
	t.Parallel()
	for width, want := range map[float64]bool{100: true, 153: true, 155: false, 200: false} {
		p := places{middle: geometry.Point{X: 100, Y: width / 2}}
		p.Points = []geometry.Point{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 0, Y: width}, {X: 200, Y: width}, {X: 130, Y: width / 2}}
		if got := p.lengths(); (got != nil) != want {
			t.Errorf("%g wide: %v", width, got)
		} else if want && (!close(got[0], 100) || !close(got[4], 30)) {
			t.Errorf("%g wide: %v", width, got)
		}
	}
}

// The sides of an uneven row follow its numbers; the middle one of an odd
// number has none.
func TestSidesOfARow(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		x    []float64
		ring []int
		deg  []float64
	}{
		{[]float64{0, 10, 200, 300, 420}, []int{2, 1, 0, 1, 2}, []float64{180, 180, 0, 0, 0}},
		{[]float64{300, 0, 200, 10}, []int{1, 1, 0, 0}, []float64{0, 180, 0, 180}},
	} {
		points := geometry.Mapped(c.x, func(x float64) geometry.Point { return geometry.Point{X: x} })
		p := newPlaces(points)
		if !slices.Equal(p.ring, c.ring) || !slices.EqualFunc(p.deg, c.deg, close) {
			t.Errorf("%v: rings %v, directions %v", c.x, p.ring, p.deg)
		}
		if len(c.x) == 5 && !p.central(2) || p.central(1) {
			t.Errorf("%v: distances from the middle %v", c.x, p.radius)
		}
	}
}

// The pull of half a circle of n is 1/sin(π/n) (first principles); ring by ring
// around a head of two rows and one of three.
func TestRoundsOfRings(t *testing.T) {
	t.Parallel()
	for _, n := range []int{6, 8, 12} {
		w := listed(geometry.Circle(n, 200, geometry.Point{X: 3, Y: 8}, 10, true))
		if got, want := w.worstArc(inRound(geometry.Count(n), w.deg)), 1/math.Sin(math.Pi/float64(n)); !close(got, want) {
			t.Errorf("circle of %d: %g, want %g", n, got, want)
		}
		if got := w.longestRun(nil, geometry.Count(n)); got != n/2 {
			t.Errorf("circle of %d: a run of %d", n, got)
		}
		// Half of an inner circle, and the rest of that side of the outer.
		both := listed(slices.Concat(geometry.Circle(n, 200, geometry.Point{}, 10, true), geometry.Circle(n, 400, geometry.Point{}, 10+180/float64(n), true)))
		if got := both.longestRun(geometry.Count(n), geometry.Count(2 * n)[n:]); got != n/2+1 {
			t.Errorf("two circles of %d: a run of %d", n, got)
		}
	}
	// Columns at 0, ±95 and ±190 mm, rows at ±45 mm. Of the outer ring of four,
	// the two at one end pull by 2·190 mm, divided by the distance to the
	// corner.
	w := listed(headOf10)
	pull, run, neighbours := w.roundRings()
	if want := 2 * 190 / math.Hypot(190, 45); !close(pull, want) {
		t.Errorf("pull %g, want %g", pull, want)
	}
	// Rings of 2, 4 and 4: one step between the two, two on the sides of each
	// of the others, and one to each next ring.
	if neighbours != 1+1+2+1+2 {
		t.Errorf("neighbours %d", neighbours)
	}
	if run != 4 { // both at one end, of both rings
		t.Errorf("run %d", run)
	}
}

// First principles: a figure is for the worst moment, and the early one for the
// first third of the steps.
func TestWeighing(t *testing.T) {
	t.Parallel()
	w := listed(geometry.Circle(6, 200, geometry.Point{}, 90, true))
	m := w.measure([]int{0, 3, 1, 2, 4, 5})
	if !close(m.Pull, math.Sqrt(3)) || m.pullAt != 3 || !close(m.PullEarly, 1) || m.Neighbours != 2 || !slices.Equal(m.adjacent, []int{3, 5}) {
		t.Errorf("%+v", m)
	}
	if want := 200 + 100*math.Sqrt(3) + 100 + 100*math.Sqrt(3) + 100; !close(m.TravelMm, want) && math.Abs(m.TravelMm-want) > 1e-6 {
		t.Errorf("travel %g, want %g", m.TravelMm, want)
	}
	if m.Saddle <= 0 || m.saddleAt != 1 {
		t.Errorf("bent by %g after %d", m.Saddle, m.saddleAt)
	}
}

// Four crosswise, a quarter apart, and then once around all others (PCC-1,
// appendix F, value from memory).
func TestFourThenRound(t *testing.T) {
	t.Parallel()
	circle := func(n int) *work { return listed(geometry.Circle(n, 300, geometry.Point{}, 0, false)) }
	for _, c := range []struct {
		name  string
		w     *work
		order []int
		want  bool
	}{
		{"eight", circle(8), []int{0, 4, 2, 6, 1, 3, 5, 7}, true}, {"eight, the other way", circle(8), []int{0, 4, 2, 6, 7, 5, 3, 1}, true},
		{"eight, from elsewhere", circle(8), []int{0, 4, 6, 2, 5, 7, 1, 3}, true}, {"back and forth", circle(8), []int{0, 4, 2, 6, 1, 5, 3, 7}, false},
		{"not across", circle(8), []int{0, 2, 4, 6, 1, 3, 5, 7}, false}, {"second pair not across", circle(8), []int{0, 4, 2, 3, 1, 5, 6, 7}, false},
		{"twelve, a sixth apart", circle(12), []int{0, 6, 2, 8, 1, 3, 4, 5, 7, 9, 10, 11}, true}, {"twelve, beside", circle(12), []int{0, 6, 1, 7, 2, 3, 4, 5, 8, 9, 10, 11}, false},
		{"six", circle(6), []int{0, 3, 1, 4, 2, 5}, true}, {"five", circle(5), []int{0, 2, 1, 3, 4}, false}, {"not all", circle(8), []int{0, 4, 2, 6, 1}, false},
		{"an oval", listed(ovalOf11), []int{0, 5, 3, 8, 1, 2, 4, 6, 7, 9, 10}, true}, {"rows have no round", listed(headOf10), []int{0, 9, 4, 5, 1, 2, 3, 6, 7, 8}, false},
	} {
		if got := c.w.fourThenRound(c.order); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	inner := listed(append(geometry.Rectangle(5, 2, 300, 160, geometry.Point{}), geometry.Point{X: 10, Y: 3}))
	if inner.seen.Family != family.Perimeter || inner.alongEdge() != nil {
		t.Errorf("a %s with one inside goes round %v", inner.seen.Family, inner.alongEdge())
	}
	w := &work{}
	for _, c := range []struct {
		n    int
		four []int
		want bool
	}{
		{16, []int{0, 8, 4, 12}, true}, {16, []int{0, 7, 4, 12}, true}, {16, []int{0, 6, 4, 12}, false}, {16, []int{0, 8, 4, 10}, false}, {16, []int{0, 8, 4, 11}, true},
		{16, []int{0, 8, 5, 13}, true}, {16, []int{0, 8, 6, 14}, false}, {16, []int{0, 8, 3, 11}, true}, {16, []int{0, 8, 2, 10}, false}, {16, []int{12, 4, 0, 8}, true},
		{16, []int{0, 7, 5, 13}, false}, {24, []int{0, 10, 6, 18}, false}, {24, []int{0, 11, 6, 18}, true}, {24, []int{0, 12, 6, 16}, false}, {18, []int{0, 9, 5, 14}, true}, {18, []int{0, 9, 3, 12}, false}, {18, []int{0, 10, 4, 13}, true}, {16, []int{0, 9, 4, 12}, true}, {16, []int{0, 9, 3, 11}, false},
	} {
		if got := w.quarters(c.four, geometry.Count(c.n)); got != c.want {
			t.Errorf("quarters %v of %d: %v", c.four, c.n, got)
		}
	}
}

// Groups follow each other; within one thread size they may be mixed.
func TestGroupOrder(t *testing.T) {
	t.Parallel()
	joint := func(kinds ...string) geometry.Joint {
		var j geometry.Joint
		for i, k := range kinds {
			j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: string(rune('A' + i)), Kind: k})
		}
		return j
	}
	j := joint("m", "m", "m", "s", "s", "x")
	for _, c := range []struct {
		name           string
		small          float64
		order          []int
		want           Severity
		steps, against []int
	}{
		{"one after the other", 8, []int{0, 1, 2, 3, 4, 5}, none, nil, nil},
		{"one too early", 8, []int{0, 1, 3, 2, 4, 5}, Departure, []int{3}, []int{4}},
		{"of one size", 10, []int{0, 1, 3, 2, 4, 5}, Remark, []int{3}, []int{4}},
		{"of no known size", 0, []int{0, 1, 3, 2, 4, 5}, Departure, []int{3}, []int{4}},
		{"two too early", 8, []int{0, 3, 1, 4, 2, 5}, Departure, []int{2, 4}, []int{3, 5}},
		{"the last group among the first", 8, []int{5, 0, 1, 2, 3, 4}, Departure, []int{1}, []int{2, 3, 4, 5, 6}},
	} {
		groups := []Group{{Kinds: []string{"m"}, MajorMm: 10}, {Kinds: []string{"s"}, MajorMm: c.small}, {Kinds: []string{"x"}, MajorMm: 6}}
		got := groupOrder(j, groups, c.order)
		if c.want == none {
			if len(got) > 0 {
				t.Errorf("%s: %+v", c.name, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Severity != c.want || !slices.Equal(got[0].Steps, c.steps) || !slices.Equal(got[0].AgainstSteps, c.against) || got[0].Figure != float64(len(c.steps)) || len(got[0].Against) != len(c.against) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	both := groupOrder(joint("m", "s"), []Group{{Kinds: []string{"m"}}, {Kinds: []string{"s"}}}, []int{1, 0})
	if len(both) != 1 || both[0].Severity != Departure {
		t.Errorf("neither size is known: %+v", both)
	}
}

// A cluster is tightened together, and an unloaded one before all others.
func TestClusters(t *testing.T) {
	t.Parallel()
	w := &work{members: []int{0, 2, 1, 3, 4, 5}, step: []int{1, 3, 2, 4, 5, 6}, units: [][]int{{0, 1}, {2}, {3}, {4, 5}}, order: []int{0, 1, 2, 3}}
	for _, id := range []string{"A", "B", "C", "D", "E", "F"} {
		w.joint.Fasteners = append(w.joint.Fasteners, geometry.Fastener{ID: id})
	}
	got := w.clusterFindings()
	if len(got) != 1 || got[0].Rule != Together || !slices.Equal(got[0].Steps, []int{1, 3}) || !slices.Equal(got[0].IDs, []string{"A", "B"}) || got[0].Figure != 2 {
		t.Errorf("parted: %+v", got)
	}
	w.members, w.step = geometry.Count(6), []int{1, 2, 3, 4, 5, 6}
	if got := w.clusterFindings(); len(got) != 0 {
		t.Errorf("whole: %+v", got)
	}
	w.units, w.order = [][]int{{0}, {1}, {2, 3}}, []int{0, 1, 2}
	for _, c := range []struct {
		free     int
		firstOff bool
		against  string
	}{{4, false, "A"}, {4, true, ""}} {
		w.free, w.joint.UnloadedFirstOff = [][]int{{c.free, c.free + 1}}, c.firstOff
		got := w.clusterFindings()
		if (len(got) == 1) != (c.against != "") || len(got) == 1 && (got[0].Against[0] != c.against || got[0].Rule != Unloaded || !slices.Equal(got[0].Steps, []int{5, 6})) {
			t.Errorf("unloaded last, loosened first %v: %+v", c.firstOff, got)
		}
	}
	w.free, w.units, w.order = [][]int{{0, 1}}, [][]int{{2}, {3}, {4, 5}}, []int{0, 1, 2}
	for firstOff, against := range map[bool]string{false: "", true: "E"} {
		w.joint.UnloadedFirstOff = firstOff
		got := w.clusterFindings()
		if (len(got) == 1) != (against != "") || len(got) == 1 && (got[0].Against[0] != against || !slices.Equal(got[0].AgainstSteps, []int{5})) {
			t.Errorf("unloaded first, loosened first %v: %+v", firstOff, got)
		}
	}
}

// A unit has the name of its first fastener in the order, and the place of its
// centre.
func TestUnitsOfAnOrder(t *testing.T) {
	t.Parallel()
	j := listed(geometry.Row(6, 50, geometry.Point{}, 0)).joint
	j.Clusters = []geometry.Cluster{{Name: "one", Of: []string{"A0", "A1"}}, {Name: "two", Of: []string{"A4", "A5"}}}
	w := newWork(j, []int{2, 3, 1, 0, 4, 5}, []int{4, 3, 1, 2, 5, 6})
	steps, names := w.at(0, 1, 2, 3)
	if !slices.Equal(names, []string{"A2", "A3", "A1", "A4"}) || !slices.Equal(steps, []int{1, 2, 3, 5}) {
		t.Errorf("units %v at %v", names, steps)
	}
	if w.stepAfter(2) != 4 || w.given[0] != (geometry.Point{X: 25}) || !w.follows(3) || w.follows(1) != true {
		t.Errorf("after the third: %d, the first lies at %v", w.stepAfter(2), w.given[0])
	}
}

// What was found while tightening is converted to steps of loosening; the
// maker's order is described whatever is found; a note does not affect the
// verdict.
func TestSettle(t *testing.T) {
	t.Parallel()
	of := func(s ...Severity) (all []Finding) {
		for _, severity := range s {
			all = append(all, Finding{Rule: Across, Severity: severity, Steps: []int{2, 5}, IDs: []string{"B", "E"}, Against: []string{"A", "D"}, AgainstSteps: []int{1, 4}})
		}
		return all
	}
	for _, c := range []struct {
		findings []Finding
		makers   bool
		want     Verdict
	}{
		{nil, false, Sound}, {of(Description), false, Sound}, {of(Remark), false, Remarks}, {of(Remark, Remark, Remark), false, Remarks}, {of(Departure), false, Departs},
		{of(Departure, Remark), false, Departs}, {of(Remark, Departure), false, Departs}, {of(Fault), false, NotWhole}, {of(Fault), true, NotWhole},
		{nil, true, Described}, {of(Departure), true, Described},
	} {
		r := Report{Side: Tighten, Makers: c.makers, Findings: c.findings}
		r.settle(6)
		if r.Verdict != c.want || c.makers && c.want == Described && len(r.Findings) > 0 && r.Findings[0].Severity != Description {
			t.Errorf("%v, the maker's %v: %q, want %q", c.findings, c.makers, r.Verdict, c.want)
		}
	}
	for verdict, want := range map[Verdict]bool{Sound: true, Remarks: true, Described: true, Departs: false, NotWhole: false} {
		if verdict.Right() != want {
			t.Errorf("%q is right: %v", verdict, verdict.Right())
		}
	}
	r := Report{Side: Loosen, Findings: append(of(Remark), Finding{Rule: Balance, Steps: []int{2}, IDs: []string{"B"}}, Finding{Rule: Middle, Steps: []int{1}, IDs: []string{"A"}, Against: []string{"C", "D"}}, Finding{Rule: Saddle, Steps: []int{5}})}
	r.Groups = []GroupReport{{IDs: []string{"A", "B"}, Order: Figures{PullStep: 2}}, {IDs: []string{"C"}}}
	r.settle(6)
	f := r.Findings[0]
	if !slices.Equal(f.Steps, []int{2, 5}) || !slices.Equal(f.IDs, []string{"E", "B"}) || !slices.Equal(f.AgainstSteps, []int{3, 6}) || !slices.Equal(f.Against, []string{"D", "A"}) || f.Side != Loosen {
		t.Errorf("loosening: %+v", f)
	}
	if r.Findings[1].Steps[0] != 4 || r.Findings[3].Steps[0] != 1 || r.Findings[2].Steps[0] != 6 || !slices.Equal(r.Findings[2].Against, []string{"C", "D"}) {
		t.Errorf("loosening: %+v", r.Findings[1:])
	}
	if r.Groups[0].IDs[0] != "C" || !slices.Equal(r.Groups[1].IDs, []string{"B", "A"}) || r.Groups[1].Order.PullStep != 4 {
		t.Errorf("groups: %+v", r.Groups)
	}
}

// The travel is noted from a quarter more than in drawdown's own order, but not
// for two fasteners (limits of the design).
func TestTravelNote(t *testing.T) {
	t.Parallel()
	w := listed(headOf10)
	own, random := w.ownOrder(geometry.Count(10)), rand.New(rand.NewPCG(5, 2))
	var below, above int // orders near the limit, on both sides
	for range 400 {
		order := slices.Clone(own)
		for range random.IntN(5) {
			i, k := random.IntN(10), random.IntN(10)
			order[i], order[k] = order[k], order[i]
		}
		r := Order(Input{Joint: w.joint, Order: w.joint.IDs(order)})
		ratio := travel(w.joint, order) / travel(w.joint, own)
		if !close(r.TravelMm, travel(w.joint, order)) || !close(r.OwnTravelMm, travel(w.joint, own)) {
			t.Fatalf("travels %g and %g", r.TravelMm, r.OwnTravelMm)
		}
		if noted := slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Rule == Travel && f.Severity == Description }); noted != (ratio > 1.25) {
			t.Errorf("%.3f times as far: noted %v", ratio, noted)
		}
		if ratio > 1.2 && ratio <= 1.25 {
			below++
		} else if ratio > 1.25 && ratio < 1.3 {
			above++
		}
	}
	if below == 0 || above == 0 {
		t.Errorf("%d orders just below the limit, %d just above", below, above)
	}
	two := listed(headOf10[:2])
	two.joint.Fasteners[1].At = two.joint.Fasteners[0].At // no travel at all in our own order
	if r := Order(Input{Joint: two.joint, Order: []string{"A1", "A0"}}); len(r.Findings) > 0 {
		t.Errorf("two fasteners: %+v", r.Findings)
	}
}
