package way

import (
	"slices"
	"testing"

	"drawdown/geometry"
)

// First principles: places of a circle counted clockwise from the top, 1 and
// the one across, two between, then the rest.
func TestFourThenRound(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		n    int
		want []int
	}{
		{8, []int{1, 5, 3, 7, 2, 4, 6, 8}},
		{5, []int{1, 3, 5, 2, 4}}, // a star
		{12, []int{1, 7, 4, 10, 2, 3, 5, 6, 8, 9, 11, 12}},
		{4, []int{1, 3, 2, 4}}, // a star
	} {
		got := Places(geometry.Circle(c.n, 200, geometry.Point{}, 90, true), Four, TurnDefault)
		for k := range got {
			got[k]++
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%d: %v, not %v", c.n, got, c.want)
		}
	}
}
