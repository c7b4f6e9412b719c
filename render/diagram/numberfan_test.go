package diagram

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Expected positions calculated by hand: values pushed together keep their
// mean.
func TestSpacedOut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ values, want []float64 }{
		{nil, []float64{}},
		{[]float64{1, 4, 9}, []float64{1, 4, 9}},
		{[]float64{0, 1, 10}, []float64{-0.5, 1.5, 10}},
		{[]float64{0, 0, 0}, []float64{-2, 0, 2}},
		{[]float64{0, 1, 2.5}, []float64{-5. / 6, 7. / 6, 19. / 6}},
	} {
		if diff := cmp.Diff(c.want, spacedOut(c.values, 2), cmpopts.EquateApprox(0, 1e-9)); diff != "" {
			t.Errorf("%v: %s", c.values, diff)
		}
	}
}

// Calculated by hand: nothing moves towards 0.
func TestPushOut(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ values, want []float64 }{
		{[]float64{}, []float64{}},
		{[]float64{-4, -1, 1, 4}, []float64{-4, -1, 1, 4}},
		{[]float64{-2, -1.5, 0, 1, 5}, []float64{-3.75, -1.75, 0.25, 2.25, 5}},
		{[]float64{1, 2}, []float64{1, 3}},
		{[]float64{-2, -1}, []float64{-3, -1}},
	} {
		pushOut(c.values, 2)
		if diff := cmp.Diff(c.want, c.values, cmpopts.EquateApprox(0, 1e-9)); diff != "" {
			t.Error(diff)
		}
	}
}
