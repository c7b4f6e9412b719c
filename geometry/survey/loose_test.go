package survey_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/testkit"
)

func looseHoles(s survey.Solution) []int {
	var holes []int
	for _, l := range s.Loose {
		holes = append(holes, l.Hole)
	}
	return holes
}

// First principles: in the plane a hole without readings has two degrees of
// freedom, with one reading it has one, with two it has two possible positions,
// and three to holes that are not in line fix it.
func TestLooseHoles(t *testing.T) {
	t.Parallel()
	plate := []geometry.Point{{}, {X: 100}, {X: 110, Y: 70}, {X: -10, Y: 80}, {X: 45, Y: 50}}
	four := allPairs(4)
	for name, c := range map[string]struct {
		to    []int
		loose []int
		why   finding.Code
	}{
		"none":             {nil, []int{4}, survey.Free},
		"one":              {[]int{2}, []int{4}, survey.Free},
		"two":              {[]int{0, 2}, []int{4}, survey.TwoPlaces},
		"three, all fixed": {[]int{0, 1, 2}, nil, ""},
	} {
		pairs := slices.Clone(four)
		for _, k := range c.to {
			pairs = append(pairs, [2]int{k, 4})
		}
		n := survey.Network{Holes: 5, Readings: measured(plate, pairs), Level: [2]int{0, 1}, Above: []int{2}}
		s := solve(t, n)
		if got := looseHoles(s); !slices.Equal(got, c.loose) {
			t.Errorf("%s: loose %v, want %v", name, got, c.loose)
			continue
		}
		for i := range 4 {
			near(t, name, s.Points[i], plate[i], 1e-6)
		}
		if len(c.loose) > 0 && s.Loose[0].Why != c.why {
			t.Errorf("%s: %s, want %s", name, s.Loose[0].Why, c.why)
		}
		afterAdvice(t, name, n, plate)
	}
}

// afterAdvice measures what the solution asks for. Every hole must then be
// fixed at its true place.
func afterAdvice(t *testing.T, name string, n survey.Network, at []geometry.Point) {
	t.Helper()
	const rounds = 3 // a free hole may have two positions afterwards
	s := solve(t, n)
	for range rounds {
		for _, l := range s.Loose {
			n.Readings = append(slices.Clone(n.Readings), measured(at, l.Next)...)
		}
		s = solve(t, n)
	}
	if len(s.Loose) > 0 {
		t.Errorf("%s: still loose after the advice: %+v", name, s.Loose)
	}
	for i, off := range fitted(s.Points, at) {
		if off > 1e-5 {
			t.Errorf("%s: after the advice hole %d lies %g mm off", name, i, off)
		}
	}
}

// Two plates connected by a single reading: one of them is loose as a whole,
// and the advice connects them.
func TestTwoPlates(t *testing.T) {
	t.Parallel()
	at := []geometry.Point{{}, {X: 90}, {X: 95, Y: 60}, {X: -5, Y: 64}, {X: 180, Y: 5}, {X: 260, Y: -4}, {X: 240, Y: 70}}
	pairs := append(allPairs(4), [][2]int{{4, 5}, {5, 6}, {4, 6}, {1, 4}}...)
	n := survey.Network{Holes: 7, Readings: measured(at, pairs), Level: [2]int{0, 1}, Above: []int{2}}
	if got := looseHoles(solve(t, n)); !slices.Equal(got, []int{4, 5, 6}) {
		t.Errorf("loose %v, want the smaller plate", got)
	}
	afterAdvice(t, "two plates", n, at)
}

// A row measured only to itself and to the row below can be folded over (first
// principles); one long reading across decides.
func TestFoldedRow(t *testing.T) {
	t.Parallel()
	var at []geometry.Point
	for row := range 3 {
		for column := range 4 {
			at = append(at, geometry.Point{X: 60*float64(column) + 13*float64(row/2), Y: 50 * float64(row)})
		}
	}
	var pairs [][2]int
	for _, p := range allPairs(12) {
		if p[1]/4-p[0]/4 < 2 {
			pairs = append(pairs, p)
		}
	}
	n := survey.Network{Holes: 12, Readings: measured(at, pairs), Level: [2]int{4, 7}, Below: []int{0}}
	s := solve(t, n)
	if got := looseHoles(s); !slices.Equal(got, []int{8, 9, 10, 11}) {
		t.Fatalf("loose %v, want the top row", got)
	}
	for i, off := range fitted(s.Points, at) {
		if off > 1e-5 {
			t.Errorf("hole %d lies %g mm off: the part is folded", i, off)
		}
	}
	afterAdvice(t, "folded row", n, at)
	n.Above = []int{8}
	if got := looseHoles(solve(t, n)); got != nil {
		t.Errorf("loose %v, though a hole of the row is said to lie above", got)
	}
}

// A fold that would put one hole on another is rejected.
func TestNoHoleOnAnother(t *testing.T) {
	t.Parallel()
	square := []geometry.Point{{}, {X: 60}, {X: 60, Y: 60}, {Y: 60}}
	pairs := [][2]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}}
	s := solve(t, survey.Network{Holes: 4, Readings: measured(square, pairs), Level: [2]int{0, 1}, Above: []int{2}})
	near(t, "the last corner", s.Points[3], square[3], 1e-6)
	if len(s.Loose) > 0 {
		t.Errorf("loose %v", s.Loose)
	}
}

// Along a row, a caliper says nothing about positions across it. A part that is
// a row is taken as one. A row on a plate that is measured only along itself
// has large standard errors and is reported.
func TestRows(t *testing.T) {
	t.Parallel()
	row := geometry.Row(5, 60, geometry.Point{}, 0)
	r := rand.New(rand.NewPCG(3, 4))
	readings := measured(row, allPairs(5))
	for i := range readings {
		readings[i].Distance += 0.05 * r.NormFloat64()
	}
	s := solve(t, survey.Network{Holes: 5, Readings: readings, Level: [2]int{0, 4}})
	if !s.Straight || len(s.Loose) > 0 || s.Mirrored {
		t.Errorf("straight %v, loose %v, mirrored %v", s.Straight, s.Loose, s.Mirrored)
	}
	for i := range row {
		near(t, "hole of the row", s.Points[i], row[i], 0.15)
	}
	plate := []geometry.Point{{}, {X: 120}, {X: 60}, {X: 50, Y: 90}}
	n := survey.Network{Holes: 4, Readings: measured(plate, [][2]int{{0, 1}, {0, 2}, {2, 1}, {0, 3}, {1, 3}}), Level: [2]int{0, 1}, Above: []int{3}}
	if got := looseHoles(solve(t, n)); !slices.Equal(got, []int{2}) {
		t.Errorf("loose %v, want the hole between the two", got)
	}
	afterAdvice(t, "hole in a row", n, plate)
}

// A wrong reading that no other one checks, or that is one of two possible
// ones, is not blamed on either.
func TestRivals(t *testing.T) {
	t.Parallel()
	plate := []geometry.Point{{}, {X: 100}, {X: 110, Y: 70}, {X: -10, Y: 80}}
	readings := measured(plate, allPairs(4))
	readings[2].Distance += 1
	s := solve(t, survey.Network{Holes: 4, Readings: readings, Level: [2]int{0, 1}, Above: []int{2}})
	// Six readings of four holes leave one spare: all readings check each
	// other.
	if len(s.Suspect) < 2 || !s.Rivals || !slices.Contains(s.Suspect, 2) || slices.Contains(s.Out, true) {
		t.Errorf("suspect %v, rivals %v, out %v", s.Suspect, s.Rivals, s.Out)
	}
}

// Slips of more than a millimetre: swapped digits, a missing centimetre, an
// inch.
func TestLargeSlips(t *testing.T) {
	t.Parallel()
	trials := testkit.Samples(3, 20)
	for _, slip := range []float64{0.5, 1, 9, -10, 25.4, -63, 200} {
		named := 0
		for trial := range trials {
			r := rand.New(rand.NewPCG(uint64(trial), 99))
			readings := measured(cover, someWay(len(cover)))
			for i := range readings {
				readings[i].Distance += 0.04 * r.NormFloat64()
			}
			wrong := r.IntN(len(readings))
			if readings[wrong].Distance+slip < 5 {
				named++
				continue
			}
			readings[wrong].Distance += slip
			s := solve(t, survey.Network{Holes: len(cover), Readings: readings, Level: [2]int{0, 1}, Above: []int{9}})
			if slices.Equal(s.Suspect, []int{wrong}) && slices.Max(fitted(s.Points, cover)) < 0.25 {
				named++
			}
		}
		if named < trials-1 {
			t.Errorf("a slip of %g mm was named in %d of %d trials", slip, named, trials)
		}
	}
}
