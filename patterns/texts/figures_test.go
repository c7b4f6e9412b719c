package texts

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// build plans a head: six bolts M10, three M8 at its side.
func build(t *testing.T, change func(*plan.Input)) plan.Plan {
	t.Helper()
	in := plan.Input{Kinds: []plan.Kind{
		{Name: "side", Thread: threadOf(t, "M8"), Class: "8.8", Length: 45, HeadAcross: 13, Lubricant: "engine oil"},
		{Name: "main", Thread: threadOf(t, "M10"), Class: "10.9", Length: 120, HeadAcross: 16, Lubricant: "engine oil"},
	}}
	in.Title, in.Machine = "Cylinder head, left bank", "Fernhollow V6 pump engine"
	for k, x := range []float64{-97, 0, 91} {
		number := string(rune('1' + k))
		in.Joint.Fasteners = append(in.Joint.Fasteners,
			geometry.Fastener{ID: "T" + number, Kind: "main", At: geometry.Point{X: x, Y: 44}},
			geometry.Fastener{ID: "B" + number, Kind: "main", At: geometry.Point{X: x, Y: -46}},
			geometry.Fastener{ID: "S" + number, Kind: "side", At: geometry.Point{X: x + 12, Y: -91}})
		in.Joint.Bores = append(in.Joint.Bores, geometry.Bore{Label: "cyl " + number, Diameter: 70, Centre: geometry.Point{X: x}})
	}
	in.Joint.Dowels = make([]geometry.Dowel, 2)
	change(&in)
	p, err := plan.Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func threadOf(t *testing.T, name string) *thread.Thread {
	t.Helper()
	th, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return &th
}

// cautioned returns the findings for one caution.
func cautioned(p plan.Plan, c plan.Caution) []finding.Finding {
	p.Cautions = []plan.Caution{c}
	return Cautions(p)[0]
}

// First principles: a figure in a text is one of the file, in some unit, single
// or added up; degrees of a crankshaft or a thermometer and torques of other
// fasteners are ignored. 1 lbf·ft = 1.3558 N·m (exact by definition of both).
func TestFiguresInTexts(t *testing.T) {
	t.Parallel()
	p := build(t, func(in *plan.Input) {
		in.Tighten = []plan.StageInput{
			{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 40}, Of: []string{"main"}},
			{Do: plan.Advance, Angle: 90, Of: []string{"main"}},
			{Do: plan.Advance, Angle: 60, Of: []string{"main"}},
			{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 22}, Of: []string{"side"}},
		}
	})
	for text, want := range map[string]finding.Code{
		"40 N·m first": "", "29.5 lbf·ft": "", "29,5 ft-lbs first": "", "4.08 kgf·m": "", "354 lbf·in": "", "torque 22": "",
		"60 Nm": TextTorque, "40 lbf·ft": TextTorque, "4 kgf·m": "", "to 400 N·m": TextTorque, "Torque 44": TextTorque, "35 Nm, then the angle": TextTorque,
		"90°, then 60°": "", "150° in all": "", "30 degrees at a time": "", "two times 45°": "",
		"120°": TextAngle, "turn 100 degrees": TextAngle, "180° in all": TextAngle,
		"crankshaft 35° on": "", "10° BTDC": "", "below 35 °C": "", "77°F": "", "Kolben 120° vor OT": "",
		"spark plugs 25 N·m": "", "Zündkerzen 25 Nm": "", "M8×1.25, 94 mm, 30 min": "", "not 60 N·m": "",
		"Threads dry": TextDry, "Gewinde trocken": TextDry, "filets secs": TextDry, "without oil": TextDry, "holes in the block dry, no oil": "", "gasket dry": "",
	} {
		found := cautioned(p, plan.Caution{Text: text})
		if want == "" && len(found) > 0 || want != "" && (len(found) != 1 || found[0].Code != want) {
			t.Errorf("%q: %v; want %q", text, found, want)
		}
		for _, f := range cautioned(p, plan.Caution{Text: text, Side: plan.CautionLoosen}) {
			if f.Code == want {
				t.Errorf("%q of loosening is compared", text)
			}
		}
	}
}

// A note is about its own stage: 60° belongs to the next stage.
func TestANoteIsOfItsStage(t *testing.T) {
	t.Parallel()
	for note, want := range map[string]int{"turn 60° on": 1, "150° in all": 0, "90°": 0, "2 × 45°": 0} {
		p := build(t, func(in *plan.Input) {
			in.Tighten = []plan.StageInput{
				{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 40}},
				{Do: plan.Advance, Angle: 90, Note: note},
				{Do: plan.Advance, Angle: 60},
			}
		})
		if found := Notes(p); len(found) != want {
			t.Errorf("%q: %v", note, found)
		}
	}
}
