package survey_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/survey"
)

// shaken moves every place a little.
func shaken(at []geometry.Point, by float64) []geometry.Point {
	moved := make([]geometry.Point, len(at))
	for i, p := range at {
		moved[i] = p.Add(geometry.Polar(geometry.Point{}, by, float64(137*i)))
	}
	return moved
}

// The layouts are those of the generators (first principles).
func TestRecognise(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		at   []geometry.Point
		want survey.Regular
	}{
		"grid":          {geometry.Grid(5, 2, 95, 90, geometry.Point{X: 190, Y: 45}), survey.Regular{Shape: survey.Grid, Columns: 5, Rows: 2, X: 95, Y: 90}},
		"square":        {geometry.Grid(2, 2, 60, 60, geometry.Point{}), survey.Regular{Shape: survey.Grid, Columns: 2, Rows: 2, X: 60, Y: 60}},
		"circle":        {geometry.Circle(16, 240, geometry.Point{X: 3}, 90, true), survey.Regular{Shape: survey.Circle, Count: 16, X: 240}},
		"left circle":   {geometry.Circle(7, 112.5, geometry.Point{X: 3}, 12, false), survey.Regular{Shape: survey.Circle, Count: 7, X: 112.5}},
		"cross of four": {geometry.Circle(4, 80, geometry.Point{}, 90, true), survey.Regular{Shape: survey.Circle, Count: 4, X: 80}},
		"row":           {geometry.Row(5, 60, geometry.Point{X: 7}, 30), survey.Regular{Shape: survey.Row, Count: 5, X: 60}},
		"rectangle":     {geometry.Rectangle(5, 2, 300, 160, geometry.Point{}), survey.Regular{Shape: survey.Rectangle, Columns: 5, Rows: 2, X: 300, Y: 160}},
	} {
		got, ok := survey.Recognise(shaken(c.at, 0.05), 0.3, 0.05, survey.MillimetreSteps)
		if !ok || got.Shape != c.want.Shape || got.Columns != c.want.Columns || got.Rows != c.want.Rows || got.Count != c.want.Count ||
			math.Abs(got.X-c.want.X) > 1e-9 || math.Abs(got.Y-c.want.Y) > 1e-9 {
			t.Errorf("%s: %v %+v, want %+v", name, ok, got, c.want)
			continue
		}
		// The layout's own places are those of the part, in any order.
		for _, p := range c.at {
			nearest := math.Inf(1)
			for _, q := range got.Points() {
				nearest = math.Min(nearest, p.Distance(q))
			}
			if nearest > 0.12 {
				t.Errorf("%s: no place of the layout near %v", name, p)
			}
		}
		if got.OffMm < 0.03 || got.OffMm > 0.12 {
			t.Errorf("%s: off by %g mm, though every place was moved by 0.05", name, got.OffMm)
		}
	}
}

func TestIrregularIsNotOffered(t *testing.T) {
	t.Parallel()
	far := geometry.Grid(5, 2, 95, 90, geometry.Point{})
	far[3].X += 1.5
	short := geometry.Circle(12, 200, geometry.Point{}, 90, true)[1:]
	for name, at := range map[string][]geometry.Point{"cover": cover, "one hole out": far, "a hole missing": short, "two": cover[:2]} {
		if got, ok := survey.Recognise(at, 0.3, 0.05, survey.MillimetreSteps); ok {
			t.Errorf("%s is called %+v", name, got)
		}
	}
}

// A recognized layout is as close as it says.
func TestOfferHolds(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		at := geometry.Grid(rapid.IntRange(2, 6).Draw(t, "columns"), rapid.IntRange(2, 4).Draw(t, "rows"),
			rapid.Float64Range(30, 90).Draw(t, "across"), rapid.Float64Range(30, 90).Draw(t, "up"), geometry.Point{X: 4})
		at = shaken(at, rapid.Float64Range(0, 0.4).Draw(t, "moved"))
		got, ok := survey.Recognise(at, 0.3, 0.05, survey.MillimetreSteps)
		if !ok {
			return
		}
		for _, p := range at {
			nearest := math.Inf(1)
			for _, q := range got.Points() {
				nearest = math.Min(nearest, p.Distance(q))
			}
			if nearest > got.OffMm+1e-9 || got.OffMm > 0.3 {
				t.Fatalf("a place lies %g mm off %+v", nearest, got)
			}
		}
	})
}
