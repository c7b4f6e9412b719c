package ways_test

import (
	"math"
	"slices"
	"testing"

	"drawdown/patterns"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

func compared(t testing.TB, p plan.Plan, stated setup.Setup) ways.Comparison { // without a search, which takes long where bolts go slack
	t.Helper()
	m, err := prediction.ModelOf(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := comparedOn(t, m, p, false)
	return c
}

func comparedOn(t testing.TB, m prediction.Model, p plan.Plan, search bool) (ways.Comparison, prediction.Forecast) {
	t.Helper()
	runs, work, err := m.PredictPlan(p)
	if err != nil {
		t.Fatal(err)
	}
	f, err := m.Forecast(p, runs, work)
	if err != nil {
		t.Fatal(err)
	}
	c, err := ways.Compare(m, p, runs, work, f, search)
	if err != nil {
		t.Fatal(err)
	}
	return c, f
}

func trial(t testing.TB, c ways.Comparison, name advice.Way) ways.Trial {
	t.Helper()
	for _, trial := range c.Trials {
		if trial.Way == name || slices.Contains(trial.Also, name) {
			return trial
		}
	}
	t.Fatalf("there is no trial %s", name)
	return ways.Trial{}
}

// First principles: the file's own way equals the forecast; a search is never
// worse than its start, by its own cost; every trial tightens every bolt;
// groups and caps stay together.
func TestComparison(t *testing.T) {
	for _, name := range []string{"p4-cam-caps", "p4-head", "p4-manifold", "p4-pump-flange"} {
		p := builtin(t, name)
		m, err := prediction.ModelOf(p, setup.Setup{})
		if err != nil {
			t.Fatal(err)
		}
		c, f := comparedOn(t, m, p, true)
		own := c.Trials[0]
		uneven := bounds.Band{} // the worst pass at the soft end may differ from that at the stiff one
		for _, pass := range f.Passes {
			uneven = bounds.Band{Low: max(uneven.Low, pass.UnevenMm.Low), Nominal: max(uneven.Nominal, pass.UnevenMm.Nominal), High: max(uneven.High, pass.UnevenMm.High)}
		}
		if own.End != f.Last().Spread || own.UnevenMm != uneven || !slices.Equal(own.Order, p.Tighten.Order) {
			t.Errorf("%s: its own way ends at %v, uneven by %v; forecast %v, %v", name, own.End, own.UnevenMm, f.Last().Spread, uneven)
		}
		for _, trial := range c.Trials {
			turned := map[int]bool{}
			for _, pass := range trial.Passes {
				for _, step := range pass {
					turned[step.Fastener] = true
				}
			}
			if len(turned) != len(p.Joint.Fasteners) || len(trial.Order) != len(turned) {
				t.Errorf("%s, %s: works %d of %d bolts", name, trial.Way, len(turned), len(p.Joint.Fasteners))
			}
			if !keepsTogether(p, trial.Order) {
				t.Errorf("%s, %s: parts a group or a cap: %v", name, trial.Way, p.IDs(trial.Order))
			}
		}
		if len(c.Notes) > 0 { // not searched
			continue
		}
		if least := trial(t, c, advice.LeastScatter); least.End.SD.Nominal > own.End.SD.Nominal+1e-9 {
			t.Errorf("%s: searched for scatter %v, its own %v", name, least.End.SD, own.End.SD)
		}
		if least := trial(t, c, advice.LeastTilt); least.UnevenMm.Nominal > own.UnevenMm.Nominal+1e-12 {
			t.Errorf("%s: searched for tilt %v, its own %v", name, least.UnevenMm, own.UnevenMm)
		}
	}
}

func keepsTogether(p plan.Plan, order []int) bool {
	sets := [][]int{}
	for _, g := range p.Groups {
		sets = append(sets, g.Members)
	}
	for _, c := range p.Joint.Clusters {
		var of []int
		for i, f := range p.Joint.Fasteners {
			if slices.Contains(c.Of, f.ID) {
				of = append(of, i)
			}
		}
		sets = append(sets, of)
	}
	return !slices.ContainsFunc(sets, func(set []int) bool {
		first, last := len(order), 0
		for k, i := range order {
			if slices.Contains(set, i) {
				first, last = min(first, k), max(last, k)
			}
		}
		return last-first+1 != len(set)
	})
}

// First principles: the recipe starts snug, keeps the figures of the file, and
// applies the last torque twice, from bolt to neighbour. With two bolts in a
// row, the path of the wrench is their distance per change of bolt.
func TestTheRecipe(t *testing.T) {
	p := builtin(t, "p4-manifold")
	c := compared(t, p, setup.Setup{})
	recipe := trial(t, c, advice.Recipe)
	var shares []float64
	last := recipe.Passes[len(recipe.Passes)-1]
	for _, pass := range recipe.Passes {
		shares = append(shares, math.Round(1000*pass[0].ForceN/last[0].ForceN)/1000)
	}
	if want := []float64{0.1, 0.455, 1, 1}; !slices.Equal(shares, want) { // 10 and 22 N·m: 10/22
		t.Errorf("shares %v, want %v", shares, want)
	}
	for k := range last[1:] {
		a, b := p.Joint.Fasteners[last[k].Fastener].At, p.Joint.Fasteners[last[k+1].Fastener].At
		if a.Distance(b) > 92+1e-9 { // the pitch of the grid: no bolt is skipped
			t.Errorf("the last pass leaps from %v to %v", a, b)
		}
	}
	p.Joint.Fasteners = p.Joint.Fasteners[:2]
	p.Tighten.Order, p.Groups[0].Members = []int{0, 1}, []int{0, 1}
	for i := range p.Tighten.Stages {
		p.Tighten.Stages[i].Fasteners = []int{0, 1}
	}
	if got, want := compared(t, p, setup.Setup{}).Trials[0].TravelM, 5*0.092; math.Abs(got-want) > 1e-12 {
		t.Errorf("the wrench travels %g m, want %g m", got, want)
	}
}

// Common sense, no source: a joint whose bolts keep their load is left alone,
// and a sensitive one is not; work that leaves something out is never
// recommended.
func TestVerdicts(t *testing.T) {
	cover := builtin(t, "p4-cover")
	for _, c := range []struct {
		plan   plan.Plan
		stated setup.Setup
		want   advice.Branch
		way    advice.Way
	}{
		{builtin(t, "p4-cam-caps"), setup.Setup{}, advice.LeaveIt, advice.OwnWay},
		// One more pass raises its worst bolt from 96 to 100 %, which friction
		// hides.
		{cover, setup.Setup{Gasket: compliance.FibreSheet, Thickness: 15}, advice.LeaveIt, advice.OwnWay},
		{builtin(t, "p4-head"), setup.Setup{}, advice.AskFor, advice.LastTwice},
		{cover, setup.Setup{Gasket: compliance.CorkRubber}, advice.AskForButPass, advice.Recipe},
		{builtin(t, "p4-pump-flange"), setup.Setup{Gasket: compliance.SpiralWound, Own: 1e-7, Flange: &compliance.Flange{GasketInner: 160, GasketOuter: 180, Pair: true}}, advice.NoCure, advice.OwnWay},
	} {
		got := compared(t, c.plan, c.stated)
		if got.Advice.Branch != c.want || got.Advice.Way != c.way || got.Trials[got.Advice.Best].Less {
			t.Errorf("want %q by %q, got %q by %q", c.want, c.way, got.Advice.Branch, got.Advice.Way)
		}
	}
}

// First principles: the range of friction is four standard deviations wide. A
// kind with a single figure has the usual scatter, and says so.
func TestFrictionOfAKind(t *testing.T) {
	p := builtin(t, "p4-manifold")
	spanned := procedure.FrictionOf(p)
	if !(spanned.SDPercent > 5 && spanned.SDPercent < 25) || spanned.ByFastener[0] != spanned.SDPercent || spanned.Says().Code != procedure.FrictionSpans {
		t.Errorf("engine oil: %v", spanned)
	}
	// The head bolts that end on an angle do not count.
	head := builtin(t, "p4-head")
	whole := procedure.FrictionOf(head)
	head.Kinds = slices.Clone(head.Kinds)
	head.Kinds[slices.IndexFunc(head.Kinds, func(k plan.Kind) bool { return k.Name == "main" })].Friction = &screw.Friction{Thread: screw.Between(0.05, 0.2), Head: screw.Between(0.05, 0.2)}
	if wide := procedure.FrictionOf(head); wide.SDPercent != whole.SDPercent {
		t.Errorf("the scatter of bolts that end on an angle counts: %v", wide)
	}
	p.Kinds = slices.Clone(p.Kinds)
	p.Kinds[0].Friction = &screw.Friction{Thread: screw.Between(0.12, 0.12), Head: screw.Between(0.12, 0.12)}
	if exact := procedure.FrictionOf(p); exact.SDPercent != 10 || exact.Says().Code != procedure.FrictionUsual { // the design of the model
		t.Errorf("one figure: %v", exact)
	}
	// Preload is about inversely proportional to friction: a range of ±10 %
	// gives 5 % SD.
	p.Kinds[0].Friction = &screw.Friction{Thread: screw.Between(0.108, 0.132), Head: screw.Between(0.108, 0.132)}
	if narrow := procedure.FrictionOf(p); math.Abs(narrow.SDPercent-5) > 1 { // the thread's pitch has a share
		t.Errorf("±10 %%: %v, want about 5 %%", narrow)
	}
}

func forecast(t testing.TB, p plan.Plan, stated setup.Setup) prediction.Forecast {
	t.Helper()
	f, err := prediction.ForecastOf(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func builtin(t testing.TB, name string) plan.Plan {
	t.Helper()
	text, ok := patterns.BuiltinText(name)
	if !ok {
		t.Fatalf("no built-in %s", name)
	}
	input, problems := patterns.Read(patterns.FromBytes(name, text))
	if len(problems) > 0 {
		t.Fatal(problems.Detail())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
