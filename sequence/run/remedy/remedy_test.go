package remedy

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

func codes(list []finding.Finding) (all []finding.Code) {
	for _, f := range list {
		all = append(all, f.Code)
	}
	return all
}

// Whatever the trouble, there is something to do, somebody who decides, and the
// manual that overrides it.
func TestEveryTroubleHasARemedy(t *testing.T) {
	t.Parallel()
	for _, d := range []run.Direction{run.Loosen, run.Tighten} {
		for _, trouble := range run.Troubles {
			a := For(trouble, d)
			if len(a.Steps) == 0 || !slices.Equal(codes(a.Last), []finding.Code{LeadDecides, ManualFirst}) {
				t.Errorf("%s while %s: %v", trouble, d, a)
			}
			for _, f := range slices.Concat(a.Steps, a.Cautions, a.Last) {
				if f.Ground != finding.CommonPractice {
					t.Errorf("%s while %s: %s has the ground %q", trouble, d, f.Code, f.Ground)
				}
			}
		}
	}
}

// A snapped bolt: the gentle ways first, and what may hurt stands beside them
// (common practice, no source).
func TestSnappedBolt(t *testing.T) {
	t.Parallel()
	a := For(run.Broken, run.Loosen)
	want := []finding.Code{LeaveStub, Penetrant, Heat, Grip, WeldNut, Centre, LeftDrill, Extractor, DrillOut, Insert, Chips, TryThread}
	if got := codes(a.Steps); !slices.Equal(got, want) {
		t.Errorf("steps %q, want %q", got, want)
	}
	for _, mind := range []finding.Code{Fire, HeatSoftens, Welding, Glasses, DrillWanders, ExtractorBreaks} {
		if !finding.Has(a.Cautions, mind) {
			t.Errorf("no caution %q", mind)
		}
	}
	if a.Card != run.Loosen {
		t.Errorf("the card's box of %q", a.Card)
	}
	tight := codes(For(run.Broken, run.Tighten).Steps)
	if tight[0] != Stop || tight[len(tight)-1] != FitNew || slices.Contains(tight, LeaveStub) {
		t.Errorf("while tightening: %q", tight)
	}
}

// Nothing is oiled that is tightened to a torque, and no angle is made up for.
func TestTighteningIsNotForced(t *testing.T) {
	t.Parallel()
	a := For(run.Seized, run.Tighten)
	if finding.Has(a.Steps, Penetrant) || !finding.Has(a.Cautions, NoOil) {
		t.Errorf("seized while tightening: %q, mind %q", codes(a.Steps), codes(a.Cautions))
	}
	if a := For(run.TurnedTwice, run.Tighten); !finding.Has(a.Steps, NotBack) {
		t.Errorf("turned twice: %q", codes(a.Steps))
	}
	if a := ForUnsure(); a.Steps[0].Code != NoGuess {
		t.Errorf("unsure: %q", codes(a.Steps))
	}
}
