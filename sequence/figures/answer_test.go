package figures_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

func alone(t *testing.T) figures.Ask {
	t.Helper()
	friction := screw.Same(screw.Between(0.10, 0.14))
	return figures.Ask{Bolt: figures.Bolt{Bolt: screw.Bolt{Thread: *named(t, "M10"), Class: "10.9", Friction: &friction}}}
}

func work(t *testing.T, ask figures.Ask) figures.Answer {
	t.Helper()
	a, err := figures.WorkOut(ask)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// First principles: the angle to the aim reaches the aim, below yield.
func TestTheAngleToTheAimLeadsThere(t *testing.T) {
	ask := alone(t)
	ask.Grip, ask.Snug = stiffness.Simple(60), 30
	ask.Angle = work(t, ask).Turned.Nominal.AngleToAim
	a := work(t, ask)
	if got, aim := a.Turned.Nominal.Preload, a.Turned.Aim; math.Abs(float64(got/aim)-1) > 1e-6 {
		t.Errorf("after %v: %v N, want the aim of %v N", ask.Angle, got, aim)
	}
	if a.Greatest < a.Turned.Low.Preload {
		t.Errorf("threads are judged at %v N, the bolt may have %v N", a.Greatest, a.Turned.Low.Preload)
	}
}

// First principles: the preload of a torque requires that torque again; the
// share of yield is exceeded nowhere in the range.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		ask := alone(t)
		low := rapid.Float64Range(0.05, 0.3).Draw(rt, "low")
		friction := screw.Same(screw.Between(low, low+rapid.Float64Range(0, 0.1).Draw(rt, "span")))
		ask.Bolt.Bolt.Friction = &friction
		ask.Torque = unit.Torque(rapid.Float64Range(1, 30).Draw(rt, "torque"))
		there := work(t, ask)
		back := ask
		back.Torque, back.Bolt.Bolt.Preload = 0, there.Result.Nominal.Preload
		if got := work(t, back).Result.Torque; math.Abs(float64(got/ask.Torque)-1) > 1e-9 {
			rt.Errorf("%v N·m come back as %v N·m", ask.Torque, got)
		}
		ask.Torque, ask.Bolt.Bolt.YieldShare = 0, 0.8
		r := work(t, ask).Result
		for _, at := range []screw.AtFriction{r.Low, r.Nominal, r.High} {
			if at.YieldShare > 0.8+1e-9 {
				rt.Errorf("at a friction of %v: %v of yield", at.Thread, at.YieldShare)
			}
			if sum := at.Split.Stretch + at.Split.Thread + at.Split.Head; math.Abs(sum-1) > 1e-9 {
				rt.Errorf("the torque goes to %v", at.Split)
			}
		}
	})
}

// First principles: beyond yield a bolt hardens up to its tensile strength,
// here 1040 over 940 MPa (ISO 898-1). A torque beyond that is rejected.
func TestATorquePastYield(t *testing.T) {
	ask := alone(t)
	ask.Torque = 20
	at := work(t, ask).Result.Nominal
	if at.Borne != at.Preload || at.Yields() {
		t.Error("a bolt that does not yield has another preload than its torque gives")
	}
	for _, c := range []struct {
		torque        unit.Torque
		yields, fails bool
	}{{at.YieldTorque * 0.999, false, false}, {at.YieldTorque * 1.001, true, false}, {at.YieldTorque * 1040 / 940 * 0.999, true, false}, {at.YieldTorque * 1040 / 940 * 1.001, true, true}, {1e4, true, true}} {
		ask.Torque = c.torque
		a, err := figures.WorkOut(ask)
		if c.fails != (err != nil) || err == nil && a.Result.Nominal.Yields() != c.yields {
			t.Errorf("%v N·m: %v, %v; want %+v", c.torque, a.Result.Nominal, err, c)
		}
		if err != nil && !strings.Contains(words.English().Error(err), "it yields at about 79.1 N·m, breaks at about 87.5 N·m (at nominal friction)") {
			t.Error(err)
		}
	}
	one := screw.Same(screw.Between(0.12, 0.12))
	ask.Bolt.Bolt.Friction, ask.Torque = &one, at.YieldTorque*1.01
	if a := work(t, ask); a.Least != 0 {
		t.Errorf("a least preload of %v N past yield", a.Least)
	}
}

// A bolt that breaks during the angle has no settlement.
func TestABrokenBoltHasNoSettlement(t *testing.T) {
	ask := alone(t)
	ask.Grip, ask.Snug = stiffness.Simple(60), 400
	if a := work(t, ask); !a.Broken() || a.Settlement != nil || a.Joint == nil || !finding.Has(a.Notes, figures.SnugBreaks) {
		t.Errorf("%+v", a)
	}
	ask.Snug, ask.Angle = 40, 3600
	if a := work(t, ask); !a.Broken() || a.Settlement != nil {
		t.Errorf("%+v", a)
	}
}

// VDI 2230-1, table A8: 1.6 to 2.0 for a torque wrench and estimated friction.
// A stated range of friction needs no other scatter.
func TestOneFigureOfFrictionScattersAllTheSame(t *testing.T) {
	ask := alone(t)
	if a := work(t, ask); a.Least != 0 {
		t.Errorf("a span of friction and a tightening factor: %v N", a.Least)
	}
	one := screw.Same(screw.Between(0.12, 0.12))
	ask.Bolt.Bolt.Friction = &one
	if a := work(t, ask); a.Alpha != 2 || math.Abs(float64(a.Greatest/a.Least)-2) > 1e-9 {
		t.Errorf("greatest %v N, least %v N, factor %v; want a factor of 2", a.Greatest, a.Least, a.Alpha)
	}
}

func TestEachLineStandsOnce(t *testing.T) {
	ask := alone(t)
	ask.Grip = stiffness.Simple(60)
	ask.Grip.TappedIn, ask.Grip.Engagement, ask.Snug, ask.Angle = "cast aluminium", 12, 40, 90
	a := work(t, ask)
	for name, lines := range map[string][]string{"notes": words.English().SayAll(a.Notes), "assumptions": words.English().SayAll(a.Assumptions), "sources": a.Sources} {
		seen := map[string]bool{}
		for _, line := range lines {
			if seen[line] {
				t.Errorf("%s: %q appears twice", name, line)
			}
			seen[line] = true
		}
		if len(lines) == 0 {
			t.Errorf("no %s", name)
		}
	}
}

// First principles: each angle has a different result for the bolt.
func TestAShortGripIsTold(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	ask := figures.Ask{Bolt: figures.Bolt{Bolt: screw.Bolt{Thread: *named(t, "M10"), Class: "12.9", Friction: &known}, Grip: stiffness.Simple(12)}, Snug: 40}
	for angle, want := range map[unit.Angle]finding.Code{360: figures.TurnBreaks, 200: figures.TurnNecks, 165: figures.TurnUsesUp} {
		ask.Angle = angle
		if a := work(t, ask); !finding.Has(a.Notes, want) {
			t.Errorf("%v: %q; want %q", angle, words.English().SayAll(a.Notes), want)
		}
	}
	ask.Snug, ask.Angle = 90, 0
	if a := work(t, ask); !finding.Has(a.Notes, figures.SnugOverAim) {
		t.Errorf("%q", words.English().SayAll(a.Notes))
	}
	ask.Snug = 200
	if a := work(t, ask); !finding.Has(a.Notes, figures.TorqueOver) {
		t.Errorf("%q", words.English().SayAll(a.Notes))
	}
}

// The stages of a file, and a question with the same torque and angle, give the
// same findings.
func TestAFileAndAQuestionAreJudgedAlike(t *testing.T) {
	for _, k := range []plan.Kind{m10(t, inAluminium, reuse(plan.ReuseOnce)), m10(t, grip(30), reuse(plan.ReuseOnce)), m10(t, grip(20), reuse(plan.ReuseYes))} {
		var judged []finding.Code
		for _, f := range figures.Judge([]figures.Bolt{staged(k)}) {
			judged = append(judged, f.Code)
		}
		a := work(t, figures.Ask{Bolt: k.Figures(), Snug: 40, Angle: 180})
		for _, code := range judged {
			if !finding.Has(a.Notes, code) {
				t.Errorf("grip %v: the file has %q, the question only %v", k.Grip, code, a.Notes)
			}
		}
		for _, f := range a.Notes {
			if f.Severity == finding.Warning && !slices.Contains(judged, f.Code) {
				t.Errorf("grip %v: the question has %q, the file only %q", k.Grip, f.Code, judged)
			}
		}
	}
}

func staged(k plan.Kind) figures.Bolt {
	b := k.Figures()
	b.Stages = []figures.Stage{
		{Number: 1, Do: figures.Tighten, Torque: unit.GivenTorque{Value: 40}}, {Number: 2, Do: figures.Advance, Angle: 90}, {Number: 3, Do: figures.Advance, Angle: 90},
	}
	return b
}
