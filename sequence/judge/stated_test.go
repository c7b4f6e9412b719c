package judge_test

import (
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// A file's own order is reported if it departs. A maker's is reported only if
// its reverse does not depart, because it is then probably the loosening order
// (common practice, no source).
func TestStatedOrders(t *testing.T) {
	t.Parallel()
	own := "M3 M8 M9 M4 M2 M7 M10 M5 M1 M6"
	back := strings.Join(idsBackwards(own), " ")
	list := func(main string) []sequence.Group {
		return []sequence.Group{{Kinds: []string{"main"}, Way: sequence.List, List: strings.Fields(main)}, {Kinds: []string{"side"}, Way: sequence.Auto}}
	}
	by := func(way sequence.Way) []sequence.Group {
		return []sequence.Group{{Kinds: []string{"main"}, Way: way}, {Kinds: []string{"side"}, Way: sequence.Auto}}
	}
	for _, c := range []struct {
		name   string
		groups []sequence.Group
		asked  sequence.Way
		want   string
	}{
		{"none stated", nil, "", ""}, {"auto", by(sequence.Auto), "", ""}, {"as the trade has it", by(sequence.Spiral), "", ""},
		{"once round", by(sequence.Circular), "", "order stated departs"}, {"once round, another way asked for", by(sequence.Circular), sequence.Spiral, ""},
		{"the maker's", list(own), "", ""}, {"the maker's, reversed", list(back), "", "order stated reversed"},
		{"the maker's, from a corner", list("M1 M2 M3 M4 M5 M6 M7 M8 M9 M10"), "", ""},
	} {
		var read plan.Input
		p := planned(t, "p4-head", func(in *plan.Input) {
			if in.Groups = c.groups; c.asked != "" {
				in.Way = c.asked
			}
			read = *in
		})
		f, found := judge.Stated(read, p)
		if string(f.Code) != c.want || found != (c.want != "") {
			t.Errorf("%s: %v, %v", c.name, f, found)
			continue
		}
		switch f.Code {
		case judge.StatedDeparts:
			departs := slices.DeleteFunc(judge.Order(judge.ForPlan(p, judge.Tighten, p.IDs(p.Tighten.Order))).Findings, func(f judge.Finding) bool { return f.Severity != judge.Departure })
			if f.At.Kind != "main" || f.Values["more"] != len(departs)-1 {
				t.Errorf("%s: %v, %d departures", c.name, f, len(departs))
			}
		case judge.StatedReversed:
			if f.Values["first"] != "M6" || f.Values["last"] != "M3" {
				t.Errorf("%s: %v", c.name, f.Values)
			}
		}
	}
}

// Cast numbers without an order in the file are a maker's order too: if they
// seem reversed, a finding asks about it (common practice, no source).
func TestCastNumbersReversed(t *testing.T) {
	t.Parallel()
	own := strings.Fields("M3 M8 M9 M4 M2 M7 M10 M5 M1 M6")
	for name, c := range map[string]struct {
		order []string
		want  finding.Code
	}{"as the trade has it": {own, ""}, "reversed": {idsBackwards(strings.Join(own, " ")), judge.StatedReversed}} {
		var read plan.Input
		p := planned(t, "p4-head", func(in *plan.Input) {
			in.Groups = nil
			in.Joint.Fasteners = slices.Clone(in.Joint.Fasteners)
			for i, f := range in.Joint.Fasteners {
				in.Joint.Fasteners[i].Cast = slices.Index(c.order, f.ID) + 1
			}
			read = *in
		})
		if f, _ := judge.Stated(read, p); f.Code != c.want {
			t.Errorf("%s: %v", name, f)
		}
	}
}

// Four crosswise and then around breaks no rule, but is still described if it
// is the maker's.
func TestFourThenRoundIsDescribed(t *testing.T) {
	t.Parallel()
	r := judged(geometry.Circle(8, 240, geometry.Point{X: 3, Y: 4}, 90, true), []int{0, 4, 2, 6, 1, 3, 5, 7})
	if r.Verdict != judge.Sound || len(r.Groups) != 1 || r.Groups[0].Layout != judge.Circle || r.Groups[0].Order.Run != 2 || r.Groups[0].Own.TravelMm == 0 {
		t.Errorf("%+v", r)
	}
}
