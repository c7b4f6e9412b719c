package compliance

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/geometry/unit"
)

func drawnPlate(t *rapid.T) (Plate, []geometry.Point, float64) {
	box := geometry.Box{Max: geometry.Point{X: rapid.Float64Range(80, 200).Draw(t, "width"), Y: rapid.Float64Range(40, 120).Draw(t, "height")}}
	part := Part{70000, rapid.Float64Range(0, 0.4).Draw(t, "poisson"), unit.Length(rapid.Float64Range(6, 30).Draw(t, "thickness"))}
	hole := geometry.Bore{Centre: geometry.Point{X: box.Max.X * 0.4, Y: box.Max.Y * 0.55}, Diameter: 25}
	var at []geometry.Point
	for range 4 {
		at = append(at, geometry.Point{X: box.Max.X * rapid.Float64Range(0, 1).Draw(t, "x"), Y: box.Max.Y * rapid.Float64Range(0, 1).Draw(t, "y")})
	}
	plate := Plate{RigidityNmm: part.RigidityNmm(), Poisson: part.Poisson, Box: box, Gasket: Bores([]geometry.Bore{hole}).not(), MeshMm: 12}
	return plate, at, rapid.Float64Range(20, 300).Draw(t, "foundation")
}

func (r Region) not() Region { return Region(nil).Without(r) }

// First principles: mirroring or turning a plate by 90° does not change its
// compliance.
func TestMirroredPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plate, at, k := drawnPlate(t)
		w, h := plate.Box.Max.X, plate.Box.Max.Y
		straight, err := plate.Compliance(at, k)
		if err != nil {
			t.Fatal(err)
		}
		for name, turn := range map[string]func(geometry.Point) geometry.Point{
			"mirrored": func(p geometry.Point) geometry.Point { return geometry.Point{X: w - p.X, Y: p.Y} },
			"swapped":  func(p geometry.Point) geometry.Point { return geometry.Point{X: p.Y, Y: p.X} },
		} {
			other, gasket := plate, plate.Gasket
			other.Gasket = func(p geometry.Point) bool { return gasket(turn(p)) } // its own inverse
			if name == "swapped" {
				other.Box.Max = geometry.Point{X: h, Y: w}
			}
			var moved []geometry.Point
			for _, p := range at {
				q := turn(p) // rounding must not push a bolt over the edge
				moved = append(moved, geometry.Point{X: math.Max(0, math.Min(other.Box.Max.X, q.X)), Y: math.Max(0, math.Min(other.Box.Max.Y, q.Y))})
			}
			c, err := other.Compliance(moved, k)
			if err != nil {
				t.Fatal(err)
			}
			for i := range at {
				for n := range at {
					if math.Abs(c.At(i, n)-straight.At(i, n)) > 1e-8*straight.At(i, i) {
						t.Fatalf("%s: C %d %d is %g, straight %g", name, i, n, c.At(i, n), straight.At(i, n))
					}
				}
			}
		}
	})
}

// First principles: C(s·D, s·k) = C/s. Equilibrium: a uniform load deflects
// uniformly, so k ∫C dA = 1 for a plate on a full gasket.
func TestScaledPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plate, at, k := drawnPlate(t)
		s := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		c, err := plate.Compliance(at, k)
		if err != nil {
			t.Fatal(err)
		}
		plate.RigidityNmm *= s
		scaled, err := plate.Compliance(at, s*k)
		if err != nil {
			t.Fatal(err)
		}
		for i := range at {
			for n := range at {
				if math.Abs(scaled.At(i, n)*s-c.At(i, n)) > 1e-9*c.At(i, i) {
					t.Fatalf("C %d %d: %g, scaled back %g", i, n, c.At(i, n), scaled.At(i, n)*s)
				}
			}
		}
	})
}
