package way

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// Published workshop text (see the README): from the centre outwards. On a
// plain two-row head the distance from the middle never decreases by more than
// one column step along the order.
func TestHeadsGoCentreOutwards(t *testing.T) {
	t.Parallel()
	const pitch = 95.0
	for columns := 2; columns <= 12; columns++ {
		points := geometry.Grid(columns, 2, pitch, 90, geometry.Point{X: 7, Y: 3})
		centre := geometry.Centroid(points)
		for _, way := range []Way{Spiral, Cross, Row} {
			last := 0.0
			for _, i := range Places(points, way, TurnDefault) {
				d := points[i].Distance(centre)
				if last-d > pitch {
					t.Errorf("2×%d %s: the distance falls from %.0f to %.0f", columns, way, last, d)
				}
				last = d
			}
		}
	}
}

func TestFewFasteners(t *testing.T) {
	t.Parallel()
	for n := range 4 {
		points := geometry.Row(n, 50, geometry.Point{}, 30)
		for _, way := range placeWays {
			if got := len(Places(points, way, TurnDefault)); got != n {
				t.Errorf("%s of %d places gives %d", way, n, got)
			}
		}
	}
}

func TestAutoPicksTheWay(t *testing.T) {
	t.Parallel()
	tests := []struct {
		name   string
		points []geometry.Point
		want   Way
	}{
		{"row", geometry.Row(6, 60, geometry.Point{X: 4}, 17), Row},
		{"circle", geometry.Circle(7, 200, geometry.Point{X: 4}, 13, false), Star},
		{"grid", geometry.Grid(4, 2, 92, 64, geometry.Point{}), Spiral},
		{"perimeter", geometry.Rectangle(5, 2, 304, 164, geometry.Point{}), Balanced},
		{"half a circle", geometry.Circle(16, 200, geometry.Point{}, 0, false)[:7], Balanced},
	}
	for _, tt := range tests {
		if got := For(family.Of(tt.points).Family); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
	}
}
