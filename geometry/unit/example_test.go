package unit_test

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/render/words"
)

// First principles: 4 3/8 in × 25.4 mm = 111.125 mm.
func ExampleParseLength() {
	for _, text := range []string{"110 mm", "4 3/8 in", "110,5", "1,000 mm"} {
		length, err := unit.ParseLength(text, "mm")
		if err != nil {
			fmt.Println(words.English().Error(err))
			continue
		}
		fmt.Println(float64(length))
	}
	// Output:
	// 110
	// 111.125
	// 110.5
	// "1,000 mm": the comma in 1,000 can be a decimal or a thousands sign; write 1000 or 1.000
}

// First principles: a quarter turn.
func ExampleParseAngle() {
	angle, err := unit.ParseAngle("1/4 turn")
	fmt.Println(angle, err)
	// Output: 90° <nil>
}

// NIST SP 811, Appendix B.8: 1 lbf = 4.448 222 N.
func ExampleParseForce() {
	force, err := unit.ParseForce("1000 lbf")
	fmt.Printf("%.3f N %v\n", force, err)
	// Output: 4448.222 N <nil>
}

// NIST SP 811, Appendix B.8: 1 psi = 6894.757 Pa.
func ExampleParseStress() {
	stress, err := unit.ParseStress("120 ksi")
	fmt.Printf("%.4f MPa %v\n", stress, err)
	// Output: 827.3709 MPa <nil>
}

func ExampleParseDuration() {
	wait, err := unit.ParseDuration("2 hours")
	fmt.Println(wait, err)
	// Output: 2 h <nil>
}

// NIST SP 811, Appendix B.8: 1 lbf·ft = 1.355 818 N·m; 100 lbf·ft = 135.58 N·m.
func ExampleParseTorque() {
	torque, err := unit.ParseTorque("100 ft-lbs")
	fmt.Println(torque, err)
	fmt.Printf("%.2f N·m\n", float64(torque.Nm()))
	_, err = unit.ParseTorque("100")
	fmt.Println(words.English().Error(err))
	// Output:
	// 100 lbf·ft <nil>
	// 135.58 N·m
	// "100": the unit is missing; write for example 20 N·m, 15 lbf·ft, 180 lbf·in, 2 kgf·m
}

// First principles: 40 N·m is 29.50 lbf·ft and 10 N·m is 88.51 lbf·in.
func ExampleGivenTorque_Other() {
	for _, nm := range []float64{40, 10} {
		given := unit.GivenTorque{Value: nm, Unit: unit.NewtonMetre}
		fmt.Printf("%s (%s)\n", given, given.Other())
	}
	// Output:
	// 40 N·m (30 lbf·ft)
	// 10 N·m (89 lbf·in)
}

// First principles: 123.4 N·m is 91.02 lbf·ft and 12.58 kgf·m.
func ExampleTorque_OnScale() {
	torque := unit.Torque(123.4)
	fmt.Println(torque.OnScale(unit.NewtonMetre), torque.OnScale(unit.PoundForceFoot), torque.OnScale(unit.KilogramForceMetre))
	// Output: 123 N·m 91 lbf·ft 12.6 kgf·m
}
