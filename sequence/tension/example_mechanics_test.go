package tension_test

import (
	"fmt"
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

const (
	exampleKsi       = 6.894757293168361            // MPa
	exampleLbfPerIn  = 4.4482216152605 / 25.4       // N/mm
	examplePound     = 4.4482216152605              // N
	examplePoundInch = 0.11298482902761668          // N·m
	exampleInch      = unit.Length(25.4)            // mm
	exampleMillion   = 1e6 * exampleLbfPerIn        // N/mm
	exampleSteel     = 30000 * exampleKsi           // MPa
	exampleIron      = 14500 * exampleKsi           // MPa
	exampleCopper    = 16000 * exampleKsi           // MPa
	exampleQuarter   = 90                           // degrees
	exampleNut       = 0.052 * float64(exampleInch) // mm
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
func ExampleStiffnessOf() {
	j, err := tension.StiffnessOf(tension.Bolt{Thread: must("1/2-20"), Class: "grade 5"}, tension.Grip{
		Layers:     []tension.Layer{{Thickness: 0.595 * exampleInch, Material: "30000 ksi"}, {Thickness: 0.75 * exampleInch, Material: "14500 ksi"}},
		FullThread: true, Method: tension.ThirtyDegrees,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f Mlbf/in\n", float64(j.Members)/exampleMillion)
	// Output: 9.378 Mlbf/in
}

// Shigley 9th ed., Example 8-2: the frusta of steel and of cast iron below it.
func ExampleFrustumResilience() {
	thirty := math.Tan(math.Pi / 6)
	k2 := tension.FrustumResilience(0.0775*exampleInch, 1.437*exampleInch, 0.5*exampleInch, thirty, exampleIron).Stiffness()
	k3 := tension.FrustumResilience(0.6725*exampleInch, 0.75*exampleInch, 0.5*exampleInch, thirty, exampleIron).Stiffness()
	fmt.Printf("%.1f and %.2f Mlbf/in\n", float64(k2)/exampleMillion, float64(k3)/exampleMillion)
	// Output: 285.5 and 14.15 Mlbf/in
}

// Shigley 9th ed., Example 8-2: two steel frusta, 14.64 Mlbf/in.
func ExampleFrustaStiffness() {
	fmt.Printf("%.2f Mlbf/in\n", float64(tension.FrustaStiffness(exampleSteel, 0.5*exampleInch, 1.345*exampleInch))/exampleMillion)
	// Output: 14.64 Mlbf/in
}

// Instructor's solution manual to Shigley (8th ed.), problem 8-22: 466.8 MN/m.
func ExampleShankAndThreadStiffness() {
	fmt.Printf("%.1f MN/m\n", float64(tension.ShankAndThreadStiffness(113, 84.3, 30, 15, 207e3))/1000)
	// Output: 466.8 MN/m
}

// Gere, Mechanics of Materials (5th ed.), Problem 2.5-17: steel bolt in a copper
// tube, a quarter turn: 3000 lbf.
func ExamplePreloadOfAngle() {
	rod := func(areaIn2 float64) unit.Length { return exampleInch * unit.Length(math.Sqrt(areaIn2*4/math.Pi)) }
	bolt := tension.RodResilience(16*exampleInch, rod(0.2), exampleSteel).Stiffness()
	tube := tension.RodResilience(16*exampleInch, rod(0.6), exampleCopper).Stiffness()
	force := tension.PreloadOfAngle(exampleQuarter, exampleNut, bolt, tube)
	fmt.Printf("%.0f lbf\n", float64(force)/examplePound)
	// Output: 3000 lbf
}

// Shigley 9th ed., Example 8-3, part b: K 0.2, 25 kip on 3/4 in: 3750 lbf·in.
func ExampleTorqueByNutFactor() {
	fmt.Printf("%.0f lbf·in\n", float64(tension.TorqueByNutFactor(25000*examplePound, must("3/4-16 UNF"), 0.2))/examplePoundInch)
	// Output: 3750 lbf·in
}

// US Army TM 1-1500-204-23-9: 300 lbf·in with 4 in of extension on 10 in: set
// 214 lbf·in.
func ExampleWrenchSetting() {
	fmt.Printf("%.0f lbf·in\n", float64(tension.WrenchSetting(300*examplePoundInch, 10*exampleInch, 4*exampleInch, 0))/examplePoundInch)
	// Output: 214 lbf·in
}

// US Army TM 9-254: 60 lbf·in on 12 in with 2 in of extension: 70 lbf·in.
func ExampleFastenerTorque() {
	fmt.Printf("%.0f lbf·in\n", float64(tension.FastenerTorque(60*examplePoundInch, 12*exampleInch, 2*exampleInch, 0))/examplePoundInch)
	// Output: 70 lbf·in
}

// A guide to the tables of VDI 2230: 41.9 kN at a tightening factor of 1.8 leave
// 23.3 kN.
func ExampleLeastPreload() {
	fmt.Printf("%.1f kN\n", float64(tension.LeastPreload(41900, 1.8))/1000)
	// Output: 23.3 kN
}

// Shigley 9th ed., Eq. (8-31) with the proof load of ISO 898-1: a reused M10
// class 10.9 is tightened to 0.75 of 48.1 kN.
func ExampleTarget_proofShare() {
	known := tension.Same(tension.Between(0.12, 0.12))
	r, err := tension.Target(tension.Bolt{Thread: must("M10"), Class: "10.9", Friction: &known, ProofShare: 0.75})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("proof load %.1f kN, preload %.1f kN, %.1f N·m, %.0f %% of yield, K %.3f\n",
		float64(r.ProofLoad)/1000, float64(r.Preload)/1000, float64(r.Torque), r.YieldUsed*100, r.NutFactor)
	fmt.Printf("stretch %.0f %%, thread %.0f %%, head %.0f %%\n", r.Split.Stretch*100, r.Split.Thread*100, r.Split.Head*100)
	// Output:
	// proof load 48.1 kN, preload 36.1 kN, 59.2 N·m, 75 % of yield, K 0.164
	// stretch 15 %, thread 39 %, head 47 %
}

// Pinned from our own output: a stretch bolt turned by two quarter turns. The
// second adds little preload, but stretches the bolt for good.
func ExampleTurnOn() {
	known := tension.Same(tension.Between(0.12, 0.12))
	for _, angle := range []unit.Angle{90, 180} {
		r, err := tension.TurnOn(tension.TorqueAngle{
			Bolt: tension.Bolt{Thread: must("M10"), Class: "10.9", Friction: &known},
			Grip: tension.Grip{Layers: []tension.Layer{{Thickness: 95, Material: "cast aluminium"}}, TappedIn: "grey cast iron",
				Shank: []tension.Section{{Length: 45, Diameter: 10}}},
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

// Pinned from our own output: a soft tapped hole, and an insert in it.
func ExampleStrip() {
	e := tension.Engagement{Bolt: tension.Bolt{Thread: must("M8"), Class: "10.9", Lubricant: "oil"}, Length: 12, Material: "cast aluminium"}
	for _, insert := range []*tension.Insert{nil, {Outer: 10, PitchMm: 1.25}} {
		e.Insert = insert
		r, err := tension.Strip(e)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s; it would take %.1f mm\n", r.First, float64(r.ForBolt))
	}
	// Output:
	// the tapped thread strips; it would take 20.5 mm
	// the tapped thread strips; it would take 16.5 mm
}

// First principles: 80 N·m · 400/460 = 69.6 N·m, 69.5 N·m on the scale.
func ExampleSetWrench() {
	r, err := tension.SetWrench(tension.WrenchWork{
		Torque: 80, Length: 400, Adapter: 60,
		Wrenches: []tension.Wrench{{Name: "No. 4", Min: 10, Max: 100, Division: 0.5}, {Name: "No. 7", Min: 40, Max: 200, Division: 1}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("set %s to %s, ±%.0f %%\n", r.Wrench.Name, r.Scale, r.ToleranceShare*100)
	// Output: set No. 4 to 69.5 N·m, ±4 %
}
