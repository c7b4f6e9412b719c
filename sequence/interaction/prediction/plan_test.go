package prediction_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/stiffness"
)

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

// Common sense, no source: every built-in joint can be predicted with nothing
// stated, each bolt ends between zero and twice its target, and for the worst
// bolt a soft gasket is never better than a stiff one.
func TestEveryBuiltinPatternIsPredicted(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p := builtin(t, name)
		m, err := prediction.ModelOf(p, setup.Setup{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		runs, work, err := m.PredictPlan(p)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		last := runs.Passes() - 1
		for i := range p.Joint.Fasteners {
			b := runs.Over(func(r prediction.Run) float64 { return r.Percent(last)[i] })
			if !(b.Low >= 0 && b.Low <= b.Nominal && b.Nominal <= b.High && b.High < 200) {
				t.Errorf("%s: fastener %d ends at %v %%", name, i, b)
			}
		}
		if soft, stiff := runs.Soft.Spread(last).Min, runs.Stiff.Spread(last).Min; soft > stiff+1 {
			t.Errorf("%s: the worst bolt has %.1f %% on the soft gasket and %.1f %% on the stiff one", name, soft, stiff)
		}
		if len(work.Passes) != runs.Passes() {
			t.Errorf("%s: %d passes of work, %d predicted", name, len(work.Passes), runs.Passes())
		}
		t.Logf("%s: class %s, nominal %+.1f, soft %+.1f, own %.3g, k %.0f", name, runs.Class(),
			runs.Nominal.Spread(last), runs.Soft.Spread(last), float64(m.Own[0]), m.Foundation)
	}
}

// First principles: preload is proportional to torque at a given friction, and
// the joint is linear in contact: twice the torques give twice the forces.
func TestForcesGoWithTheTorques(t *testing.T) {
	p := builtin(t, "p4-manifold")
	m, err := prediction.ModelOf(p, setup.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	once, _, err := m.PredictPlan(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Tighten.Stages = slices.Clone(p.Tighten.Stages)
	for i := range p.Tighten.Stages {
		p.Tighten.Stages[i].Torque.Value *= 2
	}
	twice, _, err := m.PredictPlan(p)
	if err != nil {
		t.Fatal(err)
	}
	last := once.Passes() - 1
	for i := range p.Joint.Fasteners {
		if a, b := once.ForceN(last, i).Nominal, twice.ForceN(last, i).Nominal; math.Abs(b/a-2) > 1e-9 {
			t.Errorf("fastener %d: %g N, with twice the torque %g N", i, a, b)
		}
	}
}

// First principles: stated values take precedence over assumed ones.
func TestStatedValuesAreTaken(t *testing.T) {
	p := builtin(t, "p4-manifold")
	own := stiffness.Resilience(4.2e-6)
	stated := setup.Setup{
		Material: "steel", Thickness: 12, Counterpart: "aluminium", Stiffness: bounds.Band{Low: 50, Nominal: 120, High: 250}, Own: own,
		Row: &compliance.Row{BendingNmm2: 2e8, WidthMm: 1, LengthMm: 380, StartMm: 15}, Foundation: bounds.Band{Low: 450, Nominal: 900, High: 1800},
	}
	m, err := prediction.ModelOf(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	if m.Foundation != stated.Foundation || m.Own[3] != own || m.Kernel != compliance.Kernel(*stated.Row) {
		t.Errorf("got %+v", m)
	}
	if len(m.Assumed) > 0 {
		t.Errorf("nothing was left open, yet assumed: %v", m.Assumed)
	}
}

func TestWhatDoesNotFitIsRefused(t *testing.T) {
	p := builtin(t, "p4-head")
	for _, c := range []struct {
		want   error
		stated setup.Setup
	}{
		{setup.PartUnknown, setup.Setup{Material: "cheese"}},
		{compliance.Misused, setup.Setup{Gasket: "felt"}},
		{compliance.NotPositive, setup.Setup{Thickness: unit.Length(math.NaN())}},
		{setup.NotRising, setup.Setup{Stiffness: bounds.Band{Low: 5, Nominal: 4, High: 9}}},
		{setup.CounterpartUnknown, setup.Setup{Counterpart: "cheese"}},
		{compliance.Misused, setup.Setup{Own: -1}},
	} {
		if _, err := modelAndRun(p, c.stated); !errors.Is(err, c.want) {
			t.Errorf("want %v, got %v", c.want, err)
		}
	}
	for i := range p.Joint.Outline[0] {
		p.Joint.Outline[0][i].X /= 3
	}
	if _, err := modelAndRun(p, setup.Setup{}); !errors.Is(err, compliance.OffThePart) {
		t.Errorf("bolts beside the part: got %v", err)
	}
}

func modelAndRun(p plan.Plan, s setup.Setup) (prediction.Prediction, error) {
	m, err := prediction.ModelOf(p, s)
	if err != nil {
		return prediction.Prediction{}, err
	}
	prediction, _, err := m.PredictPlan(p)
	return prediction, err
}

func BenchmarkBuiltinCompliance(b *testing.B) {
	for _, name := range patterns.Builtin() {
		b.Run(name, func(b *testing.B) {
			m, err := prediction.ModelOf(builtin(b, name), setup.Setup{})
			if err != nil {
				b.Skip(err)
			}
			for b.Loop() {
				if _, err := m.Kernel.Compliance(m.At, m.Foundation.High); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
