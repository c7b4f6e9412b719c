package stiffness_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/tensiontest"
)

// must is for names that the examples know to be good.
func must(name string) thread.Thread {
	t, err := thread.Parse(name)
	if err != nil {
		panic(err)
	}
	return t
}

// Shigley 9th ed., Example 8-2: 0.095 in washer and 0.5 in steel on 0.75 in cast
// iron, 1/2 in bolt: 9.378 Mlbf/in in the members.
func ExampleOf() {
	j, err := stiffness.Of(screw.Bolt{Thread: must("1/2-20"), Class: "grade 5"}, stiffness.Grip{
		Layers:     []stiffness.Layer{{Thickness: 0.595 * unit.Length(25.4), Material: "30000 ksi"}, {Thickness: 0.75 * unit.Length(25.4), Material: "14500 ksi"}},
		FullThread: true, Method: stiffness.ThirtyDegrees,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f Mlbf/in\n", float64(j.Members)/tensiontest.MillionLbfPerIn)
	// Output: 9.378 Mlbf/in
}

// Pinned from our own output: a stretch bolt turned by two quarter turns. The
// second adds little preload, but stretches the bolt for good.
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
		fmt.Println(r.Notes[0])
	}
	// Output:
	// 90°: 48.8 kN, yields at 56°, stays 0.14 mm longer
	// the bolt is turned beyond yield and stays 0.14 mm longer (0.2 % of its weakest part): use it once
	// 180°: 50.1 kN, yields at 56°, stays 0.5 mm longer
	// the bolt is turned beyond yield and stays 0.5 mm longer (0.9 % of its weakest part): use it once
}
