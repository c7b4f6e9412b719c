package judge_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	catalogue "drawdown/render/words"
	"drawdown/sequence/judge"
)

// Pinned from our own output: the wording of findings, for both sides of the
// work.
func TestFindingsAreSaid(t *testing.T) {
	t.Parallel()
	said := map[finding.Code]bool{}
	try := func(name string, in judge.Input, want ...string) {
		t.Helper()
		r := judge.Order(in)
		var all []string
		for _, f := range r.Findings {
			said[f.Found().Code] = true
			all = append(all, catalogue.English().Say(f.Found()))
		}
		text := strings.Join(all, "\n")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s does not say %q:\n%s", name, w, text)
			}
		}
	}
	head := jointOf(head())
	raster := "M1 M2 M3 M4 M5 M6 M7 M8 M9 M10"
	try("a raster", judge.Input{Joint: head, Order: strings.Fields(raster)},
		"begins with M1, which is not in the middle; in the middle: M3 and M8",
		"M2 (step 2) is further in than M1 (step 1) before it; 6 steps go back inwards",
		"5 in succession on one side of the middle, steps 1 to 5 (M1, M2, M3, M4 and M5); published orders for this layout have at most 4",
		"8 steps go between neighbours, first M1 to M2 (steps 1 and 2); published orders for this layout have at most 7")
	try("a raster, loosening", judge.Input{Joint: head, Side: judge.Loosen, Order: strings.Fields(raster)},
		"ends with M10, which is not in the middle; in the middle: M3 and M8",
		"M2 (step 2) comes off before M10 (step 10), which is further out; 6 steps go outwards instead of inwards",
		"5 in succession on one side of the middle",
		"8 steps go between neighbours, first M1 to M2 (steps 1 and 2)")
	circle := jointOf(geometry.Circle(8, 240, geometry.Point{X: 4}, 90, true))
	round := strings.Fields("M1 M2 M3 M4 M5 M6 M7 M8")
	try("once round", judge.Input{Joint: circle, Order: round},
		"7 of 7 steps do not go across the circle, first M1 to M2 (steps 1 and 2)",
		"after step 4 (M4) the tight bolts pull to one side like 2.6 fasteners at the edge; published orders for this layout stay at 1.0")
	try("once round, loosening", judge.Input{Joint: circle, Side: judge.Loosen, Order: round},
		"after step 4 (M5) the bolts that are still tight pull to one side like 2.6")
	try("a cross of a head", judge.Input{Joint: head, Order: strings.Fields("M3 M8 M9 M2 M4 M7 M10 M1 M5 M6")},
		"the wrench travels 2242 mm in all; drawdown's own order needs 1400 mm")
	groups := []judge.Group{{Kinds: []string{"main"}, MajorMm: 10}, {Kinds: []string{"side"}, MajorMm: 8}}
	try("small first", judge.Input{Joint: bolted(), Groups: groups, Order: strings.Fields("F1 M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F2")},
		"F1 (step 1) goes on before M3, M8, M9, M4, M2, M7 and 4 more; group by group, the large ones first")
	try("small off last", judge.Input{Joint: bolted(), Groups: groups, Side: judge.Loosen, Order: strings.Fields("M6 M1 M5 M10 M7 M2 M4 M9 M8 M3 F2 F1")},
		"F2 and F1 (steps 11 and 12) come off after M6, M1, M5, M10, M7, M2 and 4 more; group by group, the small ones first")
	try("caps", judge.Input{Joint: caps(), Order: strings.Fields("M3 M8 M2 M5 M7 M10 M4 M9 M1 M6")},
		"M2 and M7 are tightened together, but here they are separated (steps 3 and 5)",
		"M4 (step 7): no spring presses there, so it goes on first, before M3 (step 1)")
	try("caps, loosening", judge.Input{Joint: caps(), Side: judge.Loosen, Order: strings.Fields("M6 M1 M9 M4 M10 M7 M5 M2 M8 M3")},
		"M7 and M2 come off together, but here they are separated (steps 6 and 8)",
		"M4 (step 4): no spring presses there, so it comes off last, after M3 (step 10)")
	firstOff := caps()
	firstOff.UnloadedFirstOff = true
	try("caps, unloaded first off", judge.Input{Joint: firstOff, Order: strings.Fields("M4 M9 M3 M8 M2 M7 M5 M10 M1 M6")},
		"M4 (step 1): no spring presses there, and the file has such caps off first, so it goes on last, after M1 (step 9)")
	try("the same, loosening", judge.Input{Joint: firstOff, Side: judge.Loosen, Order: strings.Fields("M6 M1 M10 M5 M7 M2 M8 M3 M9 M4")},
		"M4 (step 10): no spring presses there, and the file has such caps off first, so it comes off first, before M1 (step 2)")
	nearest := func(string, []string) string { return "M3" }
	try("incomplete", judge.Input{Joint: head, Nearest: nearest, Order: strings.Fields("M33 M8 M8 M4")},
		`step 1: there is no fastener "M33" (did you mean M3?)`,
		"M8 appears twice, at steps 2 and 3",
		"left out: M1, M2, M3, M5, M6, M7 and 2 more")
	for _, code := range []finding.Code{judge.UnknownName, judge.NamedTwice, judge.LeftOut, judge.GroupsMixed, judge.ClusterParted, judge.UnloadedLate, judge.UnloadedEarly,
		judge.NotFromMiddle, judge.Inwards, judge.LongOneSide, judge.NextNeighbours, judge.NotAcross, judge.PullsAside, judge.LongWay} {
		if !said[code] {
			t.Errorf("nothing above is %q", code)
		}
	}
}

// First principles: the values are those of the first pair in working order,
// and of the deciding bolt of a cap: the first to go on, the last to come off.
func TestFoundValues(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		name string
		in   judge.Input
		code finding.Code
		want finding.Values
	}{
		{"neighbours, loosening", judge.Input{Joint: jointOf(head()), Side: judge.Loosen, Order: strings.Fields("M1 M2 M3 M4 M5 M6 M7 M8 M9 M10")},
			judge.NextNeighbours, finding.Values{"n": 8, "first": "M1", "second": "M2", "early": 1, "late": 2, "most": 7.0, "side": "loosen"}},
		{"a cap, loosening", judge.Input{Joint: caps(), Side: judge.Loosen, Order: strings.Fields("M6 M1 M9 M4 M10 M7 M5 M2 M8 M3")},
			judge.UnloadedLate, finding.Values{"id": "M4", "step": 4, "against": "M3", "againststep": 10, "side": "loosen"}},
		{"left out", judge.Input{Joint: jointOf(head()), Order: strings.Fields("M1 M2 M3 M4 M5 M6 M7 M8 M9")},
			judge.LeftOut, finding.Values{"ids": []string{"M10"}, "side": "tighten"}},
	} {
		found := finding.Finding{}
		for _, f := range judge.Order(tt.in).Findings {
			if f.Found().Code == tt.code {
				found = f.Found()
			}
		}
		if diff := cmp.Diff(tt.want, found.Values); diff != "" || found.Ground != finding.CommonPractice {
			t.Errorf("%s: ground %q, values\n%s", tt.name, found.Ground, diff)
		}
	}
}
