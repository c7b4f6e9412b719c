package survey

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// residual is the reading minus the distance between the places.
func (r Reading) residual(at []geometry.Point) float64 {
	return r.Distance - at[r.From].Distance(at[r.To])
}

// direction is the unit vector from one hole to the other.
func (r Reading) direction(at []geometry.Point) geometry.Point {
	v := at[r.To].Sub(at[r.From])
	length := math.Hypot(v.X, v.Y)
	if length < 1e-12 {
		return geometry.Point{X: 1} // any direction: the two holes coincide
	}
	return v.Scale(1 / length)
}

// squares is the sum of the squared residuals in units of the accuracy.
func squares(at []geometry.Point, readings []Reading, accuracy float64) float64 {
	return squaresUpTo(math.Inf(1), at, readings, accuracy)
}

func squaresUpTo(most float64, at []geometry.Point, readings []Reading, accuracy float64) float64 {
	sum := 0.0
	for _, r := range readings {
		v := r.residual(at) / accuracy
		sum += math.Min(v*v, most)
	}
	return sum
}

// effort limits an adjustment: the number of rounds, and the movement below
// which it stops.
type effort struct {
	rounds  int
	stillMm float64
}

var (
	fully   = effort{100, 1e-10}
	roughly = effort{12, 1e-3}
)

// adjust moves the places to minimize the weighted sum of squared residuals
// (Levenberg, 1944; Marquardt, 1963). Weights may be nil. Places that the
// readings leave free stay near their start.
func adjust(start []geometry.Point, readings []Reading, weights []float64, to effort) []geometry.Point {
	const firstDamping, leastDamping, mostDamping = 1e-3, 1e-12, 1e12
	at := slices.Clone(start)
	damping, cost := firstDamping, weighted(at, readings, weights)
	for range to.rounds {
		normal, slope := normalEquations(at, readings, weights)
		largest := 0.0
		for ; damping < mostDamping; damping *= 8 {
			step, ok := dampedStep(normal, slope, damping)
			if !ok {
				continue
			}
			next, far := stepped(at, step)
			if c := weighted(next, readings, weights); c < cost {
				at, cost, largest = next, c, far
				break
			}
		}
		if largest < to.stillMm {
			break
		}
		damping = math.Max(damping/10, leastDamping)
	}
	return at
}

func weighted(at []geometry.Point, readings []Reading, weights []float64) float64 {
	sum := 0.0
	for i, r := range readings {
		v := r.residual(at)
		sum += weightOf(weights, i) * v * v
	}
	return sum
}

func weightOf(weights []float64, i int) float64 {
	if weights == nil {
		return 1
	}
	return weights[i]
}

// normalEquations returns JᵀWJ and JᵀWr. The unknowns are x and y of each hole
// in turn.
func normalEquations(at []geometry.Point, readings []Reading, weights []float64) (*mat.SymDense, *mat.VecDense) {
	size := 2 * len(at)
	normal, slope := mat.NewSymDense(size, nil), mat.NewVecDense(size, nil)
	for i, r := range readings {
		w, v := weightOf(weights, i), r.residual(at)
		column, entry := row(r, at)
		for j, c := range column {
			slope.SetVec(c, slope.AtVec(c)+w*entry[j]*v)
			for k, d := range column {
				if d >= c {
					normal.SetSym(c, d, normal.At(c, d)+w*entry[j]*entry[k])
				}
			}
		}
	}
	return normal, slope
}

// row returns the entries of a reading in the design matrix: the change of the
// distance with each unknown.
func row(r Reading, at []geometry.Point) (column [4]int, entry [4]float64) {
	u := r.direction(at)
	return [4]int{2 * r.From, 2*r.From + 1, 2 * r.To, 2*r.To + 1}, [4]float64{-u.X, -u.Y, u.X, u.Y}
}

func dampedStep(normal *mat.SymDense, slope *mat.VecDense, damping float64) (*mat.VecDense, bool) {
	size := normal.SymmetricDim()
	damped := mat.NewSymDense(size, nil)
	damped.CopySym(normal)
	for i := range size {
		d := normal.At(i, i)
		damped.SetSym(i, i, d+damping*(d+1e-2)) // a hole without readings has d = 0
	}
	var factors mat.Cholesky
	if !factors.Factorize(damped) {
		return nil, false
	}
	step := mat.NewVecDense(size, nil)
	// A poor condition is not a failure: a step that does not help is not
	// taken.
	_ = factors.SolveVecTo(step, slope)
	return step, !math.IsNaN(mat.Sum(step)) && !math.IsInf(mat.Norm(step, 2), 0)
}

func stepped(at []geometry.Point, step *mat.VecDense) (next []geometry.Point, largest float64) {
	next = make([]geometry.Point, len(at))
	for i, p := range at {
		d := geometry.Point{X: step.AtVec(2 * i), Y: step.AtVec(2*i + 1)}
		next[i] = p.Add(d)
		largest = math.Max(largest, math.Hypot(d.X, d.Y))
	}
	return next, largest
}

// robust adjusts with weights that decrease with the residual (Geman and
// McClure, 1985), from a wide scale to a narrow one. A wrong reading then loses
// its influence instead of distorting the places.
func robust(start []geometry.Point, readings []Reading, accuracy float64) []geometry.Point {
	at, weights := start, make([]float64, len(readings))
	for _, scale := range []float64{100, 30, 10, 5, 4, 4} {
		for i, r := range readings {
			v := r.residual(at) / (scale * accuracy)
			weights[i] = 1 / ((1 + v*v) * (1 + v*v))
		}
		at = adjust(at, readings, weights, roughly)
	}
	return at
}

// worth is the cost of a robust fit. An outlier costs no more than a residual
// of five times the accuracy.
func worth(at []geometry.Point, readings []Reading, accuracy float64) float64 {
	return squaresUpTo(5*5, at, readings, accuracy)
}
