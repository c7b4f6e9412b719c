package compliance

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/sequence/interaction/checktest"
)

// Published: Abramowitz and Stegun, table 9.12, kei x to ten decimals (values
// from memory); and first principles, kei x = Im ∫₀^∞ exp(−x·e^{iπ/4}·cosh s) ds,
// by the trapezoid rule, which converges exponentially here.
func TestKeiOfTheTables(t *testing.T) {
	for x, want := range map[float64]float64{
		1: -0.4949946365, 2: -0.2024000678, 3: -0.0511218840, 4: 0.0021983993, 5: 0.0111875865,
	} {
		if got := Kei(x); math.Abs(got-want) > 0.6e-10 {
			t.Errorf("kei %g is %.11f, the table has %.10f", x, got, want)
		}
	}
	for _, x := range []float64{0.3, 1.7, 4.4, 9.9, 10.1, 17} {
		const step = 1e-3
		turned := cmplx.Rect(x, math.Pi/4)
		sum := imag(cmplx.Exp(-turned)) / 2
		for s := step; s < 8; s += step {
			sum += imag(cmplx.Exp(-turned * complex(math.Cosh(s), 0)))
		}
		if got := Kei(x); math.Abs(got-sum*step) > 1e-11 {
			t.Errorf("kei %g is %.12g, by its integral %.12g", x, got, sum*step)
		}
	}
}

// Published: Hetényi, Beams on Elastic Foundation, free ends: under a load in the
// middle y = (Pλ/2k)(cosh λl + cos λl + 2)/(sinh λl + sin λl), at a loaded end
// y = (2Pλ/k)(sinh λl cosh λl − sin λl cos λl)/(sinh² λl − sin² λl), and at the
// other end then (2Pλ/k)(sinh λl cos λl − sin λl cosh λl)/(sinh² λl − sin² λl),
// from short to long beams (formulas from memory).
func TestHetenyisBeams(t *testing.T) {
	const bending, foundation = 4.5e7, 300.0
	lambda := beamLambda(bending, foundation)
	for _, l := range []float64{20, 60, 140, 300, 500} {
		sinh, cosh := math.Sinh(lambda*l), math.Cosh(lambda*l)
		sin, cos := math.Sincos(lambda * l)
		c := checktest.Must[*mat.SymDense](t)(Beam{bending, foundation, l}.Compliance([]float64{0, l / 2, l}))
		ends := 2 * lambda / foundation / (sinh*sinh - sin*sin)
		for what, pair := range map[string][2]float64{
			"middle":    {c.At(1, 1), lambda / (2 * foundation) * (cosh + cos + 2) / (sinh + sin)},
			"end":       {c.At(0, 0), ends * (sinh*cosh - sin*cos)},
			"other end": {c.At(0, 2), ends * (sinh*cos - sin*cosh)},
		} {
			if math.Abs(pair[0]-pair[1]) > 1e-6*c.At(0, 0) { // by the elements of a fifth of 1/λ
				t.Errorf("%g mm, %s: %g, Hetényi %g", l, what, pair[0], pair[1])
			}
		}
	}
}

// Published: Timoshenko and Woinowsky-Krieger, table 37: a square plate with
// built-in edges deflects by 0.00560·P·a²/D under a load in its middle (value
// from memory). Here its frame is on a nearly rigid foundation. The elements
// are stiffer than the plate; with 8 per side by one percent.
func TestABuiltInPlate(t *testing.T) {
	const side, frame = 160.0, 60.0
	inside := func(p geometry.Point) bool { return math.Abs(p.X) < side/2 && math.Abs(p.Y) < side/2 }
	half := side/2 + frame
	plate := Plate{
		RigidityNmm: 1e6, Poisson: 0.3, MeshMm: 10,
		Box:    geometry.Box{Min: geometry.Point{X: -half, Y: -half}, Max: geometry.Point{X: half, Y: half}},
		Gasket: func(p geometry.Point) bool { return !inside(p) },
	}
	c := checktest.Must[*mat.SymDense](t)(plate.Compliance([]geometry.Point{{}}, 1e7))
	if got := c.At(0, 0) * plate.RigidityNmm / (side * side); math.Abs(got-0.00560) > 0.02*0.00560 {
		t.Errorf("got %.5f P a²/D, want 0.00560", got)
	}
}
