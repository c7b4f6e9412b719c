package stiffness_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// must is for valid names.
func must(name string) thread.Thread {
	t, err := thread.Parse(name)
	if err != nil {
		panic(err)
	}
	return t
}

// Pinned from our own output: a stretch bolt turned by two quarter turns. The
// second adds little preload, but stretches the bolt permanently.
func ExampleTurnOn() {
	known := screw.Same(screw.Between(0.12, 0.12))
	for _, angle := range []unit.Angle{90, 180} {
		r, err := stiffness.TurnOn(stiffness.TorqueAngle{
			Bolt: screw.Bolt{Thread: must("M10"), Class: "10.9", Friction: &known},
			Grip: stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 95, Material: "cast aluminium"}}, TappedIn: "grey cast iron",
				Shank: []stiffness.Section{{Length: 45, Diameter: 10}}},
			Snug: 40, Angle: angle,
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		at := r.Nominal
		fmt.Printf("%v: %.1f kN, yields at %.0f°, stays %v longer\n", angle, float64(at.Preload)/1000, float64(at.AngleToYield), at.Lasting)
	}
	// Output:
	// 90°: 48.8 kN, yields at 56°, stays 0.14 mm longer
	// 180°: 50.1 kN, yields at 56°, stays 0.5 mm longer
}
