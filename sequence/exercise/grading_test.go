package exercise_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/sequence/exercise"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// The material for a class is consistent: the order of every built-in pattern
// follows the rules in its hints, and is graded as right, on both sides.
func TestOrdersKeepTheirHints(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p := patterntest.Plan(t, name)
		if found, departs := exercise.DepartsOf(p); departs {
			t.Errorf("%s: %v", name, found)
		}
		for side, order := range map[judge.Side][]int{judge.Tighten: p.Tighten.Order, judge.Loosen: p.Loosen.Order} {
			if g := exercise.GradeOf(judge.ForPlan(p, side, p.IDs(order))); g.Outcome != exercise.Right {
				t.Errorf("%s, %s: the key is graded %q", name, side, g.Outcome)
			}
		}
	}
}

// Bolts once around a circle, one after the other, are not the trade's order.
func TestOrderThatDeparts(t *testing.T) {
	p := patterntest.Plan(t, "p4-flywheel")
	input := plan.Input{Heading: plan.Heading{Name: "t"}, Joint: p.Joint, Kinds: p.Kinds, Way: "circular"}
	round, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	found, departs := exercise.DepartsOf(round)
	if !departs || found.Code != exercise.OrderDeparts || found.Values["usable"] != false || found.Severity != finding.Warning {
		t.Errorf("%v %v", found, departs)
	}
}

// The outcome for each verdict. A finding that only describes needs no
// correction; an answer that breaks a rule twice counts once.
func TestGrades(t *testing.T) {
	p := patterntest.Plan(t, "p4-head")
	right := p.IDs(p.Tighten.Order)
	early := append([]string{right[13]}, right[:13]...) // a small bolt first
	var grades []exercise.Grade
	for _, order := range [][]string{right, early, right[2:], append(right[2:], right[2], "Q9")} {
		grades = append(grades, exercise.GradeOf(judge.ForPlan(p, judge.Tighten, order)))
	}
	grades = append(grades, exercise.Grade{Outcome: exercise.NoAnswer}, exercise.Grade{Outcome: exercise.Unread})
	var outcomes []exercise.Outcome
	for _, g := range grades {
		outcomes = append(outcomes, g.Outcome)
	}
	want := []exercise.Outcome{exercise.Right, exercise.Wrong, exercise.NotWhole, exercise.NotWhole, exercise.NoAnswer, exercise.Unread}
	if diff := cmp.Diff(want, outcomes); diff != "" {
		t.Error(diff)
	}
	if n := exercise.Given(grades); n != 4 {
		t.Errorf("%d answers given, want 4", n)
	}
	if most := exercise.MissedMost(grades); most[0] != (exercise.Missed{Rule: judge.Missing, Answers: 2}) {
		t.Errorf("missed most: %v", most)
	}
	if !exercise.OfOtherParts(grades) || exercise.OfOtherParts(grades[:3]) || exercise.OfOtherParts(nil) {
		t.Error("half of four answers are not whole: they may be for other parts; one of three is not")
	}
}
