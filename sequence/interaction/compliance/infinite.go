package compliance

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// InfinitePlate is a thin plate without edges on a foundation. It is only a
// preview: with the real edges and a cut-out gasket the losses can be twice as
// large.
type InfinitePlate struct{ RigidityNmm float64 }

// At returns the deflection of the plate at a distance from a unit load, in
// mm/N.
func (p InfinitePlate) At(distanceMm, foundationMPaPerMm float64) float64 {
	l := CharacteristicLengthMm(p.RigidityNmm, foundationMPaPerMm)
	// Timoshenko and Woinowsky-Krieger, art. 57: w = −P l²/(2πD)·kei(r/l); w(0) = P l²/(8D)
	return -l * l / (2 * math.Pi * p.RigidityNmm) * Kei(distanceMm/l)
}

// Compliance returns the deflection of the plate at each point for a unit load
// at each other, in mm/N.
func (p InfinitePlate) Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error) {
	if err := positive(quantity{"plate rigidity", p.RigidityNmm, "N·mm"}, foundation(foundationMPaPerMm)); err != nil {
		return nil, err
	}
	if len(at) == 0 {
		return nil, errNoFasteners
	}
	return symmetric(len(at), func(i, j int) float64 { return p.At(at[i].Distance(at[j]), foundationMPaPerMm) }), nil
}

// beamLambda is 1 over the characteristic length of a beam, in 1/mm.
func beamLambda(bendingNmm2, foundationMPa float64) float64 {
	return math.Pow(foundationMPa/(4*bendingNmm2), 0.25) // Hetényi, section 3: λ = (k/4EI)^¼
}

// symmetric fills a symmetric matrix.
func symmetric(n int, of func(i, j int) float64) *mat.SymDense {
	c := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			c.SetSym(i, j, of(i, j))
		}
	}
	return c
}
