package nearby_test

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/nearby"
)

// Four bores in a row, 100 mm apart, between two rows of fasteners. Expected from first
// principles: what a person sees at the point.
func TestTo(t *testing.T) {
	t.Parallel()
	var j geometry.Joint
	for i, label := range []string{"cyl 1", "cyl 2", "cyl 3", "cyl 4"} {
		x := float64(i)*100 - 150
		j.Bores = append(j.Bores, geometry.Bore{Centre: geometry.Point{X: x}, Diameter: 80, Label: label})
	}
	for i, id := range []string{"M1", "M2", "M3", "M4", "M5"} {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: id, At: geometry.Point{X: float64(i)*100 - 200, Y: 50}})
	}
	for _, c := range []struct {
		at   geometry.Point
		want nearby.Place
	}{
		{geometry.Point{X: -0.1, Y: 0.6}, nearby.Place{Between: [2]string{"cyl 2", "cyl 3"}}},
		{geometry.Point{X: 100, Y: -3}, nearby.Place{Between: [2]string{"cyl 3", "cyl 4"}}},
		{geometry.Point{X: -60, Y: 10}, nearby.Place{Near: "cyl 2"}},
		{geometry.Point{X: 10, Y: 60}, nearby.Place{Near: "M3"}},
		{geometry.Point{X: -150, Y: 55}, nearby.Place{Between: [2]string{"M1", "M2"}}},
		{geometry.Point{X: 190, Y: -90}, nearby.Place{Near: "cyl 4"}},
	} {
		if got := nearby.To(j, c.at); got != c.want {
			t.Errorf("%v: %+v, want %+v", c.at, got, c.want)
		}
	}
	if got := nearby.To(geometry.Joint{}, geometry.Point{}); got != (nearby.Place{}) {
		t.Errorf("an empty joint: %+v", got)
	}
}
