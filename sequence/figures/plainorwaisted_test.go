package figures

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/tensiontest"
)

// M10 10.9 oiled with a waist of 7.3 mm breaks at 46 N·m (first principles, see
// TestWaistRulesTheAim): 53 N·m, right for a plain bolt, is judged as breaking.
func TestWaistIsJudged(t *testing.T) {
	bolt := Bolt{Kind: "main", Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"},
		Stages: []Stage{{Number: 1, Do: Tighten, Torque: unit.GivenTorque{Value: 53}}}}
	if found := Judge([]Bolt{bolt}); len(found) != 0 {
		t.Errorf("plain: %v", found)
	}
	bolt.Bolt.Shank = 7.3
	found := Judge([]Bolt{bolt})
	if len(found) != 1 || found[0].Code != TorquePastYield || found[0].Severity != finding.Warning || found[0].Values["breaks"] != true {
		t.Errorf("waisted: %v", found)
	}
}

// An unknown shape counts as plain, which is said with what a waist would
// change; a stated shape, also a thread up to the head, is not assumed.
func TestUnknownShapeIsAssumedPlain(t *testing.T) {
	ask := Ask{Bolt: Bolt{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}}}
	plain, err := WorkOut(ask)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(plain.Assumptions, func(f finding.Finding) bool { return f.Code == PlainAssumed })
	if i < 0 {
		t.Fatalf("%v", plain.Assumptions)
	}
	v := plain.Assumptions[i].Values
	tensiontest.Near(t, "break", float64(v["break"].(unit.Torque)), 46.1, 0.005)
	if v["waist"] != unit.Length(7.3) || plain.Result.Torque < v["break"].(unit.Torque) {
		t.Errorf("%v", v)
	}
	full, sections, shank := ask, ask, ask
	full.Grip.FullThread = true
	sections.Grip.Shank = []stiffness.Section{{Length: 40, Diameter: 8}}
	shank.Bolt.Bolt.Shank = 10
	for _, stated := range []Ask{full, sections, shank} {
		a, err := WorkOut(stated)
		if err != nil || finding.Has(a.Assumptions, PlainAssumed) {
			t.Errorf("%v %v", err, a.Assumptions)
		}
	}
}

// A waist over the whole grip bears the widest turn before it breaks; that is
// the lenient case of a waist of unknown length.
func TestLenientWaist(t *testing.T) {
	j := judge{Bolt: Bolt{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Shank: 7.3}, Grip: stiffness.Simple(60)}}
	grip, open := j.lenient()
	if open != openWaist || len(grip.Shank) != 1 || grip.Shank[0] != (stiffness.Section{Length: 60, Diameter: 7.3}) || grip.FullThread {
		t.Errorf("%s %+v", open, grip)
	}
	j.Bolt.Bolt.Shank = 9.5
	if grip, open = j.lenient(); open != openAll || !grip.FullThread {
		t.Errorf("%s %+v", open, grip)
	}
}

// Past 1,000 N·m no wrench is used by hand (common practice, no source).
func TestLargeTorquePointsToATool(t *testing.T) {
	for torque, noted := range map[float64]bool{1000: false, 1001: true} {
		b := Bolt{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M36"), Class: "8.8", Lubricant: "engine oil"}, Stages: []Stage{{Number: 1, Do: Tighten, Torque: nm(500)}, {Number: 2, Do: Tighten, Torque: nm(torque)}}}
		if got := finding.Has(Judge([]Bolt{b}), TorqueByTool); got != noted {
			t.Errorf("%v N·m: %v", torque, got)
		}
	}
}
