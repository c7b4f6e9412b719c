package setup_test

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/patterntest"
	"drawdown/sequence/interaction/setup"
)

const raised = `drawdown: 1
title: Flange
kinds: {stud: {thread: M20, class: "8.8", grip: 70 mm, nut: 30 mm, head: 30 mm, friction: [0.10, 0.14]}}
fasteners: [{circle: {count: 16, diameter: 200, id: S}}]
joint: {part: {material: steel, thickness: 30 mm}, gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm}}
tighten: {stages: [{torque: 250 N·m}], source: test}
`

// First principles: the softest gasket is not compressed by more than its
// thickness allows, 0.3 × 4.5 mm for a spiral (gasket.Kind).
func TestThicknessLimitsTheCompression(t *testing.T) {
	t.Parallel()
	free, err := setup.Settle(patterntest.Plan(t, raised), setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	bound, err := setup.Settle(patterntest.Plan(t, strings.Replace(raised, "outside: 150 mm", "outside: 150 mm, thickness: 4.5 mm", 1)), setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	if free.Foundation.Low >= bound.Foundation.Low || bound.Foundation.High < free.Foundation.High || !finding.Has(bound.Assumed, setup.GasketBounded) {
		t.Errorf("%+v without, %+v with a thickness: %v", free.Foundation, bound.Foundation, bound.Assumed)
	}
	if finding.Has(free.Assumed, setup.GasketBounded) {
		t.Error("bounded without a thickness")
	}
}

// First principles: an opening of the part leaves the part more flexible than a
// bore of what is under it, because the part over that stays.
func TestOpeningLeavesThePart(t *testing.T) {
	t.Parallel()
	text := func(through string) string {
		return `drawdown: 1
title: Throttle
kinds: {bolt: {thread: M8, class: "8.8", grip: 12 mm, length: 30 mm, into: cast aluminium, engagement: 16 mm, lubricant: engine oil}}
fasteners: [{id: A, at: [-50, -40]}, {id: B, at: [50, -40]}, {id: C, at: [-50, 40]}, {id: D, at: [50, 40]}]
outline: [[-62, -52], [62, -52], [62, 52], [-62, 52]]
features: [{bore: [0, 0], diameter: 60` + through + `}]
joint: {part: {material: aluminium, thickness: 12 mm}, gasket: {kind: fibre sheet, strip: 24 mm}}
tighten: {stages: [{torque: 20 N·m}], source: test}
`
	}
	compliance := func(through string) float64 {
		s, err := setup.Settle(patterntest.Plan(t, text(through)), setup.Setup{})
		if err != nil {
			t.Fatal(err)
		}
		c, err := s.Kernel.Compliance(s.At, s.Foundation.Nominal)
		if err != nil {
			t.Fatal(err)
		}
		return c.At(0, 0)
	}
	covered, open := compliance(""), compliance(", through: yes")
	if !(open > covered) || math.IsInf(open, 1) {
		t.Errorf("%v with an opening, %v over a bore", open, covered)
	}
	if no := compliance(", through: no"); no != covered {
		t.Errorf("through: no changes %v to %v", covered, no)
	}
}
