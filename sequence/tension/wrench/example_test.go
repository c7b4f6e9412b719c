package wrench_test

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
	"drawdown/sequence/tension/wrench"
)

// US Army TM 1-1500-204-23-9: 300 lbf·in with 4 in of extension on 10 in: set
// 214 lbf·in.
func ExampleSetting() {
	fmt.Printf("%.0f lbf·in\n", float64(wrench.Setting(300*tensiontest.PoundInch, 10*unit.Length(25.4), 4*unit.Length(25.4), 0))/tensiontest.PoundInch)
	// Output: 214 lbf·in
}

// US Army TM 9-254: 60 lbf·in on 12 in with 2 in of extension: 70 lbf·in.
func ExampleFastenerTorque() {
	fmt.Printf("%.0f lbf·in\n", float64(wrench.FastenerTorque(60*tensiontest.PoundInch, 12*unit.Length(25.4), 2*unit.Length(25.4), 0))/tensiontest.PoundInch)
	// Output: 70 lbf·in
}

// First principles: 80 N·m · 400/460 = 69.6 N·m, 69.5 N·m on the scale.
func ExampleSet() {
	r, err := wrench.Set(wrench.Work{
		Torque: 80, Length: 400, Adapter: 60,
		Wrenches: []wrench.Wrench{{Name: "No. 4", Min: 10, Max: 100, Division: 0.5}, {Name: "No. 7", Min: 40, Max: 200, Division: 1}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("set %s to %s, ±%.0f %%\n", r.Wrench.Name, r.Scale, r.ToleranceShare*100)
	// Output: set No. 4 to 69.5 N·m, ±4 %
}
