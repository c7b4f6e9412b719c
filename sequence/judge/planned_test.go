package judge_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/patterns"
	"drawdown/sequence"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// planned plans a built-in pattern; change may alter its input first.
func planned(t *testing.T, name string, change func(in *plan.Input)) plan.Plan {
	t.Helper()
	source, err := patterns.Open(name, strings.NewReader(""))
	if err != nil {
		t.Fatal(err)
	}
	in, problems := patterns.Read(source)
	if problems.Stops() {
		t.Fatal(problems)
	}
	if change != nil {
		change(&in)
	}
	p, err := plan.Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// First principles: the orders of the built-in patterns come from drawdown's
// own ways, or were listed by experts. None departs, whoever is taken for its
// author, on either side of the work.
func TestBuiltInOrdersAreRight(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p := planned(t, name, nil)
		for side, order := range map[judge.Side][]int{judge.Tighten: p.Tighten.Order, judge.Loosen: p.Loosen.Order} {
			in := judge.ForPlan(p, side, p.IDs(order))
			in.Makers = false
			wantVerdict(t, name+" as a learner's answer, to "+string(side), judge.Order(in), judge.Sound)
		}
	}
}

// First principles: whose order it is. It is the maker's if the file lists it
// or follows the numbers on the part. A source covers the figures: a file with
// one may still have drawdown's own order.
func TestWhoseOrderItIs(t *testing.T) {
	t.Parallel()
	list := strings.Fields("M3 M8 M9 M4 M2 M7 M10 M5 M6 M1 F2 F3 F4 F1")
	noSource := func(in *plan.Input) { in.Source = "" }
	listed := func(in *plan.Input) {
		in.Source, in.Groups = "", []sequence.Group{{Way: sequence.List, List: list}}
	}
	tests := []struct {
		name   string
		p      plan.Plan
		order  []string
		makers bool
	}{
		{"with a source", planned(t, "p4-head", nil), nil, false},
		{"without", planned(t, "p4-head", noSource), nil, false},
		{"a list", planned(t, "p4-head", listed), nil, true},
		{"another than the list", planned(t, "p4-head", listed), idsBackwards(strings.Join(list, " ")), false},
		{"cast numbers", planned(t, "p4-cover", noSource), nil, true},
		{"another way asked for", planned(t, "p4-head", func(in *plan.Input) { in.Way = sequence.Cross }), nil, false},
	}
	for _, tt := range tests {
		if tt.order == nil {
			tt.order = tt.p.IDs(tt.p.Tighten.Order)
		}
		if got := judge.ForPlan(tt.p, judge.Tighten, tt.order).Makers; got != tt.makers {
			t.Errorf("%s: the maker's %v, want %v", tt.name, got, tt.makers)
		}
	}
}

// Common practice, no source: a list over all kinds says nothing about groups,
// but the threads do: large ones first.
func TestGroupsOfAPlan(t *testing.T) {
	t.Parallel()
	p := planned(t, "p4-head", func(in *plan.Input) {
		in.Groups = []sequence.Group{{Way: sequence.List, List: strings.Fields("F1 F2 F3 F4 M3 M8 M9 M4 M2 M7 M10 M5 M6 M1")}}
	})
	want := []judge.Group{{Kinds: []string{"main"}, MajorMm: 10}, {Kinds: []string{"side"}, MajorMm: 8}}
	if diff := cmp.Diff(want, judge.ForPlan(p, judge.Tighten, nil).Groups); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(want, judge.ForPlan(planned(t, "p4-head", nil), judge.Tighten, nil).Groups); diff != "" {
		t.Error(diff)
	}
}

// Common practice, no source: small before large is reported for a file's own
// order, and not for a maker's.
func TestSmallBeforeLargeIsFound(t *testing.T) {
	t.Parallel()
	small := []sequence.Group{{Kinds: []string{"side"}, Way: sequence.RowWay}, {Kinds: []string{"main"}, Way: sequence.Spiral}}
	p := planned(t, "p4-head", func(in *plan.Input) { in.Groups = small })
	for side, order := range map[judge.Side][]int{judge.Tighten: p.Tighten.Order, judge.Loosen: p.Loosen.Order} {
		report := judge.Order(judge.ForPlan(p, side, p.IDs(order)))
		wantVerdict(t, "small before large, to "+string(side), report, judge.Departs)
		if len(report.Findings) == 0 || report.Findings[0].Rule != judge.GroupOrder {
			t.Errorf("to %s: findings %v, want the order of the groups first", side, report.Findings)
		}
	}
	listed := slices.Clone(small)
	listed[1].Way, listed[1].List = sequence.List, strings.Fields("M3 M8 M9 M4 M2 M7 M10 M5 M6 M1")
	p = planned(t, "p4-head", func(in *plan.Input) { in.Groups = listed })
	wantVerdict(t, "as the maker has it", judge.Order(judge.ForPlan(p, judge.Tighten, p.IDs(p.Tighten.Order))), judge.Described)
}

// First principles: cast numbers that are unique on the part order all of it;
// numbers that start again order each group.
func TestCastOrder(t *testing.T) {
	t.Parallel()
	numbers := func(of ...int) func(in *plan.Input) {
		return func(in *plan.Input) {
			for k, n := range of {
				in.Joint.Fasteners[k].Cast = n
			}
		}
	}
	through := planned(t, "p4-head", numbers(9, 5, 1, 4, 8, 10, 6, 2, 3, 7, 13, 11, 12, 14))
	anew := planned(t, "p4-head", numbers(9, 5, 1, 4, 8, 10, 6, 2, 3, 7, 3, 1, 2, 4))
	mainAlone := planned(t, "p4-head", numbers(9, 5, 1, 4, 8, 10, 6, 2, 3, 7)) // the side bolts keep the order of the file
	for name, p := range map[string]plan.Plan{"through": through, "anew": anew, "one kind alone": mainAlone} {
		got, err := judge.CastOrder(p, judge.Tighten)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff("M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F2 F3 F1 F4", strings.Join(got, " ")); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		back, _ := judge.CastOrder(p, judge.Loosen)
		if diff := cmp.Diff(idsBackwards(strings.Join(got, " ")), back); diff != "" {
			t.Errorf("%s, loosening: %s", name, diff)
		}
	}
	if _, err := judge.CastOrder(planned(t, "p4-head", nil), judge.Tighten); !errors.Is(err, sequence.NoCastNumber) {
		t.Errorf("without numbers: %v", err)
	}
	if _, err := judge.CastOrder(planned(t, "p4-head", numbers(9, 5)), judge.Tighten); !errors.Is(err, sequence.NoCastNumber) {
		t.Errorf("numbers on some of a kind: %v", err)
	}
}
