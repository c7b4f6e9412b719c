package survey

import (
	"errors"
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
)

// The limits of a valid network, from both sides.
func TestSound(t *testing.T) {
	t.Parallel()
	many := make([]Reading, MostReadings+1)
	for i := range many {
		many[i] = Reading{0, 1, 5}
	}
	one := many[:1]
	for name, c := range map[string]struct {
		n    Network
		want bool
	}{
		"two holes":            {Network{Holes: 2, Readings: one}, true},
		"200 holes":            {Network{Holes: 200, Readings: one}, true},
		"201 holes":            {Network{Holes: 201, Readings: one}, false},
		"4000 readings":        {Network{Holes: 2, Readings: many[:4000]}, true},
		"4001 readings":        {Network{Holes: 2, Readings: many}, false},
		"rounded":              {Network{Holes: 2, Readings: one, RoundedToMm: 1}, true},
		"rounded to less":      {Network{Holes: 2, Readings: one, RoundedToMm: -1}, false},
		"rounded to no end":    {Network{Holes: 2, Readings: one, RoundedToMm: math.Inf(1)}, false},
		"rounded to no number": {Network{Holes: 2, Readings: one, RoundedToMm: math.NaN()}, false},
		"an endless distance":  {Network{Holes: 2, Readings: []Reading{{0, 1, math.Inf(1)}}}, false},
		"less than nothing":    {Network{Holes: 2, Readings: []Reading{{0, 1, -1}}}, false},
		"diameters":            {Network{Holes: 2, Readings: one, Diameters: []float64{8, 0}}, true},
		"one diameter more":    {Network{Holes: 2, Readings: one, Diameters: []float64{8, 0, 8}}, false},
		"below":                {Network{Holes: 2, Readings: one, Below: []int{2}}, false},
		"above":                {Network{Holes: 2, Readings: one, Above: []int{1}}, true},
		"before the first":     {Network{Holes: 2, Readings: []Reading{{-1, 1, 5}}}, false},
	} {
		if got := c.n.isSound(); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
	if _, err := Solve(Network{}); !errors.Is(err, NoNetwork) {
		t.Errorf("an empty network: %v", err)
	}
}

// Rounding to a digit adds a variance of a twelfth of its square (first
// principles).
func TestAccuracy(t *testing.T) {
	t.Parallel()
	same(t, "usual", Network{}.accuracy(), 0.05)
	same(t, "stated", Network{AccuracyMm: 0.02}.accuracy(), 0.02)
	same(t, "rounded", Network{AccuracyMm: 0.3, RoundedToMm: 1.2}.accuracy(), math.Sqrt(0.09+0.12))
}

// A row of n holes has n - 2 fewer unknowns across it. It counts as a row if
// the squares grow by no more than that plus four standard deviations of their
// sum, and if it is within a tenth of its length (the first is first
// principles: chi-square).
func TestStraightened(t *testing.T) {
	t.Parallel()
	for off, want := range map[float64]bool{0.2: true, 0.22: true, 0.227: false, 0.3: false} {
		// Two steps of 100 and a total that is shorter by off. The middle hole
		// takes this up by moving across the row; on a line, a third of it
		// stays with each reading.
		h := math.Sqrt(100*100 - (100-off/2)*(100-off/2))
		places := at(0, 0, 100-off/2, h, 200-off, 0)
		line, ok := straightened(places, []Reading{{0, 1, 100}, {1, 2, 100}, {0, 2, 200 - off}}, 0.05)
		if ok != want || len(line) != 3 || line[0].Y != line[1].Y || math.Abs(line[0].Distance(line[2])-(200-2*off/3)) > 1e-6 {
			t.Errorf("%g mm short: %v, %v", off, ok, line)
		}
	}
	for height, want := range map[float64]bool{28: true, 32: false} {
		line, _ := straightened(at(0, 0, 100, height, 200, 0), []Reading{{0, 1, 100}}, 0.05)
		if (line != nil) != want {
			t.Errorf("%g mm off a row of 200: %v", height, line)
		}
	}
	if line, ok := straightened(at(0, 0, 30, 40), []Reading{{0, 1, 50}}, 0.05); !ok || line[0].Distance(line[1]) != 50 || line[0].Y != 0 {
		t.Errorf("two holes: %v, %v", ok, line)
	}
}

// What a solution says about each reading: its residual, even if it was left
// out, the root mean square without those, and whether another reading checks
// it.
func TestMeasure(t *testing.T) {
	t.Parallel()
	n := Network{Holes: 3, Readings: []Reading{{0, 1, 100.1}, {0, 1, 99.9}, {0, 1, 120}, {1, 2, 50}}}
	s := Solution{Points: at(0, 0, 100, 0, 100, 50), Out: []bool{false, false, true, false}}
	used, _ := s.used(n.Readings)
	s.measure(n, used, newStiffness(s.Points, used, false))
	for i, want := range []float64{0.1, -0.1, 20, 0} {
		same(t, "residual", s.Residuals[i], want)
	}
	same(t, "rms", s.RMSMm, math.Sqrt(0.02/3))
	if len(s.Unchecked) != 1 || s.Unchecked[0] != 3 {
		t.Errorf("unchecked %v", s.Unchecked)
	}
}

// A hole is weak from twenty times the scatter.
func TestWeak(t *testing.T) {
	t.Parallel()
	s := Solution{Points: at(0, 0, 100, 0, 50, 80, 40, -70), ErrorsMm: []float64{0.1, 1.99, 2.01, math.Inf(1)}, ScatterMm: 0.1}
	all := loose(s, between([2]int{0, 1}, [2]int{1, 2}, [2]int{2, 0}, [2]int{3, 0}), []bool{true, true, true, false}, []fold{{holes: []int{1, 2}, at: at(0, 0, 90, 9, 7, 7, 0, 0)}})
	want := map[int]finding.Code{1: TwoPlaces, 2: Weak, 3: Free}
	if len(all) != len(want) {
		t.Errorf("loose %+v", all)
	}
	for _, l := range all {
		if l.Why != want[l.Hole] {
			t.Errorf("hole %d is %s", l.Hole, l.Why)
		}
		if slices.Contains(l.Next, [2]int{3, 0}) {
			t.Errorf("hole 3 is measured to hole 0: %v", l.Next)
		}
		if l.Why == TwoPlaces && l.Other != at(90, 9)[0] {
			t.Errorf("its other place is %v", l.Other)
		}
	}
}
