package survey

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

func at(x ...float64) []geometry.Point {
	points := make([]geometry.Point, len(x)/2)
	for i := range points {
		points[i] = geometry.Point{X: x[2*i], Y: x[2*i+1]}
	}
	return points
}

// First principles: a 3-4-5 triangle.
func TestReading(t *testing.T) {
	t.Parallel()
	places := at(1, 1, 4, 5, 1, 1)
	r := Reading{From: 0, To: 1, Distance: 5.5}
	same(t, "residual", r.residual(places), 0.5)
	if d := r.direction(places); d.Distance(geometry.Point{X: 0.6, Y: 0.8}) > 1e-12 {
		t.Errorf("direction %v", d)
	}
	if d := (Reading{From: 0, To: 2}).direction(places); d != (geometry.Point{X: 1}) {
		t.Errorf("two on each other: direction %v", d)
	}
	if r.other(0) != 1 || r.other(1) != 0 {
		t.Error("the other end")
	}
	// Residuals of 2 and 6 times the accuracy. In the worth of a fit a reading
	// counts for at most 25.
	two := []Reading{{0, 1, 5.1}, {0, 1, 4.7}}
	same(t, "squares", squares(places, two, 0.05), 40)
	same(t, "worth", worth(places, two, 0.05), 4+25)
	same(t, "weighted", weighted(places, two, []float64{2, 3}), 2*0.01+3*0.09)
	same(t, "weighted alike", weighted(places, two, nil), 0.1)
}

// First principles: the slope is that of half the weighted squares, by finite
// differences; the normal matrix is built from the change of each distance.
func TestNormalEquations(t *testing.T) {
	t.Parallel()
	const h = 1e-6
	places := at(0, 0, 80, 7, 61, 50, -13, 44)
	readings := []Reading{{0, 1, 81}, {1, 2, 46}, {2, 3, 75}, {3, 0, 44}, {2, 0, 80}}
	weights := []float64{1, 2, 0.5, 3, 0.7}
	moved := func(unknown int, by float64) []geometry.Point {
		next := append([]geometry.Point{}, places...)
		if unknown%2 == 0 {
			next[unknown/2].X += by
		} else {
			next[unknown/2].Y += by
		}
		return next
	}
	for _, w := range [][]float64{weights, nil} {
		normal, slope := normalEquations(places, readings, w)
		for c := range 8 {
			by := (weighted(moved(c, h), readings, w) - weighted(moved(c, -h), readings, w)) / (2 * h)
			if math.Abs(by/-2-slope.AtVec(c)) > 1e-6 {
				t.Errorf("slope %d: %g, by differences %g", c, slope.AtVec(c), by/-2)
			}
			for d := range 8 {
				sum := 0.0
				for i, r := range readings {
					change := func(k int) float64 { return (r.residual(moved(k, -h)) - r.residual(moved(k, h))) / (2 * h) }
					sum += weightOf(w, i) * change(c) * change(d)
				}
				if math.Abs(sum-normal.At(c, d)) > 1e-6 {
					t.Errorf("normal %d, %d: %g, by differences %g", c, d, normal.At(c, d), sum)
				}
			}
		}
	}
}

// A step by hand: each diagonal element d grows by the damping times d plus a
// hundredth.
func TestDampedStep(t *testing.T) {
	t.Parallel()
	normal := mat.NewSymDense(2, []float64{4, 1, 1, 3})
	step, ok := dampedStep(normal, mat.NewVecDense(2, []float64{1, 2}), 0.5)
	a, b := 4+0.5*4.01, 3+0.5*3.01
	if !ok {
		t.Fatal("no step")
	}
	same(t, "x", step.AtVec(0), (b-2)/(a*b-1))
	same(t, "y", step.AtVec(1), (2*a-1)/(a*b-1))
	for name, m := range map[string][]float64{"not definite": {1, 5, 5, 1}, "not a number": {math.NaN(), 0, 0, 1}} {
		if _, ok := dampedStep(mat.NewSymDense(2, m), mat.NewVecDense(2, []float64{1, 2}), 0.5); ok {
			t.Errorf("%s: a step is given", name)
		}
	}
	next, largest := stepped(at(1, 2, 3, 4), mat.NewVecDense(4, []float64{0.3, 0.4, 3, -4}))
	if next[0].Distance(geometry.Point{X: 1.3, Y: 2.4}) > 1e-12 || next[1].Distance(geometry.Point{X: 6}) > 1e-12 {
		t.Errorf("stepped to %v", next)
	}
	same(t, "largest step", largest, 5)
}

// One round for two holes 10 mm apart and a reading of 12 mm, by hand: with an
// initial damping of a thousandth each end moves 2 / (2 + 1.01/1000).
func TestRounds(t *testing.T) {
	t.Parallel()
	start, readings := at(0, 0, 10, 0), []Reading{{0, 1, 12}}
	if got := adjust(start, readings, nil, effort{0, 0}); got[1] != start[1] {
		t.Errorf("no round: %v", got)
	}
	one := adjust(start, readings, nil, effort{1, 0})
	same(t, "one round", one[1].X, 10+2/(2+1.01e-3))
	same(t, "the other end", one[0].X, -2/(2+1.01e-3))
	if got := adjust(start, readings, nil, effort{5, 10}); got[1] != one[1] {
		t.Errorf("a step under what counts as still: %v", got)
	}
	full := adjust(start, readings, nil, fully)
	same(t, "the end", full[0].Distance(full[1]), 12)
	if far := adjust(start, []Reading{{0, 1, 12}, {0, 1, 18}}, []float64{3, 1}, fully); math.Abs(far[0].Distance(far[1])-13.5) > 1e-7 {
		t.Errorf("weights of 3 and 1 give %g, want 13.5", far[0].Distance(far[1]))
	}
}

// An outlier loses its influence in a robust fit; plain least squares is
// distorted by it (first principles: five readings against one).
func TestRobust(t *testing.T) {
	t.Parallel()
	readings := []Reading{{0, 1, 100}, {0, 1, 100.02}, {0, 1, 99.98}, {0, 1, 100.01}, {0, 1, 99.99}, {0, 1, 103}}
	start := at(0, 0, 100.5, 0)
	fit := robust(start, readings, 0.05)
	if d := fit[0].Distance(fit[1]); math.Abs(d-100) > 0.005 {
		t.Errorf("robust: %g mm", d)
	}
	bent := adjust(start, readings, nil, fully)
	same(t, "least squares", bent[0].Distance(bent[1]), 100.5)
}
