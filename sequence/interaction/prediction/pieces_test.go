package prediction

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

func codesOf(list []finding.Finding) (codes []finding.Code) {
	for _, f := range list {
		codes = append(codes, f.Code)
	}
	return codes
}

func low(v float64) bounds.Spreads { return bounds.Spreads{Min: bounds.Band{Low: v}} }

// threeBolts is a plan with three bolts, the last of which is tightened first.
func threeBolts() plan.Plan {
	p := plan.Plan{Tighten: plan.Side{Order: []int{2, 0, 1}}}
	for _, id := range []string{"A", "B", "C"} {
		p.Joint.Fasteners = append(p.Joint.Fasteners, geometry.Fastener{ID: id, Kind: "main"})
	}
	return p
}

// What is reported about the end and about one more pass, one case for each
// branch and limit.
func TestWhatIsSaidOfTheEnd(t *testing.T) {
	t.Parallel()
	p, more := threeBolts(), &ForecastPass{Spread: low(99)}
	for _, c := range []struct {
		name         string
		lowest       float64
		class        advice.Class
		taken        *Taken
		more         *ForecastPass
		repeats      int
		ends, repeat []finding.Code
	}{
		{"nobody can say", 80, advice.Strong, nil, nil, 3, []finding.Code{LowestEnds}, nil},
		{"not felt", 95.1, advice.Noticeable, nil, more, 0, []finding.Code{LowestEnds}, []finding.Code{NotFelt}},
		{"felt, none needed", 95, advice.Noticeable, nil, more, 0, []finding.Code{LowestEnds}, []finding.Code{OneMorePass, NoneNeeded}},
		{"needed, though not felt", 96, advice.Noticeable, nil, more, 1, []finding.Code{LowestEnds}, []finding.Code{OneMorePass, RepeatsNeeded}},
		{"never even", 60, advice.Strong, &Taken{By: 1, Points: 7}, more, -1, []finding.Code{LowestEnds, LoadTaken}, []finding.Code{OneMorePass, NeverEven}},
		{"negligible", 98, advice.Negligible, &Taken{By: 1, Points: 2}, more, 0, []finding.Code{LowestEnds}, []finding.Code{NotFelt}},
	} {
		f := Forecast{Passes: []ForecastPass{{Lowest: 1, Spread: low(c.lowest)}}, Class: c.class, Taken: c.taken, OneMore: c.more, Repeats: c.repeats, Lowest: []int{1}}
		if got := codesOf(f.Ends(p)); !slices.Equal(got, c.ends) {
			t.Errorf("%s: %v", c.name, got)
		}
		if got := codesOf(f.Repeat()); !slices.Equal(got, c.repeat) {
			t.Errorf("%s: %v", c.name, got)
		}
		if v := f.Ends(p)[0].Values; v["bolt"] != "B" || v["ends"] != f.Last().Spread.Min {
			t.Errorf("%s: %v", c.name, v)
		}
		if f.Lowest = nil; f.Ends(p)[0].Values["bolt"] != nil {
			t.Errorf("%s: none is lowest, and one is named", c.name)
		}
		of := f.Case()
		if of.Class != c.class || of.Repeats != max(0, c.repeats) || of.Falls {
			t.Errorf("%s: %+v", c.name, of)
		}
	}
	if f := (Forecast{Falls: []finding.Finding{{}}, FrictionSD: 8}); !f.Case().Falls || f.Case().FrictionSD != 8 {
		t.Errorf("%+v", f.Case())
	}
}

// A part that is uneven by less than 0.03 mm stays level; otherwise the worst
// pass and its worst moment are reported.
func TestWhatIsSaidOfTheWay(t *testing.T) {
	t.Parallel()
	p := threeBolts()
	pass := func(number int, nominal, high float64) ForecastPass {
		return ForecastPass{Number: number, UnevenMm: bounds.Band{Nominal: nominal, High: high}, WorstFrame: 1, Frames: []Frame{{Fastener: 0}, {Fastener: 2, TiltMm: bounds.Band{Nominal: 0.4}, WarpMm: bounds.Band{Nominal: 0.1}}}}
	}
	f := Forecast{Passes: []ForecastPass{pass(1, 0.1, 0.2), pass(2, 0.5, 0.6), pass(3, 0.5, 0.9)}}
	said := f.Lies(p)
	if f.WorstPass() != 1 || !slices.Equal(codesOf(said), []finding.Code{MostUneven, TiltedAndBent}) || said[0].Values["bolt"] != "C" || said[0].Values["pass"] != 2 || said[1].Values["tilt"] != (bounds.Band{Nominal: 0.4}) {
		t.Errorf("%v", said)
	}
	for high, want := range map[float64]finding.Code{0.0299: StaysLevel, 0.03: MostUneven, 0.001: StaysLevel} {
		f.Passes = []ForecastPass{pass(1, 0.001, high)}
		if said := f.Lies(p); said[0].Code != want || want == StaysLevel && said[0].Values["uneven"] != max(0.01, high) {
			t.Errorf("%g mm: %v", high, said)
		}
	}
	f.OnePass = bounds.Spreads{Min: bounds.Band{Low: 84.9}, Mean: bounds.Band{Nominal: 92}}
	if once := f.Once(); once.Values["class"] != "strong" || once.Values["mean"] != f.OnePass.Mean || once.Values["ends"] != f.OnePass.Min {
		t.Errorf("%v", once)
	}
	f.FoundationMPaPerMm = bounds.Band{Low: 123, Nominal: 456, High: 789}
	for perLength, want := range map[bool]string{false: "MPa/mm", true: "N/mm²"} {
		f.PerLength = perLength
		if taken := f.FoundationTaken(); taken.Values["unit"] != want || taken.Values["stiffness"] != (bounds.Band{Low: 120, Nominal: 460, High: 790}) {
			t.Errorf("%v", taken)
		}
	}
}

// The description of a pass, by its stage.
func TestWhatAPassDoes(t *testing.T) {
	t.Parallel()
	p := threeBolts()
	some, all := []int{0, 1}, []int{0, 1, 2}
	for _, c := range []struct {
		pass  ForecastPass
		code  finding.Code
		kinds bool
	}{
		{ForecastPass{}, PassTargets, false}, {ForecastPass{Share: 0.5}, PassShare, false},
		{ForecastPass{Stage: &plan.Stage{Do: plan.Tighten, Fasteners: all, Kinds: []string{"main"}}}, PassTorque, false}, {ForecastPass{Stage: &plan.Stage{Do: plan.Tighten, Fasteners: some, Kinds: []string{"main"}}}, PassTorque, true},
		{ForecastPass{Stage: &plan.Stage{Do: plan.Advance, Fasteners: all}}, PassAngle, false}, {ForecastPass{Stage: &plan.Stage{Do: plan.BackOff, Fasteners: all}}, PassBack, false},
		{ForecastPass{Stage: &plan.Stage{Do: plan.TurnBack, Fasteners: all}}, PassBack, false}, {ForecastPass{Stage: &plan.Stage{Do: plan.Remove, Fasteners: all}}, PassOut, false},
	} {
		got := c.pass.Does(p)
		if got.Code != c.code || (got.Values["kinds"] != nil) != c.kinds || c.code == PassShare && got.Values["share"] != 50. {
			t.Errorf("%+v: %v", c.pass, got)
		}
	}
}

// walker has two passes over three bolts, equal at the three stiffnesses: the
// forces after each step are in percent of 200 N.
func walker(passes []contact.Pass, steps [][][]float64) *forecaster {
	w := &forecaster{plan: threeBolts(), work: procedure.Work{Passes: passes}, turned: make([]bool, 3)}
	w.model = Model{Settled: setup.Settled{At: make([]geometry.Point, 3)}}
	for r, run := range w.p.Runs() {
		*run = Run{TargetsN: []float64{200, 200, 200}}
		for _, pass := range steps {
			after := contact.AfterPass{}
			for _, forces := range pass {
				after.StepForcesN = append(after.StepForcesN, geometry.Mapped(forces, func(percent float64) float64 { return 2 * percent }))
			}
			after.ForcesN = after.StepForcesN[len(after.StepForcesN)-1]
			run.Passes = append(run.Passes, after)
		}
		w.aims[r] = make([]float64, 3)
	}
	return w
}

func to(percent float64, order ...int) (pass contact.Pass) {
	for _, i := range order {
		pass = append(pass, contact.Action{Fastener: i, ForceN: 2 * percent})
	}
	return pass
}

// Which bolt took load from the lowest one since it was last turned.
func TestWhoTook(t *testing.T) {
	t.Parallel()
	passes := []contact.Pass{to(100, 0, 1, 2), to(100, 0, 1, 2)}
	steps := [][][]float64{{{100, 0, 0}, {90, 100, 0}, {84, 97, 100}}, {{100, 95, 99}, {97, 100, 98}, {95.5, 98, 100}}}
	w := walker(passes, steps)
	if got := w.taken(0); got == nil || got.From != 0 || got.By != 1 || math.Abs(got.Points-3) > 1e-9 || math.Abs(got.All-4.5) > 1e-9 {
		t.Errorf("%+v", got)
	}
	// A wrench that clicks compensates nothing: what was taken before counts.
	w = walker(passes, [][][]float64{{{100, 0, 0}, {98, 100, 0}, {97, 97, 100}}, {{97, 97, 100}, {96, 100, 98}, {95.9, 98, 100}}})
	if got := w.taken(0); got == nil || got.By != 1 || math.Abs(got.Points-3) > 1e-9 || math.Abs(got.All-4.1) > 1e-9 {
		t.Errorf("clicks: %+v", got)
	}
	for points, want := range map[float64]bool{0.99: false, 1.01: true} {
		w = walker(passes[:1], [][][]float64{{{100, 0, 0}, {100 - points, 100, 0}, {100 - points, 97, 100}}})
		if got := w.taken(0); (got != nil) != want {
			t.Errorf("%g points: %+v", points, got)
		}
	}
}

// The share of a pass, if it is the same for all; the lowest bolts, of equal
// ones the first in the order.
func TestSharesAndLowest(t *testing.T) {
	t.Parallel()
	targets := []float64{200, 100, 50}
	for _, c := range []struct {
		pass contact.Pass
		want float64
	}{
		{contact.ToForces([]int{2, 0, 1}, targets, 0.3), 0.3}, {contact.Pass{{Fastener: 0, ForceN: 100}, {Fastener: 1, ForceN: 51}}, 0}, {contact.Pass{{Fastener: 0, ForceN: 100}, {Fastener: 1, Do: contact.ByTravel}}, 0},
		{contact.Pass{{Fastener: 0, Do: contact.ByTravel, TravelMm: 1}}, 0}, {nil, 0},
	} {
		if got := shareOf(c.pass, targets); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v: %g", c.pass, got)
		}
	}
	w := walker([]contact.Pass{to(100, 0, 1, 2)}, [][][]float64{{{1, 1, 1}, {1, 1, 1}, {1, 1, 1}}})
	for _, c := range []struct {
		low  []float64
		in   []bool
		want []int
	}{
		{[]float64{99, 98, 99.4}, []bool{true, true, true}, []int{1, 0, 2}}, {[]float64{99.5, 99.49, 100}, []bool{true, true, true}, []int{1}}, {[]float64{90, 90, 90}, []bool{true, true, true}, []int{2, 0, 1}},
		{[]float64{90, 90.00001, 80}, []bool{true, true, false}, []int{0, 1}},
	} {
		last := ForecastPass{Turned: c.in, Percent: geometry.Mapped(c.low, func(v float64) bounds.Band { return bounds.Band{Low: v} })}
		if got := w.lowest(last); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.low, got, c.want)
		}
	}
	if got := chosen([]float64{1, 2, 3}, []bool{true, false, true}); !slices.Equal(got, []float64{1, 3}) {
		t.Errorf("chosen %v", got)
	}
}

// A pass aims at its torque, or by angle at the resulting mean of the kind. The
// bolt furthest below its aim is the lowest of the pass. One that is out has no
// aim.
func TestAims(t *testing.T) {
	t.Parallel()
	turn := contact.Pass{{Fastener: 0, Do: contact.ByTravel, TravelMm: 1}, {Fastener: 1, Do: contact.ByTravel, TravelMm: 1}}
	w := walker([]contact.Pass{to(50, 0, 1), turn}, [][][]float64{{{50, 0, 0}, {40, 50, 0}}, {{100, 50, 0}, {80, 120, 0}}})
	w.turned = []bool{true, true, false}
	w.aim(0)
	var made ForecastPass
	w.sumUp(&made, w.p, 0)
	if made.Lowest != 0 || math.Abs(made.OfAim[0].Low-80) > 1e-9 || math.Abs(made.OfAim[1].Nominal-100) > 1e-9 || made.OfAim[2] != (bounds.Band{}) || made.Percent[0].Nominal != 40 || made.Spread.Mean.Nominal != 45 {
		t.Errorf("%+v", made)
	}
	w.aim(1)
	made = ForecastPass{}
	w.sumUp(&made, w.p, 1)
	if made.Lowest != 0 || math.Abs(made.OfAim[0].Low-80) > 1e-9 || math.Abs(made.OfAim[1].Nominal-120) > 1e-9 {
		t.Errorf("by angle: %+v", made)
	}
	if tied(99.00001) != tied(99.000012) || tied(99.0001) == tied(99.0003) {
		t.Error("what ties")
	}
}

// Bolts that are in but hold nothing: at the end, and the most after any pass.
func TestSlackBolts(t *testing.T) {
	t.Parallel()
	out := contact.Pass{{Fastener: 2, Do: contact.Out}}
	for _, c := range []struct {
		name      string
		passes    []contact.Pass
		steps     [][][]float64
		end, ever int
	}{
		{"none", []contact.Pass{to(100, 0, 1)}, [][][]float64{{{100, 0, 0}, {90, 100, 0}}}, 0, 0},
		{"one at the end", []contact.Pass{to(100, 0, 1)}, [][][]float64{{{100, 0, 0}, {0, 100, 0}}}, 1, 1},
		{"two on the way", []contact.Pass{to(100, 0, 1, 2), to(100, 0, 1, 2)}, [][][]float64{{{100, 0, 0}, {0, 100, 0}, {0, 0, 100}}, {{100, 0, 90}, {100, 100, 90}, {100, 100, 100}}}, 0, 2},
		{"one that is out", []contact.Pass{to(100, 0, 1, 2), out}, [][][]float64{{{100, 0, 0}, {90, 100, 0}, {80, 90, 100}}, {{85, 95, 0}}}, 0, 0},
	} {
		if end, ever := walker(c.passes, c.steps).slack(); end != c.end || ever != c.ever {
			t.Errorf("%s: %d at the end, %d ever", c.name, end, ever)
		}
	}
}

// The meaning of 100 % for each kind.
func TestHundredsOfAForecast(t *testing.T) {
	t.Parallel()
	w := walker([]contact.Pass{to(100, 0, 1, 2)}, [][][]float64{{{1, 1, 1}, {1, 1, 1}, {1, 1, 1}}})
	w.plan.Joint.Fasteners[0].Kind = "side"
	for k, run := range w.p.Runs() {
		run.TargetsN = []float64{100 + float64(k), 200 + 10*float64(k), 300}
	}
	w.work.Hundreds = []procedure.Hundred{{Kind: "main", By: procedure.ByLastTorque, Torque: unit.GivenTorque{Value: 5}}, {By: procedure.ByStatedForce}, {Kind: "none"}}
	got := w.hundreds()
	if len(got) != 3 || got[0].ForceN != (bounds.Band{Low: 200, Nominal: 210, High: 220}) || got[1].ForceN != (bounds.Band{Low: 100, Nominal: 101, High: 102}) || got[2].ForceN != (bounds.Band{}) || got[0].Torque.Value != 5 {
		t.Errorf("%+v", got)
	}
}
