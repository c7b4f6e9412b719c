package remedy

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

func codes(steps []Step) (all []finding.Code) {
	for _, s := range steps {
		all = append(all, s.Do.Code)
	}
	return all
}

func minded(steps []Step) (all []finding.Finding) {
	for _, s := range steps {
		all = append(all, s.Mind...)
	}
	return all
}

// There is a remedy for every trouble; the lead decides about anything that can
// do harm; no source is claimed.
func TestEveryTroubleHasARemedy(t *testing.T) {
	t.Parallel()
	for _, d := range []run.Direction{run.Loosen, run.Tighten} {
		for _, trouble := range run.Troubles {
			a := For(trouble, d)
			harmful := slices.ContainsFunc(slices.Concat(a.Steps, a.Stub), func(s Step) bool { return s.Do.Code == Heat || s.Do.Code == Insert })
			if len(a.Steps) == 0 || finding.Has(a.Decides, LeadDecides) != harmful || (len(a.Stub) > 0) != (trouble == run.Broken) {
				t.Errorf("%s while %s: %v", trouble, d, a)
			}
			for _, s := range slices.Concat(a.Steps, a.Stub) {
				for _, f := range append(s.Mind, s.Do) {
					if f.Ground != finding.CommonPractice {
						t.Errorf("%s while %s: %s has the ground %q", trouble, d, f.Code, f.Ground)
					}
				}
			}
		}
	}
}

// A snapped bolt: the gentlest ways first, with cautions beside whatever may
// hurt (common practice, no source).
func TestSnappedBolt(t *testing.T) {
	t.Parallel()
	a := For(run.Broken, run.Loosen)
	want := []finding.Code{Depth, Penetrant, Heat, Grip, WeldNut, Cover, Centre, LeftDrill, Extractor, DrillOut, Insert, Chips, TryThread}
	if got := codes(a.Stub); !slices.Equal(got, want) {
		t.Errorf("stub %q, want %q", got, want)
	}
	soaks := slices.IndexFunc(a.Stub, func(s Step) bool { return s.Do.Code == Penetrant })
	if wait := a.Stub[soaks].Do.Values["wait"]; wait != soak {
		t.Errorf("the oil has %v to creep in, want %v", wait, soak)
	}
	for _, mind := range []finding.Code{Fire, HeatSoftens, Welding, Glasses, DrillWanders, ExtractorBreaks} {
		if !finding.Has(minded(a.Stub), mind) {
			t.Errorf("no caution %q", mind)
		}
	}
	if got := codes(a.Steps); a.Card != run.Loosen || !slices.Equal(got, []finding.Code{Stop, LeaveStub}) {
		t.Errorf("the card's box of %q, steps %q", a.Card, got)
	}
	if got := codes(For(run.Broken, run.Tighten).Steps); !slices.Equal(got, []finding.Code{Stop, SlackenAll, FitNew}) {
		t.Errorf("while tightening: %q", got)
	}
}

// Nothing that is tightened to a torque is oiled, and no angle is replaced by a
// guess.
func TestTighteningIsNotForced(t *testing.T) {
	t.Parallel()
	if got := codes(For(run.Seized, run.Tighten).Steps); slices.Contains(got, Penetrant) || !slices.Contains(got, NoOil) {
		t.Errorf("seized while tightening: %q", got)
	}
	if got := codes(For(run.TurnedTwice, run.Tighten).Steps); !slices.Contains(got, NotBack) {
		t.Errorf("turned twice: %q", got)
	}
	if got := codes(ForUnsure().Steps); got[0] != NoGuess {
		t.Errorf("unsure: %q", got)
	}
}
