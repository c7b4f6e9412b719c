package job_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

func m10(t *testing.T) job.TorqueRequest {
	t.Helper()
	m10, err := thread.Parse("M10")
	if err != nil {
		t.Fatal(err)
	}
	friction := screw.Same(screw.Between(0.10, 0.14))
	return job.TorqueRequest{Bolt: screw.Bolt{Thread: m10, Class: "10.9", Friction: &friction}}
}

func work(t *testing.T, ask job.TorqueRequest) job.TorqueAnswer {
	t.Helper()
	a, err := job.WorkOutTorque(ask)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// First principles: the angle to the aim leads to the aim, below yield.
func TestTheAngleToTheAimLeadsThere(t *testing.T) {
	ask := m10(t)
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

// First principles: what a torque gives asks for that torque again; the share
// of yield is exceeded nowhere in the span.
func TestThereAndBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		ask := m10(t)
		low := rapid.Float64Range(0.05, 0.3).Draw(rt, "low")
		friction := screw.Same(screw.Between(low, low+rapid.Float64Range(0, 0.1).Draw(rt, "span")))
		ask.Bolt.Friction = &friction
		ask.Torque = unit.Torque(rapid.Float64Range(1, 30).Draw(rt, "torque"))
		there := work(t, ask)
		back := ask
		back.Torque, back.Bolt.Preload = 0, there.Result.Nominal.Preload
		if got := work(t, back).Result.Torque; math.Abs(float64(got/ask.Torque)-1) > 1e-9 {
			rt.Errorf("%v N·m come back as %v N·m", ask.Torque, got)
		}
		ask.Torque, ask.Bolt.YieldShare = 0, 0.8
		r := work(t, ask).Result
		for _, at := range []screw.AtFriction{r.Low, r.Nominal, r.High} {
			if at.YieldShare > 0.8+1e-9 {
				rt.Errorf("at a friction of %v: %v of yield", at.Thread, at.YieldShare)
			}
			if sum := at.Split.Stretch + at.Split.Thread + at.Split.Head; math.Abs(sum-1) > 1e-9 {
				rt.Errorf("the torque goes to %v", at.Split)
			}
		}
		span := job.SpanOf(r.Low.Preload, r.Nominal.Preload, r.High.Preload)
		if !(span.Low <= span.Nominal && span.Nominal <= span.High) {
			rt.Errorf("%+v does not rise", span)
		}
	})
}

// First principles: beyond yield a bolt hardens as far as its tensile strength,
// here 1040 over 940 MPa (ISO 898-1); a torque beyond that is refused.
func TestATorquePastYield(t *testing.T) {
	ask := m10(t)
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
		a, err := job.WorkOutTorque(ask)
		if c.fails != (err != nil) || err == nil && a.Result.Nominal.Yields() != c.yields {
			t.Errorf("%v N·m: %v, %v; want %+v", c.torque, a.Result.Nominal, err, c)
		}
		if err != nil && !strings.Contains(err.Error(), "it yields at about 79.1 N·m, breaks at about 87.5 N·m (at nominal friction)") {
			t.Error(err)
		}
	}
	one := screw.Same(screw.Between(0.12, 0.12))
	ask.Bolt.Friction, ask.Torque = &one, at.YieldTorque*1.01
	if a := work(t, ask); a.Least != 0 {
		t.Errorf("a least preload of %v N past yield", a.Least)
	}
}

// A bolt that breaks as it is turned on has no settlement.
func TestABrokenBoltHasNoSettlement(t *testing.T) {
	ask := m10(t)
	ask.Grip, ask.Snug = stiffness.Simple(60), 400
	if a := work(t, ask); !a.Broken() || a.Settlement != nil || a.Joint == nil || len(a.Notes) != 1 {
		t.Errorf("%+v", a)
	}
	ask.Snug, ask.Angle = 40, 3600
	if a := work(t, ask); !a.Broken() || a.Settlement != nil {
		t.Errorf("%+v", a)
	}
}

// VDI 2230-1, table A8: 1.6 to 2.0 for a torque wrench and estimated friction.
// A stated span of friction needs no other scatter.
func TestOneFigureOfFrictionScattersAllTheSame(t *testing.T) {
	ask := m10(t)
	if a := work(t, ask); a.Least != 0 {
		t.Errorf("a span of friction and a tightening factor: %v N", a.Least)
	}
	one := screw.Same(screw.Between(0.12, 0.12))
	ask.Bolt.Friction = &one
	if a := work(t, ask); a.Alpha != 2 || math.Abs(float64(a.Greatest/a.Least)-2) > 1e-9 {
		t.Errorf("greatest %v N, least %v N, factor %v; want a factor of 2", a.Greatest, a.Least, a.Alpha)
	}
}

func TestEachLineStandsOnce(t *testing.T) {
	ask := m10(t)
	ask.Grip = stiffness.Simple(60)
	ask.Grip.TappedIn, ask.Grip.Engagement, ask.Snug, ask.Angle = "cast aluminium", 12, 40, 90
	a := work(t, ask)
	for name, lines := range map[string][]string{"notes": a.Notes, "assumptions": a.Assumptions, "sources": a.Sources} {
		seen := map[string]bool{}
		for _, line := range lines {
			if seen[line] {
				t.Errorf("%s: %q stands there twice", name, line)
			}
			seen[line] = true
		}
		if len(lines) == 0 {
			t.Errorf("no %s", name)
		}
	}
}

func TestKindsOfAPattern(t *testing.T) {
	text := strings.Replace(lid, "title:", `kinds: {bolt: {thread: M8, class: "8.8", grip: 40 mm, length: 60 mm, into: cast iron, engagement: 15 mm, friction: {thread: [0.1, 0.2], head: 0.12}, hole: 9 mm, washer: 16 mm}}
title:`, 1)
	text = strings.Replace(text, "id: M}", "id: M, kind: bolt}", 1)
	title, kinds, problems, err := job.Kinds("-", strings.NewReader(text))
	if err != nil || problems.Stops() || len(kinds) != 1 || title != "Lid, no. 4" {
		t.Fatalf("%q, %v, %v, %v", title, kinds, problems, err)
	}
	k := kinds[0]
	if k.Kind != "bolt" || k.Bolt.Thread.Name != "M8×1.25" || k.Bolt.Class != "8.8" || k.Bolt.Hole != 9 || k.Bolt.WasherFace != 16 ||
		k.Grip.Layers[0].Thickness != 40 || k.Grip.BoltLength != 60 || k.Grip.TappedIn != "cast iron" || k.Grip.Engagement != 15 {
		t.Errorf("%+v", k)
	}
	if f := k.Bolt.Friction; f == nil || f.Thread != screw.Between(0.1, 0.2) || f.Head != screw.Between(0.12, 0.12) {
		t.Errorf("friction %+v", f)
	}
}
