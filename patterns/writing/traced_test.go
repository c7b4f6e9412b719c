package writing_test

import (
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/patterns/patterntest"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

// A traced part is written and read back as a joint, with its doubts in the
// comments and on the card, and a nearly fitting layout is offered.
func TestTraced(t *testing.T) {
	f := trace.Found{
		Outline:  []geometry.Point{{X: -60, Y: -40}, {X: 60, Y: -40}, {X: 60.123, Y: 40}, {X: -60, Y: 40}},
		GroupsMm: []float64{8.41, 6.02, 52},
		Doubts:   []finding.Finding{finding.Warned(trace.CutOff, nil)},
	}
	for i, p := range []geometry.Point{{X: -50, Y: 30}, {X: 0.04, Y: 30}, {X: 50, Y: 29.97}, {X: -50, Y: -30}, {X: 0, Y: -30}, {X: 50, Y: -30}} {
		f.Shapes = append(f.Shapes, trace.Shape{ID: "F" + string(rune('1'+i)), Role: trace.Fastener, At: p, DiameterMm: 8.4})
	}
	f.Shapes[2].Doubts = []finding.Finding{finding.Warned(trace.Torn, finding.Values{"round": 0.79})}
	f.Shapes = append(f.Shapes,
		trace.Shape{ID: "D1", Role: trace.Dowel, At: geometry.Point{X: 20, Y: 5.004}, DiameterMm: 6.04, Group: 1},
		trace.Shape{ID: "B1", Role: trace.Bore, At: geometry.Point{X: -20}, DiameterMm: 52.03, Group: 2},
		trace.Shape{ID: "P1", Role: trace.Port, Group: -1, Edge: []geometry.Point{{X: 30, Y: 0}, {X: 40, Y: 0}, {X: 35, Y: 8}}},
		trace.Shape{ID: "S1", Role: trace.Spot, At: geometry.Point{X: 45, Y: 12}, DiameterMm: 3.1, Group: -1, Doubts: []finding.Finding{finding.Warned(trace.Dirt, nil)}},
	)
	data := writing.Pattern(writing.Traced("Cover", "", f, []finding.Finding{finding.Noted(writing.HoldCard, nil)}), words.English().Say)
	joint := patterntest.Joint(t, data)
	if len(joint.Fasteners) != 6 || len(joint.Outline) != 2 || len(joint.Bores) != 1 || len(joint.Dowels) != 1 {
		t.Fatalf("%+v\n%s", joint, data)
	}
	if k := joint.Fasteners[0].Kind; k != "hole 8.4" {
		t.Errorf("kind %q", k)
	}
	if joint.Dowels[0] != (geometry.Dowel{Centre: geometry.Point{X: 20, Y: 5}, Diameter: 6}) || joint.Bores[0].Diameter != 52 || joint.Outline[0][2].X != 60.12 {
		t.Errorf("not rounded to what was seen: %+v", joint)
	}
	for _, want := range []string{
		"# Check: the part reaches the edge of the picture; the rest is missing.", "# Check F3, 8.4 mm at [50, 29.97]: its edge is torn or dirty: 79 % of it is round.",
		"# Check S1, 3.1 mm at [45, 12]: it is small and not round: dirt or a tear; left out.", `"Hole F3, top right: the trace is uncertain; check the part"`,
		"# - grid: {columns: 3, rows: 2, pitch: [50, 60]",
	} {
		if !strings.Contains(string(data), want) {
			t.Errorf("missing: %s\n%s", want, data)
		}
	}
	// Holes of two sizes are not one layout.
	f.Shapes[0].Group = 1
	if offer := writing.TracedOffer(f); offer != nil {
		t.Errorf("offered: %+v", offer)
	}
}
