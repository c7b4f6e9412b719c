package tension_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/sequence/tension"
)

// VDI 2230 (2001 edition), fine threads: M8×1 class 10.9, coefficient of
// friction 0.12: preload 29.7 kN, torque 38.3 N·m.
func ExampleTarget() {
	m8, err := thread.Parse("M8x1")
	if err != nil {
		fmt.Println(err)
		return
	}
	known := tension.Same(tension.Between(0.12, 0.12))
	r, err := tension.Target(tension.Bolt{Thread: m8, Class: "10.9", Friction: &known, Equation: tension.Linear})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kN, %.1f N·m\n", float64(r.Preload)/1000, float64(r.Torque))
	for _, line := range r.Assumptions {
		fmt.Println(line)
	}
	// Output:
	// 29.7 kN, 38.3 N·m
	// friction without scatter, as stated, assumed
	// under-head bearing face 11.63 mm (ISO 8765 M8), assumed
	// hole 9 mm (ISO 273 medium), assumed
	// 90 % of the yield stress used (VDI 2230), assumed
}

// The torque is set for the lowest friction of the span. At µ 0.08 it reaches
// the values of VDI 2230 Part 1, table A1 (M12 class 8.8: 45.2 kN, 63 N·m); what
// is left at higher friction follows from the torque equation.
func ExampleTarget_span() {
	m12, err := thread.Parse("M12")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := tension.Target(tension.Bolt{Thread: m12, Class: "8.8", Lubricant: "engine oil"})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("set %.0f N·m\n", float64(r.Torque))
	for _, at := range []tension.AtFriction{r.Low, r.Nominal, r.High} {
		fmt.Printf("µ %.2f: %.1f kN, %.0f %% of yield\n", at.Thread, float64(at.Preload)/1000, at.YieldShare*100)
	}
	// Output:
	// set 63 N·m
	// µ 0.08: 45.2 kN, 90 % of yield
	// µ 0.12: 32.2 kN, 67 % of yield
	// µ 0.16: 25.1 kN, 55 % of yield
}

// Shigley 9th ed., Example 8-3: 3/4-16 UNF at 25 kip, both coefficients 0.15,
// collar 1.25 d: 3551 lbf·in.
func ExampleTorque() {
	t, err := thread.Parse("3/4-16 UNF")
	if err != nil {
		fmt.Println(err)
		return
	}
	const kip, poundInch = 4448.2216152605, 0.11298482902761668
	torque := tension.Torque(25*kip, t, 1.25*0.75*25.4, 0.15, 0.15, tension.Exact)
	fmt.Printf("%.0f lbf·in\n", float64(torque)/poundInch)
	// Output: 3551 lbf·in
}

// ISO 898-1: class 8.8 has a proof stress of 600 MPa over M16.
func ExampleParseClass() {
	m20, err := thread.Parse("M20")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := tension.ParseClass("8.8", m20)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: proof %v MPa, yield %v MPa, tensile %v MPa\n", s.Name, s.Proof, s.Yield, s.Tensile)
	// Output: class 8.8: proof 600 MPa, yield 660 MPa, tensile 830 MPa
}
