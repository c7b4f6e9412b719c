package survey

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func between(pairs ...[2]int) []Reading {
	var all []Reading
	for _, p := range pairs {
		all = append(all, Reading{From: p[0], To: p[1], Distance: 1})
	}
	return all
}

// Maxwell's count: a part of n holes has 2n degrees of freedom, three of them
// for the part as a whole. Each bar that is not redundant takes one. A square
// of four bars can still fold.
func TestFreedoms(t *testing.T) {
	t.Parallel()
	square, row := at(0, 0, 50, 0, 50, 50, 0, 50), at(0, 0, 40, 0, 100, 0)
	for _, c := range []struct {
		name     string
		s        stiffness
		rank     int
		free     int
		linked   bool // holes 0 and 2
		variance float64
		checked  float64 // of the first reading
	}{
		{"square", newStiffness(square, between([2]int{0, 1}, [2]int{1, 2}, [2]int{2, 3}, [2]int{3, 0}), false), 4, 4, false, 1, 0},
		{"with a diagonal", newStiffness(square, between([2]int{0, 1}, [2]int{1, 2}, [2]int{2, 3}, [2]int{3, 0}, [2]int{0, 2}), false), 5, 3, true, 1, 0},
		// A square with both diagonals: the side has 1 part of 8, the diagonal
		// 2.
		{"with both", newStiffness(square, between([2]int{0, 1}, [2]int{1, 2}, [2]int{2, 3}, [2]int{3, 0}, [2]int{0, 2}, [2]int{1, 3}), false), 5, 3, true, 7. / 8, 1. / 8},
		{"read four times", newStiffness(square, between([2]int{0, 1}, [2]int{0, 1}, [2]int{0, 1}, [2]int{0, 1}), false), 1, 7, false, 1. / 4, 3. / 4},
		{"a row along itself", newStiffness(row, between([2]int{0, 1}, [2]int{1, 2}), true), 2, 1, true, 1, 0},
		{"a row with a spare", newStiffness(row, between([2]int{0, 1}, [2]int{1, 2}, [2]int{0, 2}), true), 2, 1, true, 2. / 3, 1. / 3},
		{"a row in two parts", newStiffness(row, between([2]int{0, 1}), true), 1, 2, false, 1, 0},
	} {
		_, free := c.s.free.Dims()
		if c.s.rank != c.rank || free != c.free || c.s.linked(0, 2) != c.linked || !c.s.linked(0, 1) {
			t.Errorf("%s: rank %d, free %d, linked %v", c.name, c.s.rank, free, c.s.linked(0, 2))
		}
		same(t, c.name+", variance", c.s.variance(Reading{From: 0, To: 1}), c.variance)
		same(t, c.name+", checked", c.s.checked(Reading{From: 0, To: 1}), c.checked)
	}
	none := newStiffness(square, nil, false)
	if none.rank != 0 || none.variance(Reading{From: 0, To: 1}) != 0 || none.linked(0, 1) {
		t.Errorf("no readings: %+v", none)
	}
}

// Shares stay between 0 and 1. A motion that changes a distance by less than a
// ten-thousandth leaves it fixed.
func TestShares(t *testing.T) {
	t.Parallel()
	s := stiffness{at: at(0, 0, 10, 0), cofactor: mat.NewSymDense(4, nil)}
	for variance, want := range map[float64]float64{-0.1: 1, 0: 1, 0.3: 0.7, 1: 0, 1.2: 0} {
		s.cofactor.SetSym(2, 2, variance)
		same(t, "checked", s.checked(Reading{From: 0, To: 1}), want)
	}
	for change, want := range map[float64]bool{0.95e-4: true, -0.95e-4: true, 1.05e-4: false, -1.05e-4: false, 0.5: false} {
		s.free = mat.NewDense(4, 1, []float64{0, 0.7, change, 0.7})
		if got := s.linked(0, 1); got != want {
			t.Errorf("a change of %g: linked %v", change, got)
		}
	}
	s.free = mat.NewDense(4, 2, []float64{0, 0, 0, 0, 0.8e-4, 0.8e-4, 0, 0})
	if s.linked(0, 1) {
		t.Error("two motions together change it by 1.1e-4")
	}
}

// A hole is held by two holes that are not in line with it, or in a row by one.
func TestHolds(t *testing.T) {
	t.Parallel()
	s := stiffness{at: at(0, 0, 10, 0, 20, 0, 5, 5)}
	for sine, want := range map[float64]bool{0.0009: false, -0.0009: false, 0.0011: true, -0.0011: true, 1: true} {
		s.at[2] = at(20, 0)[0]
		s.at[1] = at(20-10*math.Sqrt(1-sine*sine), 10*sine)[0]
		if got := s.holds([]int{0, 1}, 2, false); got != want {
			t.Errorf("a sine of %g: %v", sine, got)
		}
	}
	s.at = at(0, 0, 10, 10, 20, 20, 5, 5)
	if s.holds([]int{0, 1}, 2, false) {
		t.Error("by two in one line, aslant")
	}
	if s.holds([]int{0}, 3, false) || !s.holds([]int{0}, 3, true) || s.holds(nil, 3, true) {
		t.Error("by one hole: along a row only")
	}
}

// Two triangles that nothing connects: the core is the larger part. Of equal
// ones it is the one with the level holes, otherwise the first.
func TestCore(t *testing.T) {
	t.Parallel()
	places := at(0, 0, 50, 0, 20, 40, 200, 0, 250, 0, 220, 40, 230, 90)
	first, second := between([2]int{0, 1}, [2]int{1, 2}, [2]int{0, 2}), between([2]int{3, 4}, [2]int{4, 5}, [2]int{3, 5})
	grown := between([2]int{3, 6}, [2]int{4, 6})
	a, b := []bool{true, true, true, false, false, false, false}, []bool{false, false, false, true, true, true, false}
	larger := []bool{false, false, false, true, true, true, true}
	for _, c := range []struct {
		name     string
		readings []Reading
		level    [2]int
		want     []bool
	}{
		{"equal", slices.Concat(first, second), [2]int{6, 6}, a},
		{"equal, level in the first", slices.Concat(first, second), [2]int{0, 1}, a},
		{"equal, level in the second", slices.Concat(first, second), [2]int{3, 4}, b},
		{"equal, one level hole in each", slices.Concat(first, second), [2]int{0, 3}, a},
		{"larger, level in the smaller", slices.Concat(first, second, grown), [2]int{0, 1}, larger},
		{"larger first", slices.Concat(second, grown, first), [2]int{0, 1}, larger},
	} {
		s := newStiffness(places, c.readings, false)
		if got := s.core(c.readings, c.level, false); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// First principles: one length read four times has a variance of a quarter,
// half of it at each end along the line. For an equilateral triangle see below.
// A hole outside the core has no error.
func TestErrors(t *testing.T) {
	t.Parallel()
	row := at(0, 0, 100, 0, 30, 70)
	got := errorsMm(row, between([2]int{0, 1}, [2]int{0, 1}, [2]int{0, 1}, [2]int{0, 1}, [2]int{0, 2}), []bool{true, true, false}, false, 0.08)
	same(t, "first end", got[0], 0.08/4)
	same(t, "far end", got[1], 0.08/4)
	if !math.IsInf(got[2], 1) {
		t.Errorf("outside the core: %g", got[2])
	}
	// At the end of the list, the core keeps its numbers.
	got = errorsMm(at(30, 70, 0, 0, 100, 0), between([2]int{1, 2}, [2]int{0, 1}), []bool{false, true, true}, true, 0.08)
	same(t, "along a row", got[2], 0.04)
	// Bars of an equilateral triangle: JᵀJ has the eigenvalues 3, 1.5, 1.5, so the
	// trace of its pseudo-inverse is 5/3, and each corner has a third of it.
	got = errorsMm(at(0, 0, 10, 0, 5, 5*math.Sqrt(3)), between([2]int{0, 1}, [2]int{1, 2}, [2]int{0, 2}), inAll(3), false, 1)
	for _, e := range got {
		same(t, "corner", e, math.Sqrt(5)/3)
	}
}
