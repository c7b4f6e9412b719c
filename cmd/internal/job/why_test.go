package job

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/sheet/handout"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
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
		a, err := Predict(p, PredictRequest{})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := f.LowestPercent[0], handout.Band(a.Forecast.OnePass.Min); !near(got.Low, want.Low) || !near(got.Nominal, want.Nominal) || !near(got.High, want.High) {
			t.Errorf("%s: the class sheet says %+v of a single pass, predict %+v", c.pattern, got, want)
		}
		other := otherOrder(p)
		if handout.IsCircle(p) {
			// Once round goes from neighbour to neighbour.
			first := p.Joint.Fasteners[other[0]].At.Distance(p.Joint.Fasteners[other[1]].At)
			for k := 2; k < len(other); k++ {
				if step := p.Joint.Fasteners[other[k]].At.Distance(p.Joint.Fasteners[other[k-1]].At); step > first*1.01 {
					t.Errorf("%s: round the rim steps %g mm, then %g mm", c.pattern, first, step)
				}
			}
		} else {
			// Edges first within each kind; the kinds follow each other as before.
			for k, i := range other {
				if was := p.Tighten.Order[k]; p.Joint.Fasteners[i].Kind != p.Joint.Fasteners[was].Kind {
					t.Errorf("%s: step %d is of kind %s, in the plan of %s", c.pattern, k+1, p.Joint.Fasteners[i].Kind, p.Joint.Fasteners[was].Kind)
				}
			}
			if first := p.Groups[0].Members; other[0] != p.Tighten.Order[len(first)-1] {
				t.Errorf("%s: edges first begins with %d", c.pattern, other[0])
			}
		}
		slices.Sort(other)
		if len(slices.Compact(other)) != len(p.Joint.Fasteners) {
			t.Errorf("%s: the other order is no order: %v", c.pattern, other)
		}
	}
}

// No bolt is worked with more than it bears. First principles: an M10 of class
// 10.9 yields at its stress area of 57.99 mm² (ISO 898-1, table 2: 58.0) times
// 940 MPa (table 3), which is 54.5 kN; a kind without a class has no such limit,
// and after an angle then no figure.
func TestFullLoadEndsAtYield(t *testing.T) {
	load := func(text string) plan.Plan {
		t.Helper()
		p, problems, err := Load("-", strings.NewReader(text), "", "")
		if err != nil || problems.Stops() {
			t.Fatal(err, problems)
		}
		return p
	}
	text, _ := patterns.BuiltinText("p4-head")
	p := load(string(text))
	model, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	targets, err := fullLoad(p, model)
	if err != nil {
		t.Fatal(err)
	}
	if got := slices.Max(targets); math.Abs(got-54_500) > 100 {
		t.Errorf("the greatest full load is %.0f N, want 54.5 kN", got)
	}
	classless := load(strings.Replace(string(text), "    class: \"10.9\"\n", "", 1))
	if f := whyFigures(classless); f != nil {
		t.Errorf("after an angle beyond a yield that nobody knows: %+v", *f)
	}
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6 } // percent; round-off
