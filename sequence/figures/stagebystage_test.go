package figures

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/tensiontest"
)

func stagedBolt(t *testing.T, stages ...Stage) Ask {
	for i := range stages {
		stages[i].Number = i + 1
	}
	return Ask{Bolt: Bolt{Kind: "main", Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"},
		Grip: stiffness.Simple(95), Stages: stages}}
}

func afterStages(t *testing.T, ask Ask) []AfterStage {
	t.Helper()
	a, err := WorkOut(ask)
	if err != nil {
		t.Fatal(err)
	}
	return a.EachStage
}

// Each stage has the figures of its own torque and of the turn so far, as
// screw.AtTorque and stiffness.TurnOn have them (cross-check of two ways).
func TestEachStageHasItsOwnFigures(t *testing.T) {
	ask := stagedBolt(t, Stage{Do: Tighten, Torque: nm(20)}, Stage{Do: Tighten, Torque: nm(40)}, Stage{Do: Advance, Angle: 60}, Stage{Do: Advance, Angle: 30})
	got := afterStages(t, ask)
	for i, torque := range []unit.Torque{20, 40} {
		r, err := screw.AtTorque(ask.Bolt.Bolt, torque)
		if err != nil {
			t.Fatal(err)
		}
		if s := got[i]; !s.Known || s.Nominal != r.Nominal.Preload || s.Low != r.High.Preload || s.High != r.Low.Preload || s.YieldUsed != r.Nominal.YieldShare {
			t.Errorf("%+v", s)
		}
		tensiontest.Near(t, "margin", got[i].Margin, float64(r.Low.BreakTorque/torque), 1e-12)
	}
	r, err := stiffness.TurnOn(stiffness.TorqueAngle{Bolt: ask.Bolt.Bolt, Grip: ask.Grip, Snug: 40, Angle: 90})
	if err != nil {
		t.Fatal(err)
	}
	last := got[3]
	if last.Nominal != r.Nominal.Preload || last.YieldUsed != r.Nominal.YieldUsed || last.Further <= 0 || last.Margin != 0 {
		t.Errorf("%+v; %+v", last, r.Nominal)
	}
	for i := 1; i < len(got); i++ {
		if got[i].Nominal <= got[i-1].Nominal || got[i].Stretch <= got[i-1].Stretch {
			t.Errorf("stage %d: %+v", i+1, got[i])
		}
	}
}

// A lower torque turns nothing; a slackened bolt has no known preload until it
// is tightened again (first principles).
func TestStagesThatDoNotTighten(t *testing.T) {
	got := afterStages(t, stagedBolt(t, Stage{Do: Tighten, Torque: nm(40)}, Stage{Do: Tighten, Torque: nm(30)}, Stage{Do: BackOff, Angle: 180}, Stage{Do: Advance, Angle: 90}, Stage{Do: Tighten, Torque: nm(30)}))
	if got[1].Nominal != got[0].Nominal || got[2].Known || got[3].Known || !got[4].Known || got[4].Nominal >= got[0].Nominal {
		t.Errorf("%+v", got)
	}
}

func TestStageWithoutGrip(t *testing.T) {
	ask := stagedBolt(t, Stage{Do: Tighten, Torque: nm(40)}, Stage{Do: Advance, Angle: 90})
	ask.Grip = stiffness.Grip{}
	if got := afterStages(t, ask); !got[0].Known || got[0].Stretch != 0 || got[1].Known {
		t.Errorf("%+v", got)
	}
}

// A stretch has the preload of stiffness.Stretch, whatever the friction, and is
// judged against yield and breaking.
func TestStretchAsAStage(t *testing.T) {
	for stretch, want := range map[unit.Length]finding.Code{0.2: "", 0.5: StretchPastYield, 20: StretchBreaks} {
		ask := stagedBolt(t, Stage{Do: Lengthen, Stretch: stretch})
		found := Judge([]Bolt{ask.Bolt})
		if want == "" && len(found) > 0 || want != "" && !finding.Has(found, want) {
			t.Errorf("%v: %v", stretch, found)
		}
	}
	ask := stagedBolt(t, Stage{Do: Lengthen, Stretch: 0.2})
	s, err := stiffness.Stretch(ask.Bolt.Bolt, ask.Grip)
	if err != nil {
		t.Fatal(err)
	}
	low, nominal, high, _ := s.Preload(0.2)
	if got := afterStages(t, ask)[0]; got.Low != low || got.Nominal != nominal || got.High != high || got.Stretch != 0.2 {
		t.Errorf("%+v", got)
	}
	ask.Stages, ask.Stretch = nil, 0.2
	a, err := WorkOut(ask)
	if err != nil || *a.Stretched != (Stretched{low, nominal, high}) || !finding.Has(a.Assumptions, SameTemperature) {
		t.Errorf("%v %+v", err, a.Stretched)
	}
	tensiontest.Near(t, "torque for it", float64(a.Result.Nominal.Preload), float64(nominal), 1e-9)
	tensiontest.Near(t, "and back", float64(a.Longer[1]), 0.2, 1e-9)
}
