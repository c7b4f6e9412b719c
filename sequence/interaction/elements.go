package interaction

import (
	"errors"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// elements is a banded stiffness matrix of finite elements.
type elements struct {
	unknowns, reach int
	upper           []float64 // row i holds columns i … i+reach
}

func newElements(unknowns, reach int) *elements {
	reach = min(reach, unknowns-1)
	return &elements{unknowns, reach, make([]float64, unknowns*(reach+1))}
}

func (e *elements) add(i, j int, stiffness float64) {
	if j >= i {
		e.upper[i*(e.reach+1)+j-i] += stiffness
	}
}

func (e *elements) diagonal(i int) float64 { return e.upper[i*(e.reach+1)] }

// bare says that no element holds an unknown.
func (e *elements) bare(i int) bool { return e.diagonal(i) == 0 }

// fixBare gives the unknowns that no element holds a stiffness of their own;
// no load acts on them.
func (e *elements) fixBare() {
	for i := range e.unknowns {
		if e.bare(i) {
			e.upper[i*(e.reach+1)] = 1
		}
	}
}

// share is the part of a unit load that falls on an unknown.
type share struct {
	unknown int
	of      float64
}

var errAfloat = errors.New("the part hangs on nothing: its gasket is too small or too soft to hold it; allowed: a foundation under the part")

// leastPivot tells round-off from a stiffness: what is left of an unknown's own
// stiffness once all before it have given way. Plates a million times stiffer
// than any real one stay above it.
const leastPivot = 1e-14

// factor overwrites the stiffness with its Cholesky factor, K = UᵀU. The
// routine below mat.BandCholesky is called, which estimates no condition
// number: that takes several times as long as the factor.
func (e *elements) factor() (blas64.TriangularBand, error) {
	e.fixBare()
	own := make([]float64, e.unknowns)
	for i := range own {
		own[i] = e.diagonal(i)
	}
	u, ok := lapack64.Pbtrf(blas64.SymmetricBand{Uplo: blas.Upper, N: e.unknowns, K: e.reach, Data: e.upper, Stride: e.reach + 1})
	if !ok {
		return u, errAfloat
	}
	for i, stiffness := range own {
		if left := e.diagonal(i); !(left*left > leastPivot*stiffness) {
			return u, errAfloat
		}
	}
	return u, nil
}

// compliance gives what the places of the loads give way, for a unit load at
// each: C = Bᵀ K⁻¹ B = (U⁻ᵀB)ᵀ (U⁻ᵀB).
func (e *elements) compliance(loads [][]share) (*mat.SymDense, error) {
	u, err := e.factor()
	if err != nil {
		return nil, err
	}
	halfway := e.halfway(u, loads)
	c := mat.NewSymDense(len(loads), nil)
	for i := range loads {
		for j := i; j < len(loads); j++ {
			c.SetSym(i, j, floats.Dot(halfway[i], halfway[j]))
		}
	}
	return c, nil
}

// halfway solves Uᵀy = B for all loads at once: each row of the factor is read
// once, while it is at hand, and not once for each load.
func (e *elements) halfway(u blas64.TriangularBand, loads [][]share) [][]float64 {
	list := make([][]float64, len(loads))
	for i, load := range loads {
		list[i] = make([]float64, e.unknowns)
		for _, s := range load {
			list[i][s.unknown] += s.of
		}
	}
	for k := range e.unknowns {
		row := u.Data[k*u.Stride : k*u.Stride+min(u.K, e.unknowns-1-k)+1]
		for _, y := range list {
			if y[k] == 0 { // the load stands further on
				continue
			}
			y[k] /= row[0]
			floats.AddScaled(y[k+1:k+len(row)], -y[k], row[1:])
		}
	}
	return list
}
