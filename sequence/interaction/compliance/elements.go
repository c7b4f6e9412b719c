package compliance

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"drawdown/geometry/finding"
)

// elements is a banded stiffness matrix of finite elements. It is symmetric;
// only its lower half is stored, and overwritten by its factor.
type elements struct {
	unknowns, reach int
	inner           int       // unknowns to eliminate; those after them remain
	lower           []float64 // row i holds columns i-reach … i
	inverse         []float64 // of the factor's diagonal
	own             []float64 // stiffness of the unknowns before the others deflect; nil: the diagonal
}

func newElements(unknowns, reach int) *elements {
	reach = min(reach, unknowns-1)
	return &elements{unknowns, reach, unknowns, make([]float64, unknowns*(reach+1)), make([]float64, unknowns), nil}
}

// row returns row i from a column to its diagonal.
func (e *elements) row(i, from int) []float64 {
	end := (i + 1) * (e.reach + 1)
	return e.lower[end-1-(i-from) : end]
}

// first is the first column of row i.
func (e *elements) first(i int) int { return max(0, i-e.reach) }

// add ignores the upper half, which is the same.
func (e *elements) add(i, j int, stiffness float64) {
	if j <= i {
		e.row(i, j)[0] += stiffness
	}
}

// bare reports whether no element constrains an unknown.
func (e *elements) bare(i int) bool { return e.row(i, i)[0] == 0 }

// share is the part of a unit load on an unknown.
type share struct {
	unknown int
	of      float64
}

// leastPivot distinguishes a stiffness from rounding: the remaining share of an
// unknown's own stiffness after elimination of all before it. Plates a million
// times stiffer than any real one stay above it.
const leastPivot = 1e-14

// together is the number of rows of the factor that are processed at once, so
// that each earlier row is read once for all of them.
const together = 8

// factor overwrites the stiffness with its Cholesky factor, K = LLᵀ, by rows.
// Every element is a product of two contiguous rows, which takes half the time
// of lapack's Pbtrf in Go. For the remaining unknowns it leaves their stiffness
// when the others are free to deflect.
func (e *elements) factor() error {
	for i := range e.inner {
		if e.bare(i) {
			e.add(i, i, 1) // no load acts on it
		}
	}
	for from := 0; from < e.unknowns; from += together {
		to := min(from+together, e.unknowns)
		for j := e.first(from); j < to; j++ {
			for i := max(from, j); i < to; i++ {
				if err := e.settle(i, j); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// settle calculates one element of the factor from those before it in its row
// and in row j.
func (e *elements) settle(i, j int) error {
	from := e.first(i)
	if j < from {
		return nil
	}
	n, known := j-from, min(j, e.inner)-from
	row, other := e.row(i, from), e.row(j, from)
	own := row[n]
	left := own
	if known > 0 {
		left -= floats.Dot(row[:known], other[:known])
	}
	if j >= e.inner {
		row[n] = left
		return nil
	}
	if j < i {
		row[n] = left * e.inverse[j]
		return nil
	}
	if e.own != nil {
		own = e.own[i]
	}
	if !(left > leastPivot*own) {
		return finding.Failed(Afloat, nil)
	}
	row[n] = math.Sqrt(left)
	e.inverse[i] = 1 / row[n]
	return nil
}

// compliance returns the deflection at each load for a unit load at each other:
// C = Bᵀ K⁻¹ B = (L⁻¹B)ᵀ (L⁻¹B).
func (e *elements) compliance(loads [][]share) (*mat.SymDense, error) {
	if err := e.factor(); err != nil {
		return nil, err
	}
	halfway, starts := e.spread(loads)
	e.solve(halfway, starts)
	c := mat.NewSymDense(len(loads), nil)
	e.products(halfway, starts, c.SetSym)
	return c, nil
}

// products multiplies each solution by every other, over the eliminated
// unknowns.
func (e *elements) products(halfway [][]float64, starts []int, tell func(i, j int, product float64)) {
	for few := 0; few < len(halfway); few += together {
		for j := few; j < len(halfway); j++ { // read once for the whole group
			for i := few; i < min(few+together, j+1); i++ {
				from := min(max(starts[i], starts[j])/lanes*lanes, e.inner)
				tell(i, j, floats.Dot(halfway[i][from:e.inner], halfway[j][from:e.inner]))
			}
		}
	}
}

// lanes is the number of partial sums of floats.Dot: a sum that starts at a
// multiple of it is rounded like one from the start.
const lanes = 4

// spread expands each load to all unknowns, and returns where it starts.
func (e *elements) spread(loads [][]share) (list [][]float64, starts []int) {
	list, starts = make([][]float64, len(loads)), make([]int, len(loads))
	for i, load := range loads {
		list[i], starts[i] = make([]float64, e.unknowns), e.unknowns
		for _, s := range load {
			list[i][s.unknown] += s.of
			starts[i] = min(starts[i], s.unknown)
		}
	}
	return list, starts
}

// solve solves Ly = B for all loads at once, in place: each row of the factor
// is read once for all loads while it is in the cache. Before its start a
// solution is 0. For the remaining unknowns it leaves the load that reaches
// them.
func (e *elements) solve(loads [][]float64, starts []int) {
	for k := range e.unknowns {
		first := e.first(k)
		row := e.row(k, first)[:min(k, e.inner)-first]
		for i, y := range loads {
			if k < starts[i] {
				continue
			}
			y[k] -= floats.Dot(row, y[first:first+len(row)])
			if k < e.inner {
				y[k] *= e.inverse[k]
			}
		}
	}
}
