package way

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
)

// numbers returns the number of each place in the order, as in the picture.
func numbers(order []int) []int {
	n := make([]int, len(order))
	for k, i := range order {
		n[i] = k + 1
	}
	return n
}

// Expected values: the canonical orders stated in the pattern-file format.
func TestCanonicalOrders(t *testing.T) {
	t.Parallel()
	grid := geometry.Grid(5, 2, 95, 90, geometry.Point{X: 12, Y: -7})
	row := func(n int) []geometry.Point { return geometry.Row(n, 60, geometry.Point{X: 3, Y: 4}, 0) }
	tests := []struct {
		name   string
		points []geometry.Point
		way    Way
		turn   Turn
		want   []int
	}{
		{"grid 2×5 spiral left", grid, Spiral, TurnLeft, []int{9, 5, 1, 4, 8, 10, 6, 2, 3, 7}},
		{"grid 2×5 spiral right", grid, Spiral, TurnRight, []int{8, 4, 1, 5, 9, 7, 3, 2, 6, 10}},
		{"grid 2×5 auto is spiral left", grid, Auto, TurnDefault, []int{9, 5, 1, 4, 8, 10, 6, 2, 3, 7}},
		{"row of 5", row(5), Row, TurnDefault, []int{5, 3, 1, 2, 4}},
		{"row of 5 mirrored", row(5), Row, TurnRight, []int{4, 2, 1, 3, 5}},
		{"row of 4", row(4), Row, TurnDefault, []int{3, 1, 2, 4}},
		{"row of 4 mirrored", row(4), Row, TurnRight, []int{4, 2, 1, 3}},
		{"row of 5 auto", row(5), Auto, TurnDefault, []int{5, 3, 1, 2, 4}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, numbers(Places(tt.points, tt.way, tt.turn))); diff != "" {
				t.Errorf("numbers by place (-want +got):\n%s", diff)
			}
		})
	}
}
