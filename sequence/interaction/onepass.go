package interaction

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
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

// Interaction gives the interaction matrix of one pass, in tightening order:
// column s is what step s, by one newton, has added to each bolt in the end
// (Bibel and Ezell, J. Press. Vess. Technol. 114 (1992) 439). It is L⁻ᵀ of
// M = L·diag(d)·Lᵀ, and holds while no bolt goes slack.
func (j *Joint) Interaction(order []int) (*mat.TriDense, error) {
	if err := j.checkOrder(order); err != nil {
		return nil, err
	}
	a := mat.NewTriDense(j.Len(), mat.Upper, nil)
	f := j.factorIn(order)
	column := make([]float64, j.Len())
	for s := range column {
		clear(column)
		column[s] = 1
		f.backward(column)
		for k := range s + 1 {
			a.SetTri(k, s, column[k])
		}
	}
	return a, nil
}

// onePass gives the forces after each bolt was brought to its target once, in
// the order, from a loose joint: F = L⁻ᵀ·T. It says false where some bolt goes
// slack on the way: then this closed form does not hold, and Nuts must be
// worked step by step. Forces and targets are by fastener.
func (j *Joint) onePass(order []int, targets []float64) (forces []float64, holds bool, err error) {
	if err := j.checkTargets(targets); err != nil {
		return nil, false, err
	}
	if err := j.checkOrder(order); err != nil {
		return nil, false, err
	}
	p := newPasser(j)
	holds = p.first(order, targets)
	return p.force, holds, nil
}

// onePassTargets gives the targets that end at the wanted forces after one
// pass from a loose joint, T = Lᵀ·F. They hold where no bolt goes slack.
func (j *Joint) onePassTargets(order []int, wanted []float64) ([]float64, error) {
	if err := j.checkTargets(wanted); err != nil {
		return nil, err
	}
	if err := j.checkOrder(order); err != nil {
		return nil, err
	}
	f := j.factorIn(order)
	targets := make([]float64, j.Len())
	for i, place := range order {
		targets[place] += wanted[place]
		for k, v := range f.row(i) {
			targets[order[k]] += v * wanted[place]
		}
	}
	return targets, nil
}

func (j *Joint) checkTargets(targets []float64) error {
	if len(targets) != j.Len() {
		return fmt.Errorf("%d targets for %d fasteners; allowed: one each", len(targets), j.Len())
	}
	for i, t := range targets {
		if !(t > 0) || math.IsInf(t, 1) {
			return fmt.Errorf("target %g N of fastener %d; allowed: above 0", t, i+1)
		}
	}
	return nil
}

// Rate is the share of the elastic error that a repeat pass leaves: the
// spectral radius of a Gauss–Seidel sweep in the order on K·u = T.
func (j *Joint) Rate(order []int) (float64, error) {
	if err := j.checkOrder(order); err != nil {
		return 0, err
	}
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
		return 0, fmt.Errorf("the rate of a repeat pass cannot be worked out: %w", err)
	}
	var eigen mat.Eigen
	if !eigen.Factorize(&sweep, mat.EigenNone) {
		return 0, fmt.Errorf("the rate of a repeat pass cannot be worked out: its sweep has no eigenvalues that can be found")
	}
	largest := 0.0
	for _, v := range eigen.Values(nil) {
		largest = math.Max(largest, math.Hypot(real(v), imag(v)))
	}
	return largest, nil
}
