package figures_test

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/stiffness"
)

// A range without a safe figure results if no friction is stated and the torque
// is calculated for a share of yield.
func TestOpenAnswers(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(ask *figures.Ask)
		want   bool
	}{
		"nothing on the thread stated": {func(ask *figures.Ask) {}, true},
		"a lubricant":                  {func(ask *figures.Ask) { ask.Bolt.Bolt.Lubricant = "engine oil" }, false},
		"a torque":                     {func(ask *figures.Ask) { ask.Torque = 30 }, false},
		"a preload":                    {func(ask *figures.Ask) { ask.Bolt.Bolt.Preload = 20000 }, false},
		"a share of the proof load":    {func(ask *figures.Ask) { ask.Bolt.Bolt.ProofShare = 0.5 }, false},
	} {
		ask := alone(t)
		ask.Bolt.Bolt.Friction = nil
		c.change(&ask)
		if a := (figures.Answer{Ask: ask}); a.Open() != c.want {
			t.Errorf("%s: open %v", name, !c.want)
		}
	}
}

// The stages of the file are judged unless the question replaces them.
func TestWhoseStagesAreJudged(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(ask *figures.Ask)
		want   bool
	}{
		"nothing asked":             {func(ask *figures.Ask) {}, true},
		"no stages":                 {func(ask *figures.Ask) { ask.Stages = nil }, false},
		"a torque":                  {func(ask *figures.Ask) { ask.Torque = 30 }, false},
		"a snug torque":             {func(ask *figures.Ask) { ask.Snug = 30 }, false},
		"a share of yield":          {func(ask *figures.Ask) { ask.Bolt.Bolt.YieldShare = 0.5 }, false},
		"a share of the proof load": {func(ask *figures.Ask) { ask.Bolt.Bolt.ProofShare = 0.5 }, false},
		"a preload":                 {func(ask *figures.Ask) { ask.Bolt.Bolt.Preload = 20000 }, false},
	} {
		ask := alone(t)
		ask.Stages = []figures.Stage{{Number: 1, Do: figures.Tighten, Torque: unit.GivenTorque{Value: 20}}}
		c.change(&ask)
		if a := (figures.Answer{Ask: ask}); a.OfStages() != c.want {
			t.Errorf("%s: the stages are judged %v", name, !c.want)
		}
	}
}

// The pressure under the head has a limit if the part under it is known. An
// unknown tapped part is rejected, and so is a grip that does not fit.
func TestWhatAnAnswerNeeds(t *testing.T) {
	t.Parallel()
	ask := alone(t)
	if a := work(t, ask); a.Pressure.Limit != 0 || a.Pressure.Pressure == 0 || a.Joint != nil || a.Settlement != nil || a.Stripping != nil || a.Turned != nil {
		t.Errorf("a bare bolt: %+v", a.Pressure)
	}
	ask.Under = "steel"
	if a := work(t, ask); a.Pressure.Limit != 490 { // VDI 2230, table A9 (value from memory)
		t.Errorf("on steel: %+v", a.Pressure)
	}
	ask.Under = "100 GPa"
	if a := work(t, ask); a.Pressure.Limit != 0 || a.Pressure.Pressure == 0 {
		t.Errorf("on a part of known modulus: %+v", a.Pressure)
	}
	ask = alone(t)
	ask.Grip = stiffness.Simple(60)
	ask.Grip.TappedIn, ask.Grip.Engagement = "steel", 15
	a := work(t, ask)
	if a.Joint == nil || a.Settlement == nil || a.Stripping == nil || a.Engaged != 15 || !slices.Contains(a.Sources, "VDI 2230 Part 1, table 5 (settlement)") {
		t.Errorf("a bolt in steel: %+v", a)
	}
	if want := max(a.Result.Low.Borne, a.Result.Nominal.Borne, a.Result.High.Borne); a.Greatest != want || want == 0 {
		t.Errorf("threads are judged at %v, want %v", a.Greatest, want)
	}
	ask.Grip.TappedIn = "cheese"
	if _, err := figures.WorkOut(ask); err == nil {
		t.Error("a part of cheese passes")
	}
	ask = alone(t)
	ask.Grip = stiffness.Simple(5000)
	if _, err := figures.WorkOut(ask); err == nil {
		t.Error("a grip of 5 m passes")
	}
	ask.Kind = "main" // from a file: the torque is the main question
	if a := work(t, ask); !finding.Has(a.Notes, figures.StiffnessLeftOut) || a.Joint != nil {
		t.Errorf("of a file: %v", a.Notes)
	}
	ask = alone(t)
	ask.Grip = stiffness.Simple(60)
	ask.Grip.BoltLength = 50
	if a := work(t, ask); !finding.Has(a.Notes, figures.StiffnessLeftOut) {
		t.Errorf("too short: %v", a.Notes)
	}
	ask.Grip.BoltLength, ask.Grip.Thread = 100, 20
	if a := work(t, ask); !finding.Has(a.Notes, figures.StiffnessLeftOut) {
		t.Errorf("thread too far: %v", a.Notes)
	}
}

// What a turn depends on is what the bolt leaves open. Two turns break it in
// any case.
func TestWhatATurnRestsOn(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(b *figures.Bolt)
		want   string
	}{
		"all stated":              {func(*figures.Bolt) {}, "stated"},
		"parts open":              {func(b *figures.Bolt) { b.Under, b.Grip.Layers[0].Material = "", "" }, "parts"},
		"thread open":             {func(b *figures.Bolt) { b.Grip.Thread = 0 }, "shank"},
		"both open":               {func(b *figures.Bolt) { b.Grip.Thread, b.Under, b.Grip.Layers[0].Material = 0, "", "" }, "all"},
		"full thread, parts open": {func(b *figures.Bolt) { b.Grip.FullThread, b.Grip.Layers[0].Material = true, "" }, "parts"},
		"sections stated, parts open": {func(b *figures.Bolt) {
			b.Grip.Shank, b.Grip.Layers[0].Material = []stiffness.Section{{Length: 10, Diameter: 10}}, ""
		}, "parts"},
	} {
		b := whole(t)
		b.Reuse = "once"
		b.Stages[1].Angle = 720
		c.change(&b)
		said := false
		for _, f := range figures.Judge([]figures.Bolt{b}) {
			if f.Code == figures.TurnBreaks {
				said = true
				if open := f.Values["rests"].(finding.Finding).Values["open"]; open != c.want {
					t.Errorf("%s: rests on %v, want %s", name, open, c.want)
				}
			}
		}
		if !said {
			t.Errorf("%s: two turns do not break the bolt", name)
		}
	}
}
