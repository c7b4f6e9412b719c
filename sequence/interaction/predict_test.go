package interaction

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

func predicted(t *testing.T, p plan.Plan, ask Question) Answer {
	t.Helper()
	a, err := Predict(p, ask)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func codes(list []finding.Finding) (all []finding.Code) {
	for _, f := range list {
		all = append(all, f.Code)
	}
	return all
}

// A single pass instead of the stages: its force on every bolt, in the order of
// the plan. First principles: the last bolt ends at 100 %, the one before at
// less.
func TestAPassThatIsAskedFor(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", asItIs)
	a := predicted(t, p, Question{Shares: []float64{0.5, 1}, Target: 20_000})
	n := len(p.Joint.Fasteners)
	if a.Passes() != 2 || !slices.Equal(a.Nominal.TargetsN, slices.Repeat([]float64{20_000}, n)) {
		t.Fatalf("%d passes, targets %v", a.Passes(), a.Nominal.TargetsN)
	}
	last, before := p.Tighten.Order[n-1], p.Tighten.Order[0]
	end := a.Nominal.Percent(1)
	if math.Abs(end[last]-100) > 1e-6 || end[before] >= 100 || math.Abs(a.Nominal.Percent(0)[last]-50) > 1e-6 {
		t.Errorf("percent at the end %v", end)
	}
	if oneNewton, leaves, err := a.OnePass(); err != nil || leaves <= 0 || leaves >= 1 || len(oneNewton) != n || oneNewton[0][0] != 1 {
		t.Errorf("a repeat leaves %g; one newton %v; %v", leaves, oneNewton, err)
	}
	if a.Scatter != nil || a.OnScatter() != nil || a.OnTargets() != nil || a.Comparison == nil || a.Advice.Branch != a.Comparison.Advice.Branch || a.Notes != nil {
		t.Errorf("what was not asked for: %+v, %v", a.Scatter, a.Notes)
	}
	if !finding.Has(a.Assumed, procedure.FrictionMiddle) || !finding.Has(a.Assumed, procedure.FrictionSpans) && !finding.Has(a.Assumed, procedure.FrictionUsual) {
		t.Errorf("taken: %v", codes(a.Assumed))
	}
	stuck := predicted(t, p, Question{Shares: []float64{1, 1}, Target: 20_000, Stick: 1})
	if once := predicted(t, p, Question{Shares: []float64{1}, Target: 20_000}); !slices.Equal(stuck.Nominal.Passes[1].ForcesN, once.Nominal.Passes[0].ForcesN) {
		t.Error("a wrench that turns nothing any more turns something")
	}
}

// The stages of the plan without its waits, with the force of its last torque.
func TestThePlansOwnStages(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", asItIs)
	own := predicted(t, p, Question{})
	work, err := procedure.WorkOf(p)
	if err != nil {
		t.Fatal(err)
	}
	if own.Passes() != len(work.Passes) || !slices.Equal(own.Nominal.TargetsN, work.TargetsN) || !slices.Equal(codes(own.Notes), []finding.Code{WaitsLeftOut}) {
		t.Errorf("%d passes, targets %v, notes %v", own.Passes(), own.Nominal.TargetsN, own.Notes)
	}
	shares := predicted(t, p, Question{Shares: []float64{1}})
	if !slices.Equal(shares.Nominal.TargetsN, work.TargetsN) || shares.Passes() != 1 {
		t.Errorf("shares of %v", shares.Nominal.TargetsN)
	}
	p.Tighten.Stages = slices.DeleteFunc(p.Tighten.Stages, func(s plan.Stage) bool { return s.Do == plan.Wait })
	if plain := predicted(t, p, Question{}); plain.Notes != nil || plain.Passes() != own.Passes() {
		t.Errorf("without waits: notes %v, %d passes", plain.Notes, plain.Passes())
	}
	p.Tighten.Stages = nil
	if _, err := Predict(p, Question{Shares: []float64{1}}); !errors.Is(err, TargetUnknown) {
		t.Errorf("no stage tells a force: %v", err)
	}
	if a := predicted(t, p, Question{Shares: []float64{1}, Target: 9000}); a.Nominal.TargetsN[0] != 9000 {
		t.Errorf("targets %v", a.Nominal.TargetsN)
	}
}

// After an angle, 100 % is the mean of the kind, at most its yield load.
func TestAfterAnAngle(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-head", asItIs)
	a := predicted(t, p, Question{Shares: []float64{1}})
	for i, target := range a.Nominal.TargetsN {
		if most := procedure.YieldN(p.KindOf(i)); target <= 0 || target > most*(1+1e-12) {
			t.Errorf("bolt %d: %g N of %g", i, target, most)
		}
	}
	if hundreds := a.Forecast.Hundreds; !slices.ContainsFunc(hundreds, func(h procedure.Hundred) bool { return h.By == procedure.ByYieldLoad }) {
		t.Errorf("100 %% is %+v", hundreds)
	}
}

// Compensating targets leave the joint even with the nominal gasket (first
// principles: they are the solution for that). The cap limits them, and yield
// lowers the cap.
func TestTargetsAgainstTheLoss(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", asItIs)
	free := predicted(t, p, Question{Shares: []float64{0.5, 1}, Target: 9000, Cap: 3})
	for i, percent := range free.Nominal.Percent(1) {
		if math.Abs(percent-100) > 0.01 {
			t.Errorf("bolt %d ends at %g %%", i, percent)
		}
	}
	if free.Targets[p.Tighten.Order[0]] <= 9000 || free.Comparison != nil || !slices.Equal(codes(free.OnTargets()), []finding.Code{TargetsCaution}) || free.Cap != 3 && !finding.Has(free.Notes, CapLowered) {
		t.Errorf("targets %v, said %v", free.Targets, free.OnTargets())
	}
	tight := predicted(t, p, Question{Shares: []float64{0.5, 1}, Target: 9000, Cap: 1.0001})
	said := tight.OnTargets()
	if len(said) != 2 || said[1].Code != CapStops || slices.Max(tight.Targets) > 9000*1.0001*(1+1e-9) {
		t.Fatalf("targets %v, said %v", tight.Targets, said)
	}
	capped := 0
	for _, target := range tight.Targets {
		if target > 9000*1.0001*(1-1e-8) {
			capped++
		}
	}
	if said[1].Values["bolts"] != capped || capped == 0 || capped == len(tight.Targets) && tight.Targets[p.Tighten.Order[0]] == 0 {
		t.Errorf("%v of %d at the cap", said[1], capped)
	}
	if _, err := Predict(load(t, "p4-head", asItIs), Question{Cap: 1.1}); !errors.Is(err, TorqueEndsNot) {
		t.Errorf("an angle ends it: %v", err)
	}
}

// No target is above nine tenths of the load at which a turned bolt yields.
func TestCapBelowYield(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", func(text string) string { return text })
	yield := procedure.YieldTurnedN(p.KindOf(0))
	if yield == 0 {
		t.Fatal("no class")
	}
	for _, c := range []struct {
		share, cap float64 // of the yield load, and as requested
		want       float64
		lowered    any
	}{{0.5, 1.5, 1.5, nil}, {0.5, 1.9, 1.8, 180.}, {0.801, 1.2, 0.9 / 0.801, 112.}, {0.899, 1.1, 0.9 / 0.899, 100.}} {
		a := Answer{Plan: p, Cap: c.cap}
		a.Nominal.TargetsN = slices.Repeat([]float64{c.share * yield}, len(p.Joint.Fasteners))
		if err := a.lowerCap(); err != nil || math.Abs(a.Cap-c.want) > 1e-9 {
			t.Errorf("%+v: cap %g, %v", c, a.Cap, err)
		}
		if c.lowered == nil && a.Notes != nil || c.lowered != nil && (len(a.Notes) != 1 || a.Notes[0].Values["cap"] != c.lowered || a.Notes[0].Values["share"] != 90.) {
			t.Errorf("%+v: %v", c, a.Notes)
		}
	}
	a := Answer{Plan: p, Cap: 1.1}
	a.Nominal.TargetsN = slices.Repeat([]float64{0.91 * yield}, len(p.Joint.Fasteners))
	var f finding.Finding
	if err := a.lowerCap(); !errors.Is(err, TargetAboveYield) || !errors.As(err, &f) || f.Values["most"] != unit.Force(0.9*yield) || f.Values["share"] != 90. {
		t.Errorf("above: %v", err)
	}
	classless := load(t, "p4-pump-flange", func(text string) string {
		lines := slices.DeleteFunc(strings.Split(text, "\n"), func(line string) bool { return strings.HasPrefix(strings.TrimSpace(line), "class:") })
		return strings.Join(lines, "\n")
	})
	a = Answer{Plan: classless, Cap: 5}
	a.Nominal.TargetsN = slices.Repeat([]float64{2 * yield}, len(p.Joint.Fasteners))
	if err := a.lowerCap(); err != nil || a.Cap != 5 {
		t.Errorf("no class: cap %g, %v", a.Cap, err)
	}
}

// Scatter of friction adds to the elastic effects; the same seed gives the same
// draws.
func TestScatterThatIsAskedFor(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", asItIs)
	ask := Question{Shares: []float64{1}, Target: 9000, Draws: 60, Seed: 4}
	a := predicted(t, p, ask)
	s := a.Scatter
	if s == nil || s.Draws != 60 || s.Seed != 4 || s.Elastic.SD <= 0 || s.Together.SD <= s.Elastic.SD || math.Abs(s.Elastic.SD-a.Nominal.Spread(0).SD) > 1e-9 || len(a.OnScatter()) == 0 {
		t.Fatalf("%+v, said %v", s, codes(a.OnScatter()))
	}
	if again := predicted(t, p, ask).Scatter; again.Together.SD != s.Together.SD {
		t.Error("the same seed gives other draws")
	}
	ask.Seed = 5
	if other := predicted(t, p, ask).Scatter; other.Together.SD == s.Together.SD {
		t.Error("another seed gives the same draws")
	}
}

// What is left out; friction only if it was not drawn.
func TestLeftOut(t *testing.T) {
	t.Parallel()
	if got := codes(LeftOut(false)); !slices.Equal(got, []finding.Code{NoCreep, NoSetting, NoFriction, NoMeasured}) {
		t.Errorf("%v", got)
	}
	if got := codes(LeftOut(true)); !slices.Equal(got, []finding.Code{NoCreep, NoSetting, NoMeasured}) {
		t.Errorf("with scatter: %v", got)
	}
}

// An order is clearly better if its lowest bolt keeps five points more, or the
// part is a fifth less uneven, on every gasket.
func TestTells(t *testing.T) {
	t.Parallel()
	made := func(soft, mid, stiff [2]float64) (p prediction.Prediction) {
		for k, c := range [][2]float64{soft, mid, stiff} {
			*p.Runs()[k] = prediction.Run{TargetsN: []float64{100, 100}, Passes: []contact.AfterPass{{ForcesN: []float64{c[0], 100}, LargestUnevenMm: c[1]}}}
		}
		return p
	}
	base := made([2]float64{70, 1}, [2]float64{80, 1}, [2]float64{90, 1})
	for _, c := range []struct {
		name           string
		one            prediction.Prediction
		lowest, uneven bool
	}{
		{"both", made([2]float64{75, 0.8}, [2]float64{85, 0.8}, [2]float64{95, 0.8}), true, true},
		{"not on the soft one", made([2]float64{74.9, 0.81}, [2]float64{85, 0.8}, [2]float64{95, 0.8}), false, false},
		{"not on the middle one", made([2]float64{75, 0.8}, [2]float64{84.9, 0.81}, [2]float64{95, 0.8}), false, false},
		{"not on the stiff one", made([2]float64{75, 0.8}, [2]float64{85, 0.8}, [2]float64{94.9, 0.81}), false, false},
		{"lowest alone", made([2]float64{75, 1}, [2]float64{85, 1}, [2]float64{95, 1}), true, false},
		{"uneven alone", made([2]float64{70, 0.5}, [2]float64{80, 0.5}, [2]float64{90, 0.5}), false, true},
	} {
		if l, u := tells(c.one, base); l != c.lowest || u != c.uneven {
			t.Errorf("%s: %v, %v", c.name, l, u)
		}
	}
}

// The reason for an order: the plan's figures first, in one pass to the full
// load.
func TestReasonOfAnOrder(t *testing.T) {
	t.Parallel()
	p := load(t, "p4-pump-flange", asItIs)
	model, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	r := ReasonOf(p, model, true)
	if r == nil {
		t.Fatal("no reason")
	}
	a := predicted(t, p, Question{Shares: []float64{1}})
	if want := a.Over(func(r prediction.Run) float64 { return r.Spread(0).Min }); r.LowestPercent[0] != want {
		t.Errorf("lowest %v, one pass comes to %v", r.LowestPercent[0], want)
	}
	if want := a.Over(func(r prediction.Run) float64 { return r.Passes[0].LargestUnevenMm }); r.UnevenMm[0] != want || r.UnevenMm[1] == want {
		t.Errorf("uneven %v, one pass comes to %v", r.UnevenMm, want)
	}
	none := bounds.Band{}
	if r.LowestPercent[1] == none || r.UnevenMm[1].Nominal <= r.UnevenMm[0].Nominal || !r.TellsUneven {
		t.Errorf("once round a flange tilts it less than the star: %+v", r)
	}
	p.Tighten.Stages = nil
	if r := ReasonOf(p, model, true); r != nil {
		t.Errorf("no stages: %+v", r)
	}
}
