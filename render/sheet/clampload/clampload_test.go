package clampload_test

import (
	"strings"
	"testing"

	"drawdown/patterns/patterntest"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/clampload"
	"drawdown/render/sheet/sheettest"
	"drawdown/sequence/plan"
	"drawdown/sequence/service"
)

const flange = `drawdown: 1
title: Header flange
machine: Fernhollow P4 pump engine
kinds: {stud: {thread: M16, class: "8.8", length: 90 mm, thread length: full, grip: 64 mm, nut: 24 mm, head: 24 mm, hole: 18 mm, washer: 30 mm, friction: [0.10, 0.14]}}
fasteners: [{circle: {count: 16, diameter: 200, first: 90°, kind: stud, id: S}}]
joint:
  part: {material: steel, thickness: 30 mm}
  gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm, thickness: 4.5 mm, seating: 69 MPa, work: 35 MPa, crush: 250 MPa}
  pressure: 16 bar
  temperature: {part: 110 °C, bolt: 95 °C}
tighten: {stages: [{torque: 60 N·m}, {torque: 150 N·m}], source: works manual 7.2}
`

// A joint that holds, one that does not, one without a gasket, one with two
// kinds of bolts of which one yields, one judged by usual limits and one whose
// head sinks in, on every paper in every language: no layout fault. The sheet
// begins with the verdict, and one that holds takes one page of A4.
func TestLayouts(t *testing.T) {
	t.Parallel()
	bare := strings.Replace(flange, "  gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm, thickness: 4.5 mm, seating: 69 MPa, work: 35 MPa, crush: 250 MPa}\n", "  gasket: {kind: none}\n  sealed: 120 mm\n", 1)
	two := strings.Replace(flange, "kinds: {", `kinds: {cap: {thread: M12, class: "8.8", grip: 64 mm, nut: 18 mm, head: 18 mm, friction: 0.12}, `, 1)
	two = strings.Replace(two, "id: S}}]", "id: S}}, {id: C1, at: [0, 140], kind: cap}, {id: C2, at: [0, -140], kind: cap}]", 1)
	usual := strings.Replace(flange, ", seating: 69 MPa, work: 35 MPa, crush: 250 MPa", "", 1)
	sinks := strings.Replace(flange, "hole: 18 mm, washer: 30 mm", "hole: 22 mm", 1)
	for n, text := range []string{flange, strings.Replace(flange, "crush: 250 MPa", "crush: 100 MPa", 1), bare, two, usual, sinks} {
		p := patterntest.Plan(t, text)
		for _, ask := range sheettest.Requests(n) {
			document := clampload.Document(p, requestOf(p, clampload.Request{Request: ask}))
			sheettest.Check(t, p.Title, ask, document.Pages)
			said, w := scenetest.Said(document.Pages...), ask.Words.Torque.AtWork
			verdict := w.Holds
			switch n {
			case 1, 3, 5:
				verdict = w.HoldsNot
			case 4:
				verdict = w.HoldsAsUsual
			}
			if !strings.Contains(said, verdict[:12]) { // a long one is broken into lines
				t.Errorf("%d on %s: no verdict; found %v", n, ask.Paper.Name, requestOf(p, clampload.Request{}).Found)
			}
			if ask.Paper.Name == "a4" && n == 0 && len(document.Pages) != 1 {
				t.Errorf("%d pages of A4 in %s", len(document.Pages), ask.Words.Language)
			}
		}
	}
}

func requestOf(p plan.Plan, ask clampload.Request) clampload.Request {
	ask.Joint, ask.Found = service.Of(p), service.Doubts(append(p.Figures, service.Judge(p)...))
	return ask
}
