// Package contact calculates the forces in the bolts of a joint as their nuts
// are turned: which bolts touch, which go slack, how much load each turn takes
// from the others. It does not know gaskets by name or plans. It may import
// bounds and compliance.
package contact

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/tension/stiffness"
)

// Joint is how the bolts of a joint act on each other: the compliance of part
// and gasket between them, and that of each bolt. It is immutable and safe for
// concurrent use.
type Joint struct {
	part  [][]float64 // C, mm/N
	whole [][]float64 // M = diag(own) + C, mm/N

	inverse func() [][]float64 // K = M⁻¹, N/mm, computed once
}

// NewJoint combines the compliance of part and gasket at the bolts with that of
// each bolt and of the members compressed under its head. The error names the
// bolt that does not fit.
func NewJoint(given mat.Symmetric, own []stiffness.Resilience) (*Joint, error) {
	n := given.SymmetricDim()
	j := &Joint{part: square(n), whole: square(n)}
	for i := range n {
		if o := float64(own[i]); !(o >= 0) || math.IsInf(o, 1) {
			return nil, compliance.Misuse("own", o, ">= 0")
		}
		for k := range n {
			c := given.At(i, k)
			if math.IsNaN(c) || math.IsInf(c, 0) {
				return nil, compliance.Misuse("compliance", c, "number")
			}
			j.part[i][k], j.whole[i][k] = c, c
		}
		j.whole[i][i] += float64(own[i])
	}
	if !j.stable() {
		return nil, finding.Failed(CannotStand, nil)
	}
	j.inverse = sync.OnceValue(j.invert)
	return j, nil
}

func square(n int) [][]float64 {
	all := make([]float64, n*n)
	rows := make([][]float64, n)
	for i := range rows {
		rows[i] = all[i*n : (i+1)*n : (i+1)*n]
	}
	return rows
}

// stable reports whether M is positive definite, so that every step has a
// unique result.
func (j *Joint) stable() bool {
	f := j.factorIn(identity(j.Len()))
	for i, d := range f.d {
		if !(d > 1e-14*j.whole[i][i]) {
			return false
		}
	}
	return true
}

func identity(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}

func (j *Joint) invert() [][]float64 {
	var f mat.Cholesky
	var k mat.SymDense
	f.Factorize(mat.NewSymDense(j.Len(), slices.Concat(j.whole...))) // positive definite: NewJoint ensures it
	_ = f.InverseTo(&k)                                              // the error only warns of a high condition number
	rows := make([][]float64, j.Len())
	for i := range rows {
		rows[i] = mat.Row(nil, i, &k)
	}
	return rows
}

// Len is the number of fasteners.
func (j *Joint) Len() int { return len(j.whole) }

// Compliance returns the deflection of part and gasket at each fastener (row)
// for a newton at another (column), in mm/N.
func (j *Joint) Compliance() [][]float64 { return j.part }

// ClosureMm returns how much the clamped parts are compressed at each fastener,
// w = C·F.
func (j *Joint) ClosureMm(forces []float64) []float64 { return times(j.part, forces) }

// TravelMm returns the travel of each nut from first contact, u = M·F, if all
// are in contact.
func (j *Joint) TravelMm(forces []float64) []float64 { return times(j.whole, forces) }

func times(matrix [][]float64, forces []float64) []float64 {
	product := make([]float64, len(matrix))
	for i, row := range matrix {
		product[i] = floats.Dot(row, forces)
	}
	return product
}

// Sensitivity is a figure for the joint, independent of the order: about the
// mean share of its load that a bolt loses in one pass. If it is negative,
// bolts gain.
func (j *Joint) Sensitivity() float64 {
	var sum float64
	for i, row := range j.part {
		for k, c := range row {
			if k != i {
				sum += c / j.whole[i][i]
			}
		}
	}
	return sum / float64(2*j.Len())
}

// checkOrder rejects anything but an order of all fasteners.
func (j *Joint) checkOrder(order []int) error {
	if all := identity(j.Len()); !slices.Equal(slices.Sorted(slices.Values(order)), all) {
		return compliance.Misuse("order", order, all)
	}
	return nil
}
