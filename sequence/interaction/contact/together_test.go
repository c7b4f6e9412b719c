package contact

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/sequence/tension/stiffness"
)

// First principles: bolts that go down at once all end at their force, while one
// that follows another takes load from it.
func TestTogether(t *testing.T) {
	t.Parallel()
	j, err := NewJoint(mat.NewSymDense(2, []float64{3e-6, 2e-6, 2e-6, 3e-6}), []stiffness.Resilience{2e-6, 2e-6})
	if err != nil {
		t.Fatal(err)
	}
	for together, want := range map[int]float64{0: 1000 * (1 - 2./5), 2: 1000} {
		after, err := j.Loose().Work([]Pass{{{Fastener: 0, ForceN: 1000, Together: together}, {Fastener: 1, ForceN: 1000}}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := after[0].ForcesN[0]; math.Abs(got-want) > 0.05*1000 || after[0].ForcesN[1] != 1000 {
			t.Errorf("%d at once: %v, want %v and 1000", together, after[0].ForcesN, want)
		}
	}
}
