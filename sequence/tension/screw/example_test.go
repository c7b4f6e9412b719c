package screw_test

import (
	"fmt"

	"drawdown/geometry/thread"
	"drawdown/render/words"
	"drawdown/sequence/tension/screw"
)

// must is for valid names.
func must(name string) thread.Thread {
	t, err := thread.Parse(name)
	if err != nil {
		panic(err)
	}
	return t
}

// VDI 2230 (2001 edition), fine threads: M8×1 class 10.9, coefficient of
// friction 0.12: preload 29.7 kN, torque 38.3 N·m.
func ExampleTarget() {
	m8, err := thread.Parse("M8x1")
	if err != nil {
		fmt.Println(err)
		return
	}
	known := screw.Same(screw.Between(0.12, 0.12))
	r, err := screw.Target(screw.Bolt{Thread: m8, Class: "10.9", Friction: &known, Equation: screw.Linear})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f kN, %.1f N·m\n", float64(r.Preload)/1000, float64(r.Torque))
	for _, line := range words.English().SayAll(r.Assumptions) {
		fmt.Println(line)
	}
	// Output:
	// 29.7 kN, 38.3 N·m
	// friction without scatter
	// face under the head 11.63 mm (ISO 8765)
	// hole 9 mm (ISO 273)
	// 90 % of the yield stress (VDI 2230)
}

// The torque is set for the lowest friction of the range. At µ 0.08 it reaches
// the values of VDI 2230 Part 1, table A1 (M12 class 8.8: 45.2 kN, 63 N·m); the
// preloads at higher friction follow from the torque equation.
func ExampleTarget_span() {
	m12, err := thread.Parse("M12")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := screw.Target(screw.Bolt{Thread: m12, Class: "8.8", Lubricant: "engine oil"})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("set %.0f N·m\n", float64(r.Torque))
	for _, at := range []screw.AtFriction{r.Low, r.Nominal, r.High} {
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
	torque := screw.Torque(25*kip, t, 1.25*0.75*25.4, 0.15, 0.15, screw.Exact)
	fmt.Printf("%.0f lbf·in\n", float64(torque)/poundInch)
	// Output: 3551 lbf·in
}

// Shigley 9th ed., Eq. (8-31) with the proof load of ISO 898-1: a reused M10
// class 10.9 is tightened to 0.75 of 48.1 kN.
func ExampleTarget_proofShare() {
	known := screw.Same(screw.Between(0.12, 0.12))
	r, err := screw.Target(screw.Bolt{Thread: must("M10"), Class: "10.9", Friction: &known, ProofShare: 0.75})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("proof load %.1f kN, preload %.1f kN, %.1f N·m, %.0f %% of yield, K %.3f\n",
		float64(r.ProofLoad)/1000, float64(r.Preload)/1000, float64(r.Torque), r.Nominal.YieldShare*100, r.Nominal.NutFactor)
	fmt.Printf("stretch %.0f %%, thread %.0f %%, head %.0f %%\n", r.Nominal.Split.Stretch*100, r.Nominal.Split.Thread*100, r.Nominal.Split.Head*100)
	// Output:
	// proof load 48.1 kN, preload 36.1 kN, 59.2 N·m, 75 % of yield, K 0.164
	// stretch 15 %, thread 39 %, head 47 %
}

// A guide to the tables of VDI 2230: 41.9 kN at a tightening factor of 1.8 leave
// 23.3 kN.
func ExampleLeastPreload() {
	fmt.Printf("%.1f kN\n", float64(screw.LeastPreload(41900, 1.8))/1000)
	// Output: 23.3 kN
}
