package prediction_test

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

func forecast(t testing.TB, p plan.Plan, stated setup.Setup) prediction.Forecast {
	t.Helper()
	f, err := prediction.ForecastOf(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// First principles: all figures of a forecast are consistent. The last frame of
// a pass equals the pass, a bolt just tightened by torque has exactly that
// torque, bands ascend, and statistics cover the bolts.
func TestAForecastAgreesWithItself(t *testing.T) {
	for _, name := range []string{"p4-cam-caps", "p4-head", "p4-manifold", "p4-pump-flange"} {
		p := builtin(t, name)
		f := forecast(t, p, setup.Setup{})
		n := len(p.Joint.Fasteners)
		for k, pass := range f.Passes {
			if pass.Number != k+1 || len(pass.Percent) != n || len(pass.OfAim) != n || len(pass.Turned) != n {
				t.Errorf("%s: pass %d has figures missing", name, k+1)
			}
			last := pass.Frames[len(pass.Frames)-1]
			if !slices.Equal(last.Percent, pass.Percent) || !slices.Equal(last.Turned, pass.Turned) {
				t.Errorf("%s: pass %d ends at %v, its last frame at %v", name, k+1, pass.Percent, last.Percent)
			}
			checkSums(t, name, pass)
			checkFrames(t, name, pass)
		}
		if !slices.IsSortedFunc(f.Lowest, func(a, b int) int {
			return int(math.Round(1e3 * (f.Last().Percent[a].Low - f.Last().Percent[b].Low)))
		}) {
			t.Errorf("%s: lowest %v do not rise", name, f.Lowest)
		}
		if f.Class != advice.ClassOf(f.Last().Spread.Min.Low) && f.Last().Stage == nil {
			t.Errorf("%s: class %s at %v", name, f.Class, f.Last().Spread.Min)
		}
	}
}

func checkSums(t *testing.T, name string, pass prediction.ForecastPass) {
	t.Helper()
	least, most := math.Inf(1), 0.0
	for i, b := range pass.Percent {
		switch {
		case !pass.Turned[i] && b != (bounds.Band{}):
			t.Errorf("%s: fastener %d holds %v and was never turned", name, i, b)
		case !(b.Low <= b.Nominal && b.Nominal <= b.High):
			t.Errorf("%s: fastener %d: %v does not rise", name, i, b)
		case pass.Turned[i]:
			least, most = min(least, b.Low), max(most, b.High)
			if pass.OfAim[i].Low < pass.OfAim[pass.Lowest].Low-1e-3 {
				t.Errorf("%s: fastener %d at %v of its aim, the lowest at %v", name, i, pass.OfAim[i], pass.OfAim[pass.Lowest])
			}
		}
	}
	if pass.Spread.Min.Low != least || pass.Spread.Max.High != most {
		t.Errorf("%s: the spread is %v to %v, the bolts reach from %g to %g", name, pass.Spread.Min, pass.Spread.Max, least, most)
	}
}

func checkFrames(t *testing.T, name string, pass prediction.ForecastPass) {
	t.Helper()
	var tilt, warp, uneven float64
	for _, f := range pass.Frames {
		tilt, warp, uneven = max(tilt, f.TiltMm.Nominal), max(warp, f.WarpMm.Nominal), max(uneven, f.UnevenMm.Nominal)
	}
	if tilt != pass.TiltMm.Nominal || warp != pass.WarpMm.Nominal || uneven != pass.UnevenMm.Nominal || pass.Frames[pass.WorstFrame].UnevenMm.Nominal != uneven {
		t.Errorf("%s: pass %d: tilt %g, warp %g, uneven %g by its frames; %v, %v, %v by itself", name, pass.Number, tilt, warp, uneven, pass.TiltMm, pass.WarpMm, pass.UnevenMm)
	}
}

// First principles: one more pass equals the result of the plan with its last
// stage twice.
func TestOneMorePass(t *testing.T) {
	p := builtin(t, "p4-cover")
	f := forecast(t, p, setup.Setup{})
	p.Tighten.Stages = append(slices.Clone(p.Tighten.Stages), p.Tighten.Stages[len(p.Tighten.Stages)-1])
	twice := forecast(t, p, setup.Setup{})
	if !slices.Equal(f.OneMore.Percent, twice.Last().Percent) || f.OneMore.Spread != twice.Last().Spread || f.OneMore.Number != len(twice.Passes) {
		t.Errorf("one more pass leaves %v; written out %v", f.OneMore.Percent, twice.Last().Percent)
	}
	if head := forecast(t, builtin(t, "p4-head"), setup.Setup{}); head.OneMore != nil || head.Repeats != -1 {
		t.Error("the head ends on some of its bolts alone: nobody can say what one more pass is")
	}
}

// First principles: limits of the model are reported for the joints they
// affect, and for no others.
func TestDoubts(t *testing.T) {
	head := builtin(t, "p4-head")
	cover := builtin(t, "p4-cover")
	atOnce := builtin(t, "p4-cover")
	atOnce.Tighten.Stages = atOnce.Tighten.Stages[1:]
	for _, c := range []struct {
		plan   plan.Plan
		stated setup.Setup
		want   finding.Code
	}{
		{head, setup.Setup{}, prediction.PastYield},
		{atOnce, setup.Setup{}, prediction.NoSnugPass},
		{atOnce, setup.Setup{Gasket: compliance.CorkRubber, Thickness: 15}, prediction.SlackAtTheEnd},
		{cover, setup.Setup{Gasket: compliance.CorkRubber}, prediction.HardeningCounts},
		{cover, setup.Setup{Thickness: unit.Length(60), Gasket: compliance.NoGasket, Own: 1e-8}, prediction.ThickForAPlate},
	} {
		doubts := forecast(t, c.plan, c.stated).Doubts
		if !finding.Has(doubts, c.want) {
			t.Errorf("want a doubt about %q, got %q", c.want, doubts)
		}
	}
	if f := forecast(t, cover, setup.Setup{}); len(f.Doubts) > 0 {
		t.Errorf("the cover leaves no doubt, yet: %v", f.Doubts)
	}
}
