package job

import (
	"math"
	"slices"
	"testing"

	"drawdown/render/sheet/handout"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
)

// Figures are only shown if they distinguish the orders at every stiffness of
// the gasket. Which parts these are is pinned from our own output: the flange
// with its gasket inside the bolts tips if tightened round the circle; a
// flywheel, whose faces touch, ends even in any order; a head whose kinds
// follow each other in the same way ends the same.
func TestWhyFigures(t *testing.T) {
	for _, c := range []struct {
		pattern        string
		lowest, uneven bool
	}{{"p4-head", false, false}, {"p4-pump-flange", false, true}, {"p4-flywheel", false, false}, {"p4-manifold", false, false}} {
		p, problems, err := Load(c.pattern, nil, "", "")
		if err != nil || problems.Stops() {
			t.Fatal(err, problems)
		}
		model, err := prediction.ModelOf(p, setup.Setup{})
		if err != nil {
			t.Fatal(err)
		}
		f := interaction.ReasonOf(p, model, handout.IsCircle(p))
		if f == nil {
			t.Fatalf("%s has no figures", c.pattern)
		}
		if f.TellsLowest != c.lowest || f.TellsUneven != c.uneven {
			t.Errorf("%s tells lowest %v, uneven %v: %+v", c.pattern, f.TellsLowest, f.TellsUneven, *f)
		}
		for _, band := range slices.Concat(f.LowestPercent[:], f.UnevenMm[:]) {
			if !(0 <= band.Low && band.Low <= band.Nominal && band.Nominal <= band.High) { // a bolt that goes slack keeps 0 %
				t.Errorf("%s: a band of %+v", c.pattern, band)
			}
		}
		if f.UnevenMm[0].Low <= 0 || f.UnevenMm[1].Low <= 0 || c.lowest && f.LowestPercent[1].Low <= 0 {
			t.Errorf("%s: a figure of 0 is held up: %+v", c.pattern, *f)
		}
		// First principles: the class sheet and predict describe the same pass.
		a, err := interaction.Predict(p, interaction.Question{})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := f.LowestPercent[0], a.Forecast.OnePass.Min; !near(got.Low, want.Low) || !near(got.Nominal, want.Nominal) || !near(got.High, want.High) {
			t.Errorf("%s: the class sheet says %+v of a single pass, predict %+v", c.pattern, got, want)
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6 } // percent; rounding
