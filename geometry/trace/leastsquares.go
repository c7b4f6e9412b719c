package trace

import "gonum.org/v1/gonum/mat"

// equations are the normal equations of a least squares fit.
type equations struct {
	normal *mat.SymDense
	right  *mat.VecDense
}

func newEquations(unknowns int) equations {
	return equations{mat.NewSymDense(unknowns, nil), mat.NewVecDense(unknowns, nil)}
}

// add takes in one observation: its row of the design matrix, its value and its
// weight.
func (e equations) add(row []float64, value, weight float64) {
	normal, right := e.normal.RawSymmetric(), e.right.RawVector().Data
	for i := range row {
		above := normal.Data[i*normal.Stride:]
		for k := i; k < len(row); k++ {
			above[k] += weight * row[i] * row[k]
		}
		right[i] += weight * row[i] * value
	}
}

// solve returns the unknowns; not ok where the observations leave them open.
func (e equations) solve() (unknowns []float64, ok bool) {
	var factors mat.Cholesky
	var x mat.VecDense
	if !factors.Factorize(e.normal) || factors.SolveVecTo(&x, e.right) != nil {
		return nil, false
	}
	return x.RawVector().Data, true
}
