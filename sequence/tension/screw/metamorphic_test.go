package screw

import (
	"math"
	"testing"

	"drawdown/geometry/unit"

	"pgregory.net/rapid"
)

// First principles: a screw is a wedge, and friction is proportional to the
// load. Twice the preload needs twice the torque, and twice the torque gives
// twice the preload, for any thread, friction and equation.
func TestDoublePreloadDoubleTorque(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		s, err := Complete(b)
		if err != nil {
			t.Fatal(err)
		}
		preload := unit.Force(rapid.Float64Range(10, 1e5).Draw(t, "preload"))
		at := func(f unit.Force) float64 {
			return float64(Torque(f, s.Thread, s.Bearing.Effective(), s.Friction.Thread.Nominal, s.Friction.Head.Nominal, s.Equation))
		}
		if once, twice := at(preload), at(2*preload); math.Abs(twice-2*once) > 1e-12*twice {
			t.Fatalf("%v takes %v N·m, and twice of it %v", preload, once, twice)
		}
		torque := unit.Torque(rapid.Float64Range(0.1, 1000).Draw(t, "torque"))
		once, err1 := AtTorque(b, torque)
		twice, err2 := AtTorque(b, 2*torque)
		if err1 != nil || err2 != nil || math.Abs(float64(twice.Preload-2*once.Preload)) > 1e-12*float64(twice.Preload) {
			t.Fatalf("%v gives %v, and twice of it %v; %v %v", torque, once.Preload, twice.Preload, err1, err2)
		}
	})
}

// First principles: with less friction, less of the torque is lost.
func TestLowerFrictionNeverLowersPreload(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		torque := unit.Torque(rapid.Float64Range(0.1, 1000).Draw(t, "torque"))
		preload := func(f Friction) unit.Force {
			b.Friction = &f
			r, err := AtTorque(b, torque)
			if err != nil {
				t.Fatal(err)
			}
			return r.Preload
		}
		lower := func(r Range) Range {
			by := rapid.Float64Range(0.5, 1).Draw(t, "by") // of 0.02 or more: 0.01 is the least
			return Range{by * r.Low, by * r.Nominal, by * r.High}
		}
		f := *b.Friction
		eased := Friction{lower(f.Thread), lower(f.Head)}
		if before, after := preload(f), preload(eased); after < before {
			t.Fatalf("%v: %v at %v, %v at %v", torque, before, f, after, eased)
		}
	})
}
