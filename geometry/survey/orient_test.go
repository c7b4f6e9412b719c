package survey

import (
	"testing"

	"drawdown/geometry"
)

// First principles: rotated so that the first level hole is the origin and the
// second is to its right, and mirrored so that the named holes are on their
// sides. If none is named, the first hole off the line is above it.
func TestOriented(t *testing.T) {
	t.Parallel()
	frame := at(0, 0, 50, 0, 20, 0.02, 30, 40, 10, -20)
	for turn := 0.0; turn < 360; turn += 45 {
		for _, mirror := range []float64{1, -1} {
			lying := geometry.Mapped(frame, func(p geometry.Point) geometry.Point {
				p.Y *= mirror
				return geometry.Polar(geometry.Point{X: 7, Y: -3}, p.Distance(geometry.Point{}), turn+p.AngleFrom(geometry.Point{}))
			})
			for name, n := range map[string]Network{
				"above": {Above: []int{3}}, "below": {Below: []int{4}}, "both": {Above: []int{3}, Below: []int{4}}, "none": {},
				"more above than not": {Above: []int{3, 4}},
			} {
				n.Level = [2]int{0, 1}
				got, decided := n.oriented(lying, inAll(5))
				if decided != (name != "none") {
					t.Errorf("%s: decided %v", name, decided)
				}
				for i, p := range got {
					if p.Distance(frame[i]) > 1e-9 {
						t.Errorf("%s, turned by %g, mirrored %g: hole %d at %v, want %v", name, turn, mirror, i, p, frame[i])
					}
				}
				if got[1].Y != 0 {
					t.Errorf("%s: the second level hole at %v", name, got[1])
				}
			}
		}
	}
	row := at(0, 0, 30, 40, 60, 80, 10, 0)
	got, _ := Network{}.oriented(row, []bool{true, true, true, false})
	if got[2].Distance(geometry.Point{X: 100}) > 1e-9 {
		t.Errorf("no level holes: the long axis of the core lies at %v", got)
	}
}

// The named holes decide if together they are more than twenty accuracies off
// the line, on either side.
func TestDecided(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		height float64
		n      Network
		want   bool
	}{
		{0.99, Network{Above: []int{2}}, false}, {1.01, Network{Above: []int{2}}, true}, {-1.01, Network{Above: []int{2}}, true},
		{1.01, Network{Above: []int{2}, AccuracyMm: 0.06}, false}, {1.01, Network{Above: []int{2}, RoundedToMm: 0.1}, false},
		{0.6, Network{Above: []int{2, 2}}, true}, {50, Network{}, false}, {0.6, Network{Above: []int{2}, Below: []int{3}}, true},
	} {
		c.n.Level = [2]int{0, 1}
		if _, got := c.n.oriented(at(0, 0, 50, 0, 20, c.height, 20, -c.height), inAll(4)); got != c.want {
			t.Errorf("%g mm, %+v: %v", c.height, c.n, got)
		}
	}
}

func TestSideways(t *testing.T) {
	t.Parallel()
	n := Network{Above: []int{0, 1}, Below: []int{2, 3}}
	sum, astray := n.sideways(at(0, 3, 0, -1, 0, -5, 0, 2))
	if sum != 3-1+5-2 || astray != 2 || n.astray(at(0, 0, 0, 1, 0, 0, 0, 4)) != 1 {
		t.Errorf("sum %g, %d astray", sum, astray)
	}
}

// A hole within a thousandth of the box's sides from the line does not count.
func TestLean(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		first, want float64
	}{{0.099, -40}, {0.105, 0.105}, {-0.099, -40}, {-0.105, -0.105}} {
		if got := lean(at(0, 0, 60, c.first, 30, -40, 30, 0), []bool{true, true, true, true}); got != c.want {
			t.Errorf("%g: %g, want %g", c.first, got, c.want)
		}
	}
	if got := lean(at(0, 0, 60, 30, 10, 0), []bool{true, false, true}); got != 0 {
		t.Errorf("outside the core: %g", got)
	}
}
