package job_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

func m10(t *testing.T) job.TorqueRequest {
	t.Helper()
	m10, err := thread.Parse("M10")
	if err != nil {
		t.Fatal(err)
	}
	friction := tension.Same(tension.Between(0.10, 0.14))
	return job.TorqueRequest{Bolt: tension.Bolt{Thread: m10, Class: "10.9", Friction: &friction}}
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
	ask.Grip, ask.Snug = tension.Simple(60), 30
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
		friction := tension.Same(tension.Between(low, low+rapid.Float64Range(0, 0.1).Draw(rt, "span")))
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
		for _, at := range []tension.AtFriction{r.Low, r.Nominal, r.High} {
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

// First principles: beyond yield a bolt keeps about the preload at yield.
func TestABoltThatYieldsKeepsItsPreload(t *testing.T) {
	ask := m10(t)
	ask.Torque = 500
	r := work(t, ask).Result
	want := tension.PreloadAtYieldShare(1, r.Strength.Yield, ask.Bolt.Thread, r.Low.Thread, r.Equation)
	if got := job.Borne(r.Low); math.Abs(float64(got/want)-1) > 1e-9 {
		t.Errorf("%v N, want %v N", got, want)
	}
	ask.Torque = 20
	if r := work(t, ask).Result; job.Borne(r.Low) != r.Low.Preload {
		t.Error("a bolt that does not yield has another preload than its torque gives")
	}
}

// VDI 2230-1, table A8: 1.6 to 2.0 for a torque wrench and estimated friction.
// A stated span of friction needs no other scatter.
func TestOneFigureOfFrictionScattersAllTheSame(t *testing.T) {
	ask := m10(t)
	if a := work(t, ask); a.Least != 0 {
		t.Errorf("a span of friction and a tightening factor: %v N", a.Least)
	}
	one := tension.Same(tension.Between(0.12, 0.12))
	ask.Bolt.Friction = &one
	if a := work(t, ask); a.Alpha != 2 || math.Abs(float64(a.Greatest/a.Least)-2) > 1e-9 {
		t.Errorf("greatest %v N, least %v N, factor %v; want a factor of 2", a.Greatest, a.Least, a.Alpha)
	}
}

func TestEachLineStandsOnce(t *testing.T) {
	ask := m10(t)
	ask.Grip = tension.Simple(60)
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
	if f := k.Bolt.Friction; f == nil || f.Thread != tension.Between(0.1, 0.2) || f.Head != tension.Between(0.12, 0.12) {
		t.Errorf("friction %+v", f)
	}
}
