package judge_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/sequence/judge"
)

// head is the part for most tables below: M1 to M5 at the top, M6 to M10 at the
// bottom.
func head() []geometry.Point { return geometry.Grid(5, 2, 95, 90, geometry.Point{X: 12, Y: -7}) }

// Common practice, no source: what an instructor marks in an order. The figures
// follow from the places by first principles.
func TestFindings(t *testing.T) {
	t.Parallel()
	row := geometry.Row(5, 60, geometry.Point{X: 3, Y: 4}, 0)
	circle := geometry.Circle(8, 240, geometry.Point{X: 12, Y: -5}, 90, true)
	tests := []struct {
		name    string
		points  []geometry.Point
		order   string
		verdict judge.Verdict
		want    []string
	}{
		{"spiral of a head", head(), "M3 M8 M9 M4 M2 M7 M10 M5 M1 M6", judge.Sound, []string{}},
		{"cross of a head", head(), "M3 M8 M4 M7 M2 M9 M5 M6 M1 M10", judge.Sound, []string{}},
		{"side by side", head(), "M3 M8 M2 M7 M4 M9 M1 M6 M5 M10", judge.Sound, []string{}},
		{"begun one place beside the middle", head(), "M4 M9 M3 M8 M2 M7 M5 M10 M1 M6", judge.Departs,
			[]string{"middle departs [1]", "outwards departs [3 4]"}},
		{"one inner bolt forgotten till later", head(), "M3 M8 M9 M4 M2 M10 M7 M5 M6 M1", judge.Remarks,
			[]string{"outwards remark [7]"}},
		{"left half first", head(), "M3 M8 M2 M7 M1 M6 M4 M9 M5 M10", judge.Departs,
			[]string{"outwards departs [7 8]", "one side remark [2 3 4 5 6]", "balance remark [6]"}},
		{"row from the middle", row, "M3 M2 M4 M1 M5", judge.Sound, []string{}},
		{"row from end to end", row, "M1 M2 M3 M4 M5", judge.Departs,
			[]string{"middle departs [1]", "outwards departs [2 3 4]", "neighbours departs [2 3 4 5]"}},
		{"crosswise", circle, "M1 M5 M3 M7 M2 M6 M4 M8", judge.Sound, []string{}},
		{"once round", circle, "M1 M2 M3 M4 M5 M6 M7 M8", judge.Departs,
			[]string{"one side remark [1 2 3 4]", "neighbours departs [2 3 4 5 6 7 8]", "across departs [2 3 4 5 6 7 8]", "balance departs [4]"}},
		{"every other one round", circle, "M1 M3 M5 M7 M2 M4 M6 M8", judge.Sound, []string{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := listed(tt.points, tt.order)
			wantVerdict(t, tt.name, r, tt.verdict)
			if diff := cmp.Diff(tt.want, words(r)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// First principles: once around a circle of n, the unit vectors of half the
// bolts add up to 1/sin(π/n), those of m bolts to sin(mπ/n)/sin(π/n), and that
// half is the longest run on one side.
func TestFiguresOnceRound(t *testing.T) {
	t.Parallel()
	for n := 6; n <= 40; n += 2 {
		r := judged(geometry.Circle(n, 240, geometry.Point{X: 5, Y: -3}, 13, false), inOrder(n))
		f := r.Groups[0].Order
		if want := 1 / math.Sin(math.Pi/float64(n)); math.Abs(f.Pull-want) > 1e-9 || f.PullStep != n/2 {
			t.Errorf("circle of %d: pull %g after step %d, want %g after %d", n, f.Pull, f.PullStep, want, n/2)
		}
		m := float64((n + 2) / 3) // the bolts in the first third
		if want := math.Sin(m*math.Pi/float64(n)) / math.Sin(math.Pi/float64(n)); math.Abs(f.PullEarly-want) > 1e-9 {
			t.Errorf("circle of %d: early pull %g, want %g", n, f.PullEarly, want)
		}
		if f.Run != n/2 || f.Neighbours != n-1 {
			t.Errorf("circle of %d: run of %d, %d neighbours", n, f.Run, f.Neighbours)
		}
		if want := float64(n-1) * 240 * math.Sin(math.Pi/float64(n)); math.Abs(r.TravelMm-want) > 1e-6 {
			t.Errorf("circle of %d: the wrench travels %g mm, want %g", n, r.TravelMm, want)
		}
	}
}

// First principles, on the head: the vectors to M1 M2 M6 M7 M3 add up to 2·190
// + 2·95 mm to the left and 45 mm up, divided by the distance to the corner.
// The first third ends with the fourth, before M3. The same five are on one
// side. M2, M7, M3, M8, M4 and M9 are further in than an earlier one. The steps
// M1–M2, M6–M7, M3–M8, M4–M9 and M5–M10 go to a neighbour.
func TestFiguresOfAHead(t *testing.T) {
	t.Parallel()
	f := listed(head(), "M1 M2 M6 M7 M3 M8 M4 M9 M5 M10").Groups[0].Order
	want := judge.Figures{Pull: math.Hypot(2*190+2*95, 45) / math.Hypot(190, 45), PullEarly: (2*190 + 2*95) / math.Hypot(190, 45), PullStep: 5, Run: 5, Inwards: 6, Neighbours: 5}
	f.TravelMm, f.Saddle = 0, 0 // covered by other tests
	if diff := cmp.Diff(want, f, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })); diff != "" {
		t.Error(diff)
	}
}

// First principles: an incomplete list is a fault, and the rules are not
// applied.
func TestNotWhole(t *testing.T) {
	t.Parallel()
	nearest := func(name string, ids []string) string {
		if name == "M33" && len(ids) > 0 {
			return ids[0]
		}
		return ""
	}
	tests := []struct {
		order string
		want  []string
		names []string
	}{
		{"M3 M8 M9 M4 M2 M7 M10 M5 M1", []string{"missing fault []"}, []string{"M6"}},
		{"M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 M3", []string{"twice fault [1 11]"}, []string{"M3"}},
		{"M33 M8 M9 M4 M2 M7 M10 M5 M1 M6", []string{"unknown fault [1]", "missing fault []"}, []string{"M33", "M3"}},
		{"M1 M2 M3 M4 M5 M6 M7 M8 M9 M10 m1", []string{"unknown fault [11]"}, []string{"m1"}},
		{"", []string{"missing fault []"}, []string{"M1"}},
	}
	for _, tt := range tests {
		for _, side := range judge.Sides {
			r := judge.Order(judge.Input{Joint: jointOf(head()), Order: strings.Fields(tt.order), Nearest: nearest, Side: side})
			wantVerdict(t, tt.order, r, judge.NotWhole)
			if diff := cmp.Diff(tt.want, words(r)); diff != "" {
				t.Errorf("%s, %s:\n%s", tt.order, side, diff)
			}
			for k, f := range r.Findings {
				if f.IDs[0] != tt.names[k] {
					t.Errorf("%s: finding %d is about %v, want %s", tt.order, k, f.IDs, tt.names[k])
				}
			}
			if r.Verdict.Right() || len(r.Groups) > 0 {
				t.Errorf("%s: right %v, with figures of %d groups", tt.order, r.Verdict.Right(), len(r.Groups))
			}
		}
	}
	r := judge.Order(judge.Input{Joint: jointOf(head()), Order: strings.Fields(tests[2].order), Nearest: nearest})
	if diff := cmp.Diff([]string{"M3"}, r.Findings[0].Against); diff != "" {
		t.Errorf("what M33 may mean:\n%s", diff)
	}
}

// bolted is the head with two small bolts below it.
func bolted() geometry.Joint {
	j := jointOf(head())
	for k, x := range []float64{-90, 114} {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: []string{"F1", "F2"}[k], Kind: "side", At: geometry.Point{X: x, Y: -97}})
	}
	return j
}

// Common practice, no source: the small outer bolts go on last and come off
// first. If the sizes are equal, mixing the groups matters little.
func TestGroupOrder(t *testing.T) {
	t.Parallel()
	main, sides := "M3 M8 M9 M4 M2 M7 M10 M5 M1 M6", "F1 F2"
	backwards := "M6 M1 M5 M10 M7 M2 M4 M9 M8 M3"
	groups := func(mainMm, sideMm float64) []judge.Group {
		return []judge.Group{{Kinds: []string{"main"}, MajorMm: mainMm}, {Kinds: []string{"side"}, MajorMm: sideMm}}
	}
	tests := []struct {
		name   string
		groups []judge.Group
		side   judge.Side
		order  string
		want   []string
	}{
		{"main first", groups(10, 8), judge.Tighten, main + " " + sides, []string{}},
		{"small first", groups(10, 8), judge.Tighten, sides + " " + main, []string{"groups departs [1 2]"}},
		{"one small one early", groups(10, 8), judge.Tighten, "M3 M8 F2 M9 M4 M2 M7 M10 M5 M1 M6 F1", []string{"groups departs [3]"}},
		{"mixed, of one size", groups(10, 10), judge.Tighten, "M3 M8 F2 M9 M4 M2 M7 M10 M5 M1 M6 F1", []string{"groups remark [3]"}},
		{"mixed, sizes unknown", groups(0, 0), judge.Tighten, sides + " " + main, []string{"groups departs [1 2]"}},
		{"small off first", groups(10, 8), judge.Loosen, "F2 F1 " + backwards, []string{}},
		{"small off last", groups(10, 8), judge.Loosen, backwards + " F2 F1", []string{"groups departs [11 12]"}},
	}
	for _, tt := range tests {
		r := judge.Order(judge.Input{Joint: bolted(), Groups: tt.groups, Side: tt.side, Order: strings.Fields(tt.order)})
		if diff := cmp.Diff(tt.want, words(r)); diff != "" {
			t.Errorf("%s:\n%s", tt.name, diff)
		}
	}
}

// First principles: neighbours are not in succession if another fastener comes
// between them.
func TestNeighboursWithAnotherBetween(t *testing.T) {
	t.Parallel()
	r := judge.Order(judge.Input{Joint: bolted(), Groups: []judge.Group{{Kinds: []string{"main"}}, {Kinds: []string{"side"}}},
		Order: strings.Fields("M3 F1 M8 F2 M9 M4 M2 M7 M10 M5 M1 M6")})
	// M9–M4, M2–M7, M10–M5 and M1–M6 remain; F1 is between M3 and M8, and F2
	// between M8 and M9.
	if got := r.Groups[0].Order.Neighbours; got != 4 {
		t.Errorf("%d steps to a neighbour, want 4", got)
	}
}

// Common practice, no source: tightened by columns, a long cover is always
// worked outwards, but one end is finished before the other.
func TestLongCoverByColumns(t *testing.T) {
	t.Parallel()
	points := geometry.Rectangle(5, 2, 304, 164, geometry.Point{X: 31, Y: -17})
	r := listed(points, "M3 M10 M4 M9 M2 M11 M6 M7 M5 M8 M14 M13 M1 M12")
	if has(r, judge.Outwards) || !has(r, judge.Balance) || r.Verdict != judge.Departs {
		t.Errorf("%q: %q", r.Verdict, words(r))
	}
}

// First principles: a kind that no group names is a separate group at the end.
// Without groups all are judged as one.
func TestGroupsThatAreNotNamed(t *testing.T) {
	t.Parallel()
	order := strings.Fields("M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F1 F2")
	r := judge.Order(judge.Input{Joint: bolted(), Groups: []judge.Group{{Kinds: []string{"main"}}}, Order: order})
	if len(r.Groups) != 2 || r.Groups[1].Kinds[0] != "side" || r.Verdict != judge.Sound {
		t.Errorf("%d groups, %q: %q", len(r.Groups), r.Verdict, words(r))
	}
	if r = judge.Order(judge.Input{Joint: bolted(), Order: order}); len(r.Groups) != 1 || len(r.Groups[0].IDs) != 12 {
		t.Errorf("without groups there are %d", len(r.Groups))
	}
}

// caps has five caps with two bolts each, C1 and C6 on the first. No spring
// pushes on the fourth.
func caps() geometry.Joint {
	j := jointOf(geometry.Grid(5, 2, 95, 44, geometry.Point{X: 7, Y: 3}))
	for k := range 5 {
		of := []string{j.Fasteners[k].ID, j.Fasteners[k+5].ID}
		j.Clusters = append(j.Clusters, geometry.Cluster{Name: of[0], Of: of, Unloaded: k == 3})
	}
	return j
}

// Common practice, no source: the bolts of a cap are tightened together, the
// unloaded cap before the others, and these from the middle.
func TestClusters(t *testing.T) {
	t.Parallel()
	tests := []struct {
		name  string
		order string
		want  []string
	}{
		{"as it should be", "M4 M9 M3 M8 M2 M7 M5 M10 M1 M6", []string{}},
		{"the free cap late", "M3 M8 M2 M7 M4 M9 M5 M10 M1 M6", []string{"unloaded departs [5 6]"}},
		{"one cap separated", "M4 M9 M3 M8 M2 M5 M7 M10 M1 M6", []string{"cluster departs [5 7]", "cluster departs [6 8]"}},
		{"from the end", "M4 M9 M1 M6 M2 M7 M3 M8 M5 M10", []string{"middle departs [3]", "outwards departs [5 7]", "neighbours remark [5 7]"}},
	}
	for _, tt := range tests {
		r := judge.Order(judge.Input{Joint: caps(), Order: strings.Fields(tt.order)})
		if diff := cmp.Diff(tt.want, words(r)); diff != "" {
			t.Errorf("%s:\n%s", tt.name, diff)
		}
		back := judge.Order(judge.Input{Joint: caps(), Side: judge.Loosen, Order: idsBackwards(tt.order)})
		if back.Verdict != r.Verdict || len(back.Findings) != len(r.Findings) {
			t.Errorf("%s, loosened backwards: %q", tt.name, words(back))
		}
	}
}

// What the file says about unloaded caps overrides common practice.
func TestUnloadedFirstOff(t *testing.T) {
	t.Parallel()
	j := caps()
	j.UnloadedFirstOff = true
	for order, want := range map[string][]string{
		"M3 M8 M2 M7 M5 M10 M1 M6 M4 M9": {},
		"M4 M9 M3 M8 M2 M7 M5 M10 M1 M6": {"unloaded departs [1 2]"},
	} {
		r := judge.Order(judge.Input{Joint: j, Order: strings.Fields(order)})
		if diff := cmp.Diff(want, words(r)); diff != "" {
			t.Errorf("%s:\n%s", order, diff)
		}
	}
}

// If all caps are unloaded, they are judged as usual.
func TestAllUnloaded(t *testing.T) {
	t.Parallel()
	j := caps()
	for k := range j.Clusters {
		j.Clusters[k].Unloaded = true
	}
	r := judge.Order(judge.Input{Joint: j, Order: strings.Fields("M1 M6 M2 M7 M3 M8 M4 M9 M5 M10")})
	if r.Verdict == judge.Sound {
		t.Errorf("caps from one end to the other are %s: %q", r.Verdict, words(r))
	}
}

func idsBackwards(order string) []string {
	names := strings.Fields(order)
	for a, b := 0, len(names)-1; a < b; a, b = a+1, b-1 {
		names[a], names[b] = names[b], names[a]
	}
	return names
}

// First principles: steps of a loosening order count from its own start. M3, in
// the middle, comes off first here, at step 1.
func TestLooseningSteps(t *testing.T) {
	t.Parallel()
	r := judge.Order(judge.Input{Joint: jointOf(head()), Side: judge.Loosen, Order: strings.Fields("M3 M6 M1 M5 M10 M7 M2 M4 M9 M8")})
	if diff := cmp.Diff([]string{"outwards departs [1]"}, words(r)); diff == "" {
		t.Fatal("one step against the way cannot be much")
	}
	if diff := cmp.Diff([]string{"outwards remark [1]"}, words(r)); diff != "" {
		t.Fatal(diff)
	}
	f := r.Findings[0]
	if f.IDs[0] != "M3" || f.AgainstSteps[0] <= f.Steps[0] || f.Side != judge.Loosen {
		t.Errorf("got %+v", f)
	}
}

// A maker's own order is never called wrong.
func TestMakersOrderIsDescribed(t *testing.T) {
	t.Parallel()
	in := judge.Input{Joint: jointOf(head()), Makers: true, Order: strings.Fields("M1 M2 M3 M4 M5 M6 M7 M8 M9 M10")}
	r := judge.Order(in)
	wantVerdict(t, "the maker's", r, judge.Described)
	if len(r.Findings) < 3 || !r.Verdict.Right() {
		t.Errorf("%q", words(r))
	}
	for _, f := range r.Findings {
		if f.Severity != judge.Description {
			t.Errorf("%s is called %s", f.Rule, f.Severity)
		}
	}
	in.Order = in.Order[1:]
	wantVerdict(t, "a maker's list with one left out", judge.Order(in), judge.NotWhole)
}

// First principles: with one or two fasteners any order is right; with none the
// order is complete.
func TestFewFasteners(t *testing.T) {
	t.Parallel()
	for n := range 3 {
		points := geometry.Row(n, 50, geometry.Point{X: 3}, 30)
		wantVerdict(t, "few", judged(points, inOrder(n)), judge.Sound)
		wantVerdict(t, "few, backwards", judged(points, reversed(inOrder(n))), judge.Sound)
	}
}

// Two fasteners at the same place are a fault of the file, but must not cause a
// failure.
func TestPlacesThatCoincide(t *testing.T) {
	t.Parallel()
	points := append(head(), head()[0], head()[0])
	if r := judged(points, inOrder(len(points))); r.Verdict != judge.Departs || math.IsNaN(r.Groups[0].Order.Pull) {
		t.Errorf("%q", r.Verdict)
	}
	same := make([]geometry.Point, 4)
	if r := judged(same, inOrder(4)); math.IsNaN(r.Groups[0].Order.Pull) {
		t.Errorf("%+v", r)
	}
}
