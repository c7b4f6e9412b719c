package survey_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/survey"
)

// oilCover are six holes along the edge of a cover, anticlockwise from the lower
// left, the third a little under the line of the first two, and one inside.
var oilCover = []geometry.Point{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 120, Y: -8}, {X: 170, Y: 60}, {X: 110, Y: 140}, {X: 10, Y: 130}, {X: 80, Y: 70}}

func solved(t *testing.T, n survey.Network) survey.Solution {
	t.Helper()
	s, err := survey.Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// First principles: hole 3 lies 8 mm under the line and was said to lie above
// it, so the four others come to lie below. Said to lie below, it still decides
// alone, by 8 mm.
func TestLopsided(t *testing.T) {
	for _, c := range []struct {
		name         string
		above, below []int
		against      int
		found        bool
	}{
		{"a hole under the line said to be above", []int{2}, nil, 4, true},
		{"the same as it is, which rests on it as much", nil, []int{2}, 4, true},
		{"a hole above said to be below", nil, []int{4}, 0, false}, // far off: the user knows
		{"a hole above", []int{4}, nil, 1, false},
		{"none named", nil, nil, 0, false},
	} {
		n := survey.Network{Holes: len(oilCover), Level: [2]int{0, 1}, Readings: measured(oilCover, allPairs(len(oilCover)))}
		n.Above, n.Below = c.above, c.below
		against, of, far, found := n.Lopsided(solved(t, n))
		if found != c.found || found && (against != c.against || of != 5 || far != 4) {
			t.Errorf("%s: %d of %d against, furthest %d, %v; want %d of 5, furthest 4, %v", c.name, against, of, far, found, c.against, c.found)
		}
	}
}

// First principles: the six at the edge run anticlockwise; mirrored they run
// clockwise; by rows they run no way round.
func TestRound(t *testing.T) {
	rows := []geometry.Point{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 120, Y: 0}, {X: 0, Y: 80}, {X: 60, Y: 80}, {X: 120, Y: 80}}
	for _, c := range []struct {
		name          string
		at            []geometry.Point
		above         int
		clockwise, ok bool
	}{
		{"as it is", oilCover, 4, false, true},
		{"mirrored", oilCover, 2, true, true},
		{"by rows", rows, 4, false, false},
	} {
		n := survey.Network{Holes: len(c.at), Level: [2]int{0, 1}, Readings: measured(c.at, allPairs(len(c.at)))}
		n.Above = []int{c.above}
		if clockwise, ok := solved(t, n).Round(); clockwise != c.clockwise || ok != c.ok {
			t.Errorf("%s: clockwise %v, %v; want %v, %v", c.name, clockwise, ok, c.clockwise, c.ok)
		}
	}
}
