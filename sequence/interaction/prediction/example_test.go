package prediction_test

import (
	"fmt"
	"log"

	"drawdown/geometry"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/tension/stiffness"
)

// A row of five bolts on an aluminium rail, from one end to the other
// (pinned from our own output).
func ExampleModel_Predict() {
	var at []geometry.Point
	for i := range 5 {
		at = append(at, geometry.Point{X: 50 * float64(i)})
	}
	rail := compliance.Part{Elastic: 70000, Poisson: 0.33, Thickness: 12}
	composite, err := compliance.Composite.StiffnessMPaPerMm()
	if err != nil {
		log.Fatal(err)
	}
	m := prediction.Model{Settled: setup.Settled{
		At:         at,
		Kernel:     compliance.Row{BendingNmm2: rail.BendingNmm2(24), WidthMm: 24, LengthMm: 230, StartMm: 15},
		Foundation: composite,
		Own:        []stiffness.Resilience{4e-6, 4e-6, 4e-6, 4e-6, 4e-6},
	}}
	targets := []float64{16000, 16000, 16000, 16000, 16000}
	order := []int{0, 1, 2, 3, 4}
	p, err := m.Predict([]contact.Pass{
		contact.ToForces(order, targets, 0.5),
		contact.ToForces(order, targets, 1),
	}, targets)
	if err != nil {
		log.Fatal(err)
	}
	for i := range at {
		b := p.Over(func(r prediction.Run) float64 { return r.Percent(1)[i] })
		fmt.Printf("bolt %d: %.0f %% (%.0f to %.0f %%)\n", i+1, b.Nominal, b.Low, b.High)
	}
	fmt.Println(p.Class())
	// Output:
	// bolt 1: 101 % (100 to 101 %)
	// bolt 2: 99 % (94 to 101 %)
	// bolt 3: 99 % (94 to 100 %)
	// bolt 4: 100 % (97 to 101 %)
	// bolt 5: 100 % (100 to 100 %)
	// noticeable
}
