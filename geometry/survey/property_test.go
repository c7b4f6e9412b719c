package survey_test

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/geometry/testkit"
)

// For any readings, the answer has a place and a judgement for every hole, is
// reproducible, and no hole is both fixed and without an error. A plain run
// asks twice for a third of them.
func TestAnyNetwork(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		holes := rapid.IntRange(2, 7).Draw(t, "holes")
		at := make([]geometry.Point, holes)
		for i := range at {
			at[i] = geometry.Point{X: float64(rapid.IntRange(0, 6).Draw(t, "x")) * 20, Y: float64(rapid.IntRange(0, 3).Draw(t, "y")) * 25}
		}
		n := survey.Network{Holes: holes, Level: [2]int{0, rapid.IntRange(0, holes-1).Draw(t, "level")}}
		if holes > 2 {
			n.Above = []int{rapid.IntRange(1, holes-1).Draw(t, "up")}
		}
		for range rapid.IntRange(1, 20).Draw(t, "readings") {
			a := rapid.IntRange(0, holes-1).Draw(t, "from")
			b := (a + rapid.IntRange(1, holes-1).Draw(t, "further")) % holes
			n.Readings = append(n.Readings, survey.Reading{From: a, To: b,
				Distance: math.Max(1, at[a].Distance(at[b])+rapid.Float64Range(-2, 2).Draw(t, "error"))})
		}
		s, err := survey.Solve(n)
		if err != nil {
			t.Fatal(err)
		}
		if testkit.Full() || len(n.Readings)%3 == 0 {
			if again, _ := survey.Solve(n); !reflect.DeepEqual(s, again) {
				t.Fatal("a second run says something else")
			}
		}
		free := map[int]bool{}
		for _, l := range s.Loose {
			free[l.Hole] = l.Why == survey.Free
			for _, p := range l.Next {
				if p[0] == p[1] || p[0] < 0 || p[1] < 0 || p[0] >= holes || p[1] >= holes {
					t.Fatalf("advice to measure %v", p)
				}
			}
		}
		for i, p := range s.Points {
			if math.IsNaN(p.X + p.Y) {
				t.Fatalf("hole %d lies at %v", i, p)
			}
			if math.IsInf(s.ErrorsMm[i], 0) != free[i] || math.IsNaN(s.ErrorsMm[i]) {
				t.Fatalf("hole %d: error %g, free %v", i, s.ErrorsMm[i], free[i])
			}
		}
	})
}

// Rotating and moving the part changes no distance, and so nothing in the
// result.
func TestPlaceOfThePartDoesNotMatter(t *testing.T) {
	t.Parallel()
	pairs := someWay(len(cover))
	n := survey.Network{Holes: len(cover), Readings: measured(cover, pairs), Level: [2]int{0, 1}, Above: []int{9}}
	want := solve(t, n)
	turned := make([]geometry.Point, len(cover))
	for i, p := range cover {
		turned[i] = geometry.Polar(geometry.Point{X: 77, Y: -31}, p.Distance(geometry.Point{}), p.AngleFrom(geometry.Point{})+123)
	}
	n.Readings = measured(turned, pairs)
	for i, p := range solve(t, n).Points {
		near(t, "a hole", p, want.Points[i], 1e-6)
	}
}
