package contact

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/compliance"
)

// factorIn factors M in an order: P·M·Pᵀ = L·diag(d)·Lᵀ.
func (j *Joint) factorIn(order []int) *factor {
	f := &factor{}
	j.factorInto(f, order)
	return f
}

func (j *Joint) factorInto(f *factor, order []int) {
	f.reset()
	for _, i := range order {
		f.grow(j.whole[i], order, i)
	}
}

// Interaction returns the interaction matrix of one pass, in tightening order:
// column s is what step s, by one newton, adds to the final force of each bolt
// (Bibel and Ezell, J. Press. Vess. Technol. 114 (1992) 439). It is L⁻ᵀ of M =
// L·diag(d)·Lᵀ, and applies as long as no bolt goes slack.
func (j *Joint) Interaction(order []int) [][]float64 {
	rows := square(j.Len())
	f := j.factorIn(order)
	column := make([]float64, j.Len())
	for s := range column {
		clear(column)
		column[s] = 1
		f.backward(column)
		for k := range s + 1 {
			rows[k][s] = column[k]
		}
	}
	return rows
}

func (j *Joint) CheckTargets(targets []float64) error {
	if len(targets) != j.Len() {
		return compliance.Misuse("targets", len(targets), j.Len())
	}
	for _, t := range targets {
		if !(t > 0) || math.IsInf(t, 1) {
			return compliance.Misuse("target", t, "> 0")
		}
	}
	return nil
}

// Rate is the share of the elastic error that remains after a repeat pass: the
// spectral radius of a Gauss–Seidel sweep in the order on K·u = T.
func (j *Joint) Rate(order []int) (float64, error) {
	n, k := j.Len(), j.inverse()
	lower, upper := mat.NewDense(n, n, nil), mat.NewDense(n, n, nil)
	for a, i := range order {
		for b, c := range order {
			if b <= a {
				lower.Set(a, b, k[i][c])
			} else {
				upper.Set(a, b, k[i][c])
			}
		}
	}
	var sweep mat.Dense
	if err := sweep.Solve(lower, upper); err != nil {
		return 0, finding.Failed(NoRate, nil)
	}
	var eigen mat.Eigen
	if !eigen.Factorize(&sweep, mat.EigenNone) {
		return 0, finding.Failed(NoRate, nil)
	}
	largest := 0.0
	for _, v := range eigen.Values(nil) {
		largest = math.Max(largest, math.Hypot(real(v), imag(v)))
	}
	return largest, nil
}
