package gaps_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/trace/gaps"
)

// A layout with one hole taken out has a gap there, a whole one has none, and
// neither has one without a rule (first principles).
func TestGaps(t *testing.T) {
	t.Parallel()
	row := geometry.Grid(6, 1, 40, 0, geometry.Point{})
	circle := geometry.Circle(8, 160, geometry.Point{X: 3, Y: 4}, 20, true)
	grid := geometry.Grid(4, 3, 50, 30, geometry.Point{})
	frame := []geometry.Point{{X: -90, Y: 50}, {X: -31, Y: 52}, {X: 31, Y: 52}, {X: 90, Y: 50}, {X: 84, Y: -50}, {X: 25, Y: -47}, {X: -25, Y: -47}, {X: -84, Y: -50}}
	odd := []geometry.Point{{X: -104.3, Y: 62.1}, {X: -51.2, Y: 63.4}, {X: 3.7, Y: 62.8}, {X: 55.9, Y: 63.1}, {X: 105.1, Y: 8.4}, {X: 104.2, Y: -62.5}, {X: 49.3, Y: -60.1}, {X: -57.4, Y: -66.7}}
	for _, c := range []struct {
		name  string
		holes []geometry.Point
		out   int // which is taken out
		want  gaps.By
	}{
		{"row", row, 2, gaps.Row}, {"circle", circle, 5, gaps.Circle}, {"grid, a corner", grid, 0, gaps.Mirror}, {"grid, within", grid, 5, gaps.Row}, {"frame", frame, 3, gaps.Mirror}, {"odd", odd, 2, ""},
	} {
		if found := gaps.Find(c.holes); len(found) > 0 {
			t.Errorf("%s, whole: %v", c.name, found)
		}
		left := append(append([]geometry.Point{}, c.holes[:c.out]...), c.holes[c.out+1:]...)
		found := gaps.Find(left)
		if c.want == "" {
			if len(found) > 0 {
				t.Errorf("%s: %v", c.name, found)
			}
			continue
		}
		if len(found) != 1 || found[0].At.Distance(c.holes[c.out]) > 0.7 {
			t.Errorf("%s: %v, want one at %v", c.name, found, c.holes[c.out])
		}
	}
}
