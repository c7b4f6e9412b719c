package patterns

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

const rail = `drawdown: 1
title: Rail
fasteners: [{row: {count: 5, pitch: 60, from: [0, 0], id: C}}]
tighten: {stages: [{torque: 20 N·m}]}
`

const circle = `drawdown: 1
title: Flange
fasteners: [{circle: {count: 8, diameter: 240, id: S}}]
tighten: {stages: [{torque: 20 N·m}]}
`

func exactly[T unit.AreaStiffness | unit.LineStiffness](v T) unit.Span[T] {
	return unit.Span[T]{Low: v, Nominal: v, High: v}
}

// First principles: values are read as written, in N and mm; fasteners without
// a start are in the middle; k = p/(c·t) of a data sheet.
func TestTheBlockJointIsRead(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want plan.Clamped
	}{
		"parts and row": {rail + `joint:
  part: {material: aluminium, thickness: 60 mm}
  counterpart: {material: cast iron, thickness: 80 mm}
  gasket: {kind: Composite}
  row: {bending: 2.0e8 N·mm², foundation: 900 N/mm², length: 380 mm, start: 15 mm}
  bolt flexibility: 4.2e-6 mm/N
`, plan.Clamped{
			Part: plan.ClampedPart{Material: "aluminium", Thickness: 60}, Counterpart: plan.ClampedPart{Material: "cast iron", Thickness: 80},
			Gasket:          plan.Gasket{Kind: "composite"},
			Row:             &plan.Row{Bending: 2e8, Foundation: exactly[unit.LineStiffness](900), Length: 380, Start: 15},
			BoltFlexibility: 4.2e-6,
		}},
		"without a start, other units": {rail + `joint:
  gasket: {stiffness: 120 MPa/mm, strip: 16 mm}
  row: {bending: 200 N m^2, foundation: 0.9 GPa, length: 38 cm}
`, plan.Clamped{
			Gasket: plan.Gasket{Stiffness: exactly[unit.AreaStiffness](120), Strip: 16},
			Row:    &plan.Row{Bending: 2e8, Foundation: exactly[unit.LineStiffness](900), Length: 380, Start: 70},
		}},
		"data sheet": {rail + "joint: {gasket: {squeezed: 5-20 %, at: 34 MPa, thickness: 2 mm}}\n", plan.Clamped{
			Gasket: plan.Gasket{Stiffness: unit.Span[unit.AreaStiffness]{Low: 85, Nominal: 170, High: 340}, Thickness: 2},
		}},
		"at work": {circle + `joint:
  gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm, thickness: 4.5 mm, seating: 69 MPa, work: 35 MPa, crush: 250 MPa}
  pressure: 16 bar
  sealed: 120 mm
  load: 12 kN
  load introduction: 0.5
  temperature: {part: 110 °C, bolt: 203 °F, assembled: 15 °C}
`, plan.Clamped{
			Gasket:  plan.Gasket{Kind: "spiral-wound", Inside: 120, Outside: 150, Thickness: 4.5, Seating: 69, Work: 35, Crush: 250},
			Service: plan.Service{Pressure: 1.6, Sealed: 120, Load: 12e3, Introduced: 0.5, Temperature: &plan.Temperature{Part: 110, Bolt: 95, Assembled: 15}},
		}},
		"temperatures left out": {circle + "joint: {temperature: {part: 90 °C}}\n", plan.Clamped{
			Service: plan.Service{Temperature: &plan.Temperature{Part: 90, Bolt: 90, Assembled: 20}},
		}},
		"raised face": {circle + "joint: {flange: {outer: 300 mm, bore: 150 mm, gasket inner: 160 mm, gasket outer: 200 mm, pipe wall: 8 mm, pipe radius: 84 mm, pair: no}}\n", plan.Clamped{
			Flange: &plan.Flange{Outer: 300, Bore: 150, GasketInner: 160, GasketOuter: 200, PipeWall: 8, PipeRadius: 84, Single: true},
		}},
		"full face": {circle + "joint: {flange: {outer: 300 mm, face: full, pair: yes}}\n", plan.Clamped{Flange: &plan.Flange{Outer: 300}}},
	} {
		input, problems := Read(FromBytes(name, []byte(c.text)))
		if len(problems) > 0 {
			t.Errorf("%s: %s", name, said(problems).Detail())
		}
		roundOff := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-12*math.Abs(b) })
		if diff := cmp.Diff(c.want, input.Clamped, roundOff); diff != "" {
			t.Errorf("%s: (- wanted, + read)\n%s", name, diff)
		}
	}
}

// First principles: in the mirror the other end of a row is the left one, and a
// part of 380 mm with 240 mm of fasteners from 15 mm on leaves 125 mm there.
func TestARowGoesIntoTheMirror(t *testing.T) {
	text := strings.Replace(rail, "title: Rail", "title: Rail, right bank\nmirror: x", 1) + "joint: {row: {bending: 2.0e8 N·mm², foundation: 900 N/mm², length: 380 mm, start: 15 mm}}\n"
	for mirror, want := range map[string]unit.Length{"mirror: x": 125, "mirror: y": 15} {
		input, problems := Read(FromBytes("rail", []byte(strings.Replace(text, "mirror: x", mirror, 1))))
		if problems.Stops() {
			t.Fatal(said(problems).Detail())
		}
		p, err := plan.Build(input)
		if err != nil {
			t.Fatal(err)
		}
		if got := p.Clamped.Row.Start; got != want {
			t.Errorf("%s: starts at %v, want %v", mirror, got, want)
		}
	}
}
