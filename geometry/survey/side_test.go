package survey_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
)

// oilCover has six holes along the edge of a cover, anticlockwise from the
// lower left, the third slightly below the line of the first two, and one hole
// inside.
var oilCover = []geometry.Point{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 120, Y: -8}, {X: 170, Y: 60}, {X: 110, Y: 140}, {X: 10, Y: 130}, {X: 80, Y: 70}}

func solved(t *testing.T, n survey.Network) survey.Solution {
	t.Helper()
	s, err := survey.Solve(n)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var letters = []string{"A", "B", "C", "D", "E", "F", "G"}

func report(t *testing.T, n survey.Network) survey.Report {
	t.Helper()
	return survey.Report{Network: n, Solution: solved(t, n), IDs: letters[:n.Holes]}
}

// First principles: hole 3 is 8 mm below the line and was named as above, so
// the four others end up below. Named as below, it still decides alone, by 8
// mm.
func TestLopsided(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		above, below []int
		against      int
		found        bool
	}{
		{"a hole under the line said to be above", []int{2}, nil, 4, true},
		{"the same as it is, which rests on it as much", nil, []int{2}, 4, true},
		{"a hole above said to be below", nil, []int{4}, 0, false}, // far off: the user is believed
		{"a hole above", []int{4}, nil, 1, false},
		{"none named", nil, nil, 0, false},
	} {
		n := survey.Network{Holes: len(oilCover), Level: [2]int{0, 1}, Readings: measured(oilCover, allPairs(len(oilCover)))}
		n.Above, n.Below = c.above, c.below
		var want []finding.Finding
		if c.found {
			side, named := "above", c.above
			if named == nil {
				side, named = "below", c.below
			}
			at := finding.Place{IDs: []string{letters[named[0]]}}
			want = []finding.Finding{finding.Warned(survey.LopsidedSide, finding.Values{
				"side": side, "named": at.IDs, "against": c.against, "holes": 5, "far": "E",
			}).About(at)}
		}
		if diff := cmp.Diff(want, report(t, n).Side()); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

// First principles: the six at the edge run anticlockwise; mirrored they run
// clockwise; row by row they run in neither direction.
func TestRound(t *testing.T) {
	t.Parallel()
	rows := []geometry.Point{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 120, Y: 0}, {X: 0, Y: 80}, {X: 60, Y: 80}, {X: 120, Y: 80}}
	for _, c := range []struct {
		name  string
		at    []geometry.Point
		above int
		want  string
	}{
		{"as it is", oilCover, 4, "anticlockwise"},
		{"mirrored", oilCover, 2, "clockwise"},
		{"by rows", rows, 4, "none"},
	} {
		n := survey.Network{Holes: len(c.at), Level: [2]int{0, 1}, Readings: measured(c.at, allPairs(len(c.at)))}
		n.Above = []int{c.above}
		got := "none"
		for _, f := range report(t, n).WayRound() {
			got = f.Values["way"].(string)
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}
