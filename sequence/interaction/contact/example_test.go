package contact_test

import (
	"fmt"
	"log"

	"gonum.org/v1/gonum/mat"

	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/tension/stiffness"
)

// Two bolts, the first of which loses a third to the second (first principles:
// F₁ = 1 − ρ^(2p−1) after p passes).
func ExampleNuts() {
	j, err := contact.NewJoint(mat.NewSymDense(2, []float64{0.5, 0.35, 0.35, 0.5}), []stiffness.Resilience{0.5, 0.5})
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
