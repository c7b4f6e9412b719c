package job

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/sheet/handout"
	"drawdown/sequence/interaction"
)

// Figures are held up only where they tell the orders apart at every stiffness
// of the gasket. Which parts these are is pinned from our own output: the flange
// with its gasket inside the bolts tips when it is gone round; a flywheel, whose
// faces meet, ends even in any order; a head whose kinds follow each other alike
// ends alike.
func TestWhyFigures(t *testing.T) {
	for _, c := range []struct {
		pattern        string
		lowest, uneven bool
	}{{"p4-head", false, false}, {"p4-pump-flange", false, true}, {"p4-flywheel", false, false}, {"p4-manifold", false, false}} {
		p, problems, err := Load(c.pattern, nil, "", "")
		if err != nil || problems.Stops() {
			t.Fatal(err, problems)
		}
		f := whyFigures(p)
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
		// First principles: the class sheet and predict tell of the same pass.
		a, err := interaction.Predict(p, interaction.Question{})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := f.LowestPercent[0], handout.Band(a.Forecast.OnePass.Min); !near(got.Low, want.Low) || !near(got.Nominal, want.Nominal) || !near(got.High, want.High) {
			t.Errorf("%s: the class sheet says %+v of a single pass, predict %+v", c.pattern, got, want)
		}
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6 } // percent; round-off

// What a class is shown agrees with itself: the order of every built-in pattern
// keeps the rules that its hints tell, and is right when it is marked, on both
// sides. An order that goes another way is warned of.
func TestOrdersKeepTheirHints(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p, _, err := Load(name, nil, "", "")
		if err != nil {
			t.Fatal(err)
		}
		if notes := againstHints(p); notes != nil {
			t.Errorf("%s: %q", name, notes)
		}
		for _, loosening := range []bool{false, true} {
			side := p.Tighten
			if loosening {
				side = p.Loosen
			}
			one, err := markOne(handout.Task{Plan: p}, patterns.Answer{Student: "Ana", Order: strings.Join(p.IDs(side.Order), " ")}, loosening)
			if err != nil || one.Verdict() != string(handout.Right) {
				t.Errorf("%s, loosening %v: the key is marked %q, %v", name, loosening, one.Verdict(), err)
			}
		}
	}
	text, _ := patterns.BuiltinText("p4-flywheel")
	round, problems, err := Load("-", strings.NewReader(strings.Replace(string(text), "order: star", "order: circular", 1)), "", "")
	if err != nil || problems.Stops() {
		t.Fatal(err, problems)
	}
	if notes := againstHints(round); len(notes) != 1 || !strings.Contains(notes[0], "not the trade's order") {
		t.Errorf("once round: %q", notes)
	}
}
