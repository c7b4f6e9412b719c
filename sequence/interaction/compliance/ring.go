package compliance

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Ring is a round flange as a ring beam on a foundation: it bends out of its
// plane and twists. All is for the circle through the middle of its section.
type Ring struct {
	RadiusMm       float64
	BendingNmm2    float64 // E·I
	TorsionNmm2    float64 // G·J
	TwistN         float64 // hub, pipe or full face against twist, N·mm for each mm round and radian
	BoltOffsetMm   float64 // bolt circle less the ring's radius
	GasketOffsetMm float64 // middle of the gasket less the ring's radius
	Harmonics      int     // that are summed; 0: 60
}

const usualHarmonics, mostHarmonics = 60, 10_000

// Compliance gives what the ring gives way at each bolt for a unit load at
// each other, in mm/N. The angles are in radians; the foundation is that of a
// millimetre round the ring, in N/mm².
func (r Ring) Compliance(angles []float64, foundationMPa float64) (*mat.SymDense, error) {
	c, err := r.coefficients(foundationMPa)
	if err != nil {
		return nil, err
	}
	if len(angles) == 0 {
		return nil, errNoFasteners
	}
	m := mat.NewSymDense(len(angles), nil)
	for i := range angles {
		for j := i; j < len(angles); j++ {
			apart := angles[i] - angles[j]
			if math.IsNaN(apart) || math.IsInf(apart, 0) {
				return nil, Misuse("angle", angles[j], "radians")
			}
			sum := 0.0
			for n, of := range c {
				sum += of * math.Cos(float64(n)*apart)
			}
			m.SetSym(i, j, sum)
		}
	}
	return m, nil
}

// coefficients gives c_n of C(θ) = Σ c_n cos nθ.
func (r Ring) coefficients(foundationMPa float64) ([]float64, error) {
	if err := r.check(foundationMPa); err != nil {
		return nil, err
	}
	count := r.Harmonics
	if count == 0 {
		count = usualHarmonics
	}
	c := make([]float64, count+1)
	for n := range c {
		c[n] = r.coefficient(float64(n), foundationMPa)
	}
	return c, nil
}

func (r Ring) check(foundationMPa float64) error {
	if err := positive(quantity{"radius of the ring", r.RadiusMm, "mm"}, quantity{"bending stiffness of the ring", r.BendingNmm2, "N·mm²"},
		quantity{"torsional stiffness of the ring", r.TorsionNmm2, "N·mm²"}, quantity{"foundation", foundationMPa, "N/mm²"}); err != nil {
		return err
	}
	if err := notNegative(quantity{"stiffness against twist", r.TwistN, "N"}); err != nil {
		return err
	}
	for _, q := range []quantity{{"bolt circle", r.BoltOffsetMm, "mm"}, {"gasket", r.GasketOffsetMm, "mm"}} {
		if !(math.Abs(q.value) < r.RadiusMm) {
			return finding.Failed(OffTheRing, finding.Values{"what": q.name, "off": unit.Length(q.value), "radius": unit.Length(r.RadiusMm)})
		}
	}
	if r.Harmonics < 0 || r.Harmonics > mostHarmonics {
		return Misuse("harmonics", r.Harmonics, mostHarmonics)
	}
	return nil
}

// coefficient solves one harmonic of deflection W and slope Φ = dw/dr. Twist
// and offsets must share the sign of Φ: without offsets a wrong one does not
// show.
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

// anglesOf gives the directions of the bolts from the centre, in radians.
func anglesOf(at []geometry.Point, centre geometry.Point) []float64 {
	angles := make([]float64, len(at))
	for i, p := range at {
		angles[i] = math.Atan2(p.Y-centre.Y, p.X-centre.X)
	}
	return angles
}
