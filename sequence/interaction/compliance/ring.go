package compliance

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// Ring is a round flange as a ring beam on a foundation: it bends out of its
// plane and twists. All values are for the circle through the middle of its
// cross-section.
type Ring struct {
	RadiusMm       float64
	BendingNmm2    float64 // E·I
	TorsionNmm2    float64 // G·J
	TwistN         float64 // resistance of hub, pipe or full face to twist, N·mm per mm of circumference and radian
	BoltOffsetMm   float64 // radius of the bolt circle minus that of the ring
	GasketOffsetMm float64 // middle radius of the gasket minus that of the ring
}

// Compliance returns the deflection of the ring at each bolt for a unit load at
// each other, in mm/N. The angles are in radians; the foundation is per
// millimetre of circumference, in N/mm²; harmonics is the number of terms.
func (r Ring) Compliance(angles []float64, foundationMPa float64, harmonics int) (*mat.SymDense, error) {
	if len(angles) == 0 {
		return nil, errNoFasteners
	}
	c := r.coefficients(foundationMPa, harmonics)
	return symmetric(len(angles), func(i, j int) (sum float64) {
		for n, of := range c {
			sum += of * math.Cos(float64(n)*(angles[i]-angles[j]))
		}
		return sum
	}), nil
}

// coefficients returns c_n of C(θ) = Σ c_n cos nθ.
func (r Ring) coefficients(foundationMPa float64, harmonics int) []float64 {
	c := make([]float64, harmonics+1)
	for n := range c {
		c[n] = r.coefficient(float64(n), foundationMPa)
	}
	return c
}

// coefficient solves one harmonic of deflection W and slope Φ = dw/dr. Twist
// and offsets must use the same sign of Φ: without offsets, a wrong sign has no
// effect.
func (r Ring) coefficient(n, foundationMPa float64) float64 {
	R := r.RadiusMm
	bend := [2]float64{-n * n / (R * R), 1 / R} // hoop curvature (Φ − n²W/R)/R
	twist := [2]float64{-n / (R * R), n / R}    // twist n(Φ − W/R)/R
	gasket := [2]float64{1, r.GasketOffsetMm}   // w at the gasket
	bolt := [2]float64{1, r.BoltOffsetMm}       // w at the bolts
	var s00, s01, s11 float64                   // energy of the harmonic
	for _, part := range []struct {
		stiffness float64
		by        [2]float64
	}{{r.BendingNmm2, bend}, {r.TorsionNmm2, twist}, {foundationMPa, gasket}, {r.TwistN, [2]float64{0, 1}}} {
		s00 += part.stiffness * part.by[0] * part.by[0]
		s01 += part.stiffness * part.by[0] * part.by[1]
		s11 += part.stiffness * part.by[1] * part.by[1]
	}
	round := math.Pi * R // ∫cos² nθ R dθ
	if n == 0 {
		round = 2 * math.Pi * R
	}
	return (s11*bolt[0]*bolt[0] - 2*s01*bolt[0]*bolt[1] + s00*bolt[1]*bolt[1]) / ((s00*s11 - s01*s01) * round) // f′ S⁻¹ f
}

// anglesOf returns the directions of the bolts from the centre, in radians.
func anglesOf(at []geometry.Point, centre geometry.Point) []float64 {
	angles := make([]float64, len(at))
	for i, p := range at {
		angles[i] = math.Atan2(p.Y-centre.Y, p.X-centre.X)
	}
	return angles
}
