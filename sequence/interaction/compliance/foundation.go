package compliance

import "math"

// BlockMPaPerMm is the foundation of a thick counterpart under a plate: the one
// on which the plate deflects under a point load as it does on an elastic
// half-space. A load spreads less far in a thinner plate, so the foundation is
// stiffer: 860 MPa/mm under 60 mm of aluminium, some thousands under a thin
// cover.
func BlockMPaPerMm(rigidityNmm float64, block Part) float64 {
	e0, nu0 := float64(block.Elastic), block.Poisson
	l0 := math.Cbrt(2 * rigidityNmm * (1 - nu0*nu0) / e0) // Timoshenko and Woinowsky-Krieger, art. 61: l₀³ = 2D(1 − ν₀²)/E₀
	l2 := 8 * l0 * l0 / (3 * math.Sqrt(3))                // w₀ = P l₀²/(3√3 D) there, = P l²/(8D) on springs
	return rigidityNmm / (l2 * l2)
}

// InSeries is the foundation of a gasket on a block. A block with stiffness 0
// is taken as rigid.
func InSeries(gasketMPaPerMm, blockMPaPerMm float64) float64 {
	if blockMPaPerMm == 0 {
		return gasketMPaPerMm
	}
	return gasketMPaPerMm * blockMPaPerMm / (gasketMPaPerMm + blockMPaPerMm)
}

// GasketMPaPerMm is the stiffness of a gasket from its data sheet: the
// compression in percent of its thickness at a pressure (ASTM F36 states both).
func GasketMPaPerMm(pressureMPa, compressedPercent, thicknessMm float64) float64 {
	return 100 * pressureMPa / (compressedPercent * thicknessMm)
}
