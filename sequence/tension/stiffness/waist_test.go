package stiffness

import (
	"errors"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

// A stated shank stretches over the plain part of the bolt: springs in series,
// from first principles.
func TestShankStretchesAsStated(t *testing.T) {
	m10, known := tensiontest.Thread(t, "M10"), screw.Same(screw.Between(0.12, 0.12))
	bolt := screw.Bolt{Thread: m10, Class: "10.9", Friction: &known}
	grip := Simple(95)
	grip.BoltLength, grip.Thread = 120, 30
	plain, err := Of(bolt, grip)
	if err != nil {
		t.Fatal(err)
	}
	bolt.Shank = 7.3
	waisted, err := Of(bolt, grip)
	if err != nil {
		t.Fatal(err)
	}
	const length = 90 // 120 mm less 30 mm of thread
	more := RodResilience(length, 7.3, steelBolt) - RodResilience(length, 10, steelBolt)
	tensiontest.Near(t, "more", float64(waisted.Bolt.Resilience()-plain.Bolt.Resilience()), float64(more), 1e-9)
}

// The greatest preload of a turn is the one at which the torque breaks the
// bolt, whatever its shape: two ways to one figure.
func TestWaistHasOneGreatestPreload(t *testing.T) {
	m10, known := tensiontest.Thread(t, "M10"), screw.Same(screw.Between(0.12, 0.12))
	for _, shank := range []unit.Length{0, 7.3, 9.03} {
		bolt := screw.Bolt{Thread: m10, Class: "10.9", Friction: &known, Shank: shank}
		r := mustTurn(t, TorqueAngle{Bolt: bolt, Grip: Simple(60), Snug: 20, Angle: 1500})
		torque, err := screw.AtTorque(bolt, 40)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, "greatest", float64(r.Nominal.Peak), float64(torque.Nominal.Greatest), 1e-9)
	}
}

func TestShankNeedsPlace(t *testing.T) {
	m10 := tensiontest.Thread(t, "M10")
	bolt := screw.Bolt{Thread: m10, Class: "10.9", Shank: 7.3}
	full, threaded := Simple(60), Simple(60)
	full.FullThread = true
	threaded.BoltLength, threaded.Thread = 80, 80
	for _, grip := range []Grip{full, threaded} {
		if _, err := Of(bolt, grip); !errors.Is(err, ShankOnFullThread) {
			t.Errorf("%+v: %v", grip, err)
		}
	}
	// A short bolt has its waist all the same: at least half of the grip.
	short := Simple(10)
	j, err := Of(bolt, short)
	if err != nil || j.FreeThread != 5 {
		t.Errorf("%v %v", j.FreeThread, err)
	}
}
