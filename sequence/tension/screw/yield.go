package screw

import (
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// torsionRatio gives the torsional stress for each unit of tensile stress
// while the bolt is turned, in its stress diameter, when it begins to yield as
// a whole.
func torsionRatio(t thread.Thread, threadFriction float64, e Equation) float64 {
	// VDI 2230-1, section 5.4.3: τ/σ = (MG/WP)/(F/As), WP = π dS³/12, As = π dS²/4
	return 3 * ThreadArmMm(t, threadFriction, e) / t.StressDiameterMm()
}

// PreloadAtYieldShare gives the preload at which tension and torsion together
// use the share (0.9 by custom) of the yield stress.
func PreloadAtYieldShare(share float64, yield unit.Stress, t thread.Thread, threadFriction float64, e Equation) unit.Force {
	ratio := torsionRatio(t, threadFriction, e)
	// VDI 2230-1, table A1: FM = ν Rp0.2 As / √(1 + 3 (τ/σ)²)
	return unit.Force(share * float64(yield) * t.StressAreaMm2() / math.Sqrt(1+3*ratio*ratio))
}

// YieldShare gives the share of the yield stress that tension and torsion
// together use while the bolt is turned at the preload.
func YieldShare(preload unit.Force, yield unit.Stress, t thread.Thread, threadFriction float64, e Equation) float64 {
	return float64(preload / PreloadAtYieldShare(1, yield, t, threadFriction, e))
}
