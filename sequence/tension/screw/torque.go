package screw

import (
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Equation is a form of the relation between torque and preload.
type Equation string

const (
	Exact  Equation = "exact"  // with lead angle and half angle of the thread; the default
	Linear Equation = "linear" // ISO 16047, VDI 2230: lower by up to 1 % for friction up to 0.24
)

// Equations lists the valid forms.
var Equations = []Equation{Exact, Linear}

const halfThreadAngle = 30 * math.Pi / 180 // ISO 68-1 and ASME B1.1: 60° profile

// ThreadArmMm returns the torque in the thread per newton of preload, in mm
// (N·mm/N), for a coefficient of friction of the thread.
func ThreadArmMm(t thread.Thread, friction float64, e Equation) float64 {
	d2 := t.PitchDiameterMm()
	if e == Linear {
		// ISO 16047, clause 3 and VDI 2230-1: P/2π + d2 µG/(2 cos 30°), printed as 0.16 P + 0.58 d2 µG
		return t.PitchMm/(2*math.Pi) + d2*friction/(2*math.Cos(halfThreadAngle))
	}
	lead := math.Atan(t.PitchMm / (math.Pi * d2))
	drag := math.Atan(friction / math.Cos(halfThreadAngle))
	return d2 / 2 * math.Tan(lead+drag) // screw equation, Shigley Eq. (8-5) with the half angle: d2/2 tan(φ + ρ′)
}

// HeadArmMm returns the torque under the head per newton of preload, in mm, for
// a coefficient of friction of the bearing face.
func HeadArmMm(effective unit.Length, friction float64) float64 {
	return float64(effective) / 2 * friction // ISO 16047, VDI 2230-1: DKm/2 µK
}

func armMm(t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) float64 {
	return ThreadArmMm(t, threadFriction, e) + HeadArmMm(effective, headFriction)
}

// Torque returns the torque that gives a preload.
func Torque(preload unit.Force, t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) unit.Torque {
	return unit.Torque(float64(preload) * armMm(t, effective, threadFriction, headFriction, e) / 1000)
}

// Preload returns the preload given by a torque.
func Preload(torque unit.Torque, t thread.Thread, effective unit.Length, threadFriction, headFriction float64, e Equation) unit.Force {
	return unit.Force(float64(torque) * 1000 / armMm(t, effective, threadFriction, headFriction, e))
}

// PreloadAtYieldShare returns the preload at which tension and torsion together
// use the share (usually 0.9) of the yield stress in a section of the diameter.
func PreloadAtYieldShare(share float64, yield unit.Stress, t thread.Thread, section unit.Length, threadFriction float64, e Equation) unit.Force {
	// While the bolt is turned, when the section begins to yield as a whole. VDI
	// 2230-1, section 5.4.3: τ/σ = (MG/WP)/(F/A0), WP = π d0³/12, A0 = π d0²/4
	ratio := 3 * ThreadArmMm(t, threadFriction, e) / float64(section)
	// VDI 2230-1, table A1: FM = ν Rp0.2 A0 / √(1 + 3 (τ/σ)²)
	return unit.Force(share * float64(yield) * areaMm2(section) / math.Sqrt(1+3*ratio*ratio))
}

// YieldShare returns the share of the yield stress that tension and torsion
// together use while the bolt is turned at the preload.
func (s Completed) YieldShare(preload unit.Force, threadFriction float64) float64 {
	return float64(preload / s.preloadAt(1, s.Strength.Yield, threadFriction))
}
