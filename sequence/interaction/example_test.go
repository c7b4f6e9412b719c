package interaction_test

import (
	"fmt"
	"log"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/sequence/interaction"
	"drawdown/sequence/tension/stiffness"
)

// Two bolts, the first of which loses a third to the second (first principles:
// F₁ = 1 − ρ^(2p−1) after p passes).
func ExampleNuts() {
	j, err := interaction.NewJoint(mat.NewSymDense(2, []float64{0.5, 0.35, 0.35, 0.5}), []stiffness.Resilience{0.5, 0.5})
	if err != nil {
		log.Fatal(err)
	}
	nuts := j.Loose()
	for range 2 {
		for i := range 2 {
			if err := nuts.Tighten(i, 1); err != nil {
				log.Fatal(err)
			}
		}
		fmt.Printf("%.4f\n", nuts.Forces())
	}
	// Output:
	// [0.6500 1.0000]
	// [0.9571 1.0000]
}

// A row of five bolts on an aluminium rail, from one end to the other
// (pinned from our own output).
func ExampleModel_Predict() {
	var at []geometry.Point
	for i := range 5 {
		at = append(at, geometry.Point{X: 50 * float64(i)})
	}
	rail := interaction.Part{Elastic: 70000, Poisson: 0.33, Thickness: 12}
	composite, err := interaction.Composite.StiffnessMPaPerMm()
	if err != nil {
		log.Fatal(err)
	}
	m := interaction.Model{
		At:         at,
		Kernel:     interaction.Row{BendingNmm2: rail.BendingNmm2(24), WidthMm: 24, LengthMm: 230, StartMm: 15},
		Foundation: composite,
		Own:        []stiffness.Resilience{4e-6, 4e-6, 4e-6, 4e-6, 4e-6},
	}
	targets := []float64{16000, 16000, 16000, 16000, 16000}
	order := []int{0, 1, 2, 3, 4}
	p, err := m.Predict([]interaction.Pass{
		interaction.ToForces(order, targets, 0.5),
		interaction.ToForces(order, targets, 1),
	}, targets)
	if err != nil {
		log.Fatal(err)
	}
	for i := range at {
		b := p.Percent(1, i)
		fmt.Printf("bolt %d: %.0f %% (%.0f to %.0f %%)\n", i+1, b.Nominal, b.Low, b.High)
	}
	fmt.Println(p.Class().Advice())
	// Output:
	// bolt 1: 101 % (100 to 101 %)
	// bolt 2: 99 % (94 to 101 %)
	// bolt 3: 99 % (94 to 100 %)
	// bolt 4: 100 % (97 to 101 %)
	// bolt 5: 100 % (100 to 100 %)
	// cross-talk is noticeable: add one repeat pass
}
