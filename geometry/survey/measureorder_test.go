package survey_test

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/survey"
)

// partsToMeasure are made up: the places are the truth.
func partsToMeasure() map[string][]geometry.Point {
	grid := func(columns, rows int, x, y float64) (all []geometry.Point) {
		for i := range columns * rows {
			all = append(all, geometry.Point{X: float64(i%columns) * x, Y: float64(i/columns) * y})
		}
		return all
	}
	uneven := []geometry.Point{{X: 0, Y: 0}, {X: 61, Y: -4}, {X: 120, Y: 9}, {X: 171, Y: 40}, {X: 166, Y: 97}, {X: 104, Y: 121}, {X: 47, Y: 112}, {X: -9, Y: 74}, {X: 80, Y: 55}}
	return map[string][]geometry.Point{
		"grid 3 × 2": grid(3, 2, 72, 84), "grid 5 × 2": grid(5, 2, 95, 90), "grid 4 × 4": grid(4, 4, 50, 60),
		"circle of 8": survey.RoundTheEdge(8), "circle of 24": survey.RoundTheEdge(24), "uneven": uneven, "grid 6 × 5": grid(6, 5, 40, 70),
	}
}

// networkOf measures the pairs without an error, to a hundredth.
func networkOf(at []geometry.Point, pairs [][2]int) survey.Network {
	n := survey.Network{Holes: len(at), Level: [2]int{0, 1}, RoundedToMm: 0.01}
	for i := range at[2:] {
		if off := cross(at[0], at[1], at[i+2]); off > 1 {
			n.Above = append(n.Above, i+2)
		} else if off < -1 {
			n.Below = append(n.Below, i+2)
		}
	}
	for _, p := range pairs {
		n.Readings = append(n.Readings, survey.Reading{From: p[0], To: p[1], Distance: math.Round(at[p[0]].Distance(at[p[1]])*100) / 100})
	}
	return n
}

func cross(a, b, c geometry.Point) float64 {
	u, v := b.Sub(a), c.Sub(a)
	return (u.X*v.Y - u.Y*v.X) / a.Distance(b)
}

// By first principles: the pairs locate every hole, each reading is checked by
// others, and the way is followed: each pair is of a hole and an earlier one.
func TestPairsLocateEveryHole(t *testing.T) {
	t.Parallel()
	for name, at := range partsToMeasure() {
		pairs := survey.Pairs(at)
		n := networkOf(at, pairs)
		solved, err := survey.Solve(n)
		if err != nil || len(solved.Loose)+len(solved.Suspect)+len(solved.Unchecked) > 0 || solved.Mirrored {
			t.Errorf("%s: %v, loose %v, suspect %v, unchecked %v", name, err, solved.Loose, solved.Suspect, solved.Unchecked)
		}
		degree, seen, twice := make([]int, len(at)), map[int]bool{pairs[0][0]: true}, map[[2]int]bool{}
		last := -1
		for _, p := range pairs {
			degree[p[0]]++
			degree[p[1]]++
			if !seen[p[0]] || twice[p] || seen[p[1]] && p[1] != last {
				t.Errorf("%s: %v is out of order", name, p)
			}
			seen[p[1]], twice[p], last = true, true, p[1]
		}
		if least := slices.Min(degree); least < 4 {
			t.Errorf("%s: a hole is measured to %d others", name, least)
		}
		if most := 4 * len(at); len(pairs) > most {
			t.Errorf("%s: %d pairs, more than %d", name, len(pairs), most)
		}
		if left := (survey.Report{Network: n, Solution: solved}).ToMeasure(); len(left) > 0 {
			t.Errorf("%s: %v is still to be measured", name, left)
		}
	}
}

// One reading a millimetre off is among those that do not fit, and is to be
// measured again.
func TestPairsShowAWrongReading(t *testing.T) {
	t.Parallel()
	for name, at := range partsToMeasure() {
		pairs := survey.Pairs(at)
		for i := 0; i < len(pairs); i += 9 {
			n := networkOf(at, pairs)
			n.Readings[i].Distance++
			solved, err := survey.Solve(n)
			again := (survey.Report{Network: n, Solution: solved}).ToMeasure()
			if err != nil || !slices.Contains(solved.Suspect, i) || !slices.Contains(again, [2]int{min(pairs[i][0], pairs[i][1]), max(pairs[i][0], pairs[i][1])}) {
				t.Errorf("%s: reading %v: suspect %v, again %v", name, pairs[i], solved.Suspect, again)
			}
		}
	}
}

// Few holes: all their pairs. Each hole that has no reading is to be measured.
func TestPairsOfFewHoles(t *testing.T) {
	t.Parallel()
	for holes := 2; holes <= 5; holes++ {
		if pairs := survey.Pairs(survey.RoundTheEdge(holes)); len(pairs) != holes*(holes-1)/2 {
			t.Errorf("%d holes: %v", holes, pairs)
		}
	}
	row := []geometry.Point{{}, {X: 50}, {X: 100}, {X: 150}, {X: 200}, {X: 250}, {X: 300}}
	if solved, err := survey.Solve(networkOf(row, survey.Pairs(row))); err != nil || len(solved.Loose)+len(solved.Unchecked) > 0 {
		t.Errorf("a row: %v, loose %v, unchecked %v", err, solved.Loose, solved.Unchecked)
	}
	at := survey.RoundTheEdge(7)
	pairs := slices.DeleteFunc(survey.Pairs(at), func(p [2]int) bool { return p[0] == 6 || p[1] == 6 })
	n := networkOf(at, pairs)
	solved, _ := survey.Solve(n)
	left := (survey.Report{Network: n, Solution: solved}).ToMeasure()
	if len(left) < 3 || slices.ContainsFunc(left[:3], func(p [2]int) bool { return p[1] != 6 }) {
		t.Errorf("left %v", left)
	}
}
