package strength

import (
	"cmp"
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

var tangentOfFlank = math.Tan(30 * math.Pi / 180) // ISO 68-1 and ASME B1.1: 60° profile

// BoltShearAreaMm2 returns the shear area of the threads of a bolt over an
// engaged length: on the cylinder of the nut's inner diameter.
func BoltShearAreaMm2(t thread.Thread, l thread.Limits, engaged unit.Length) float64 {
	// FED-STD-H28, Alexander (1977): ASs = π n Le Kn (1/2n + 0.57735 (Es − Kn)),
	// n = 1/P; VDI 2230-1, section 5.5.5: ASGS
	return math.Pi * float64(engaged) / t.PitchMm * l.NutMinorMm * (t.PitchMm/2 + tangentOfFlank*(l.BoltPitchMm-l.NutMinorMm))
}

// NutShearAreaMm2 returns the shear area of the threads of a nut or a tapped
// part over an engaged length: on the cylinder of the bolt's outer diameter.
func NutShearAreaMm2(t thread.Thread, l thread.Limits, engaged unit.Length) float64 {
	// FED-STD-H28, Alexander (1977): ASn = π n Le Ds (1/2n + 0.57735 (Ds − En));
	// VDI 2230-1, section 5.5.5: ASGM
	return math.Pi * float64(engaged) / t.PitchMm * l.BoltMajorMm * (t.PitchMm/2 + tangentOfFlank*(l.BoltMajorMm-l.NutPitchMm))
}

// dilation returns the remaining strength of a nut that widens under load, by
// its width across flats, or the diameter of a tapped boss, divided by that of
// the thread.
func dilation(ratio float64) float64 {
	if ratio >= 1.9 {
		return 1
	}
	return 3.8*ratio - ratio*ratio - 2.61 // Alexander (1977), VDI 2230-1, section 5.5.5: C1, for 1.4 to 1.9
}

// leastDilationRatio is the ratio below which C1 is not defined.
const leastDilationRatio = 1.4

// boltBending returns the remaining strength of the bolt's thread as the
// threads bend, by the strength ratio of nut to bolt.
func boltBending(ratio float64) float64 {
	if ratio <= 1 {
		return 0.897 // Alexander (1977), VDI 2230-1, section 5.5.5: C2
	}
	r := math.Min(ratio, 2.2)
	return 5.594 - 13.682*r + 14.107*r*r - 6.057*r*r*r + 0.9353*r*r*r*r // the same, for 1 to 2.2
}

// nutBending does the same for the thread of the nut.
func nutBending(ratio float64) float64 {
	if ratio >= 1 {
		return 0.897 // Alexander (1977), VDI 2230-1, section 5.5.5: C3
	}
	r := math.Max(ratio, 0.4)
	return 0.728 + 1.769*r - 2.896*r*r + 1.296*r*r*r // the same, for 0.4 to 1
}

// shearRatios holds the shear strength of a bolt thread divided by the tensile
// strength, by the name of the class: VDI 2230-1:2015, table 7 (values from
// memory).
var shearRatios = map[string]float64{
	"4.6": 0.70, "5.6": 0.70, "8.8": 0.65, "10.9": 0.62, "12.9": 0.60,
	"A2-50": 0.80, "A4-50": 0.80, "A2-70": 0.72, "A4-70": 0.72, "A2-80": 0.68, "A4-80": 0.68,
}

// leastShearRatio is used for the other classes: that of the hardest bolts.
const leastShearRatio = 0.60

// Shear returns the shear strength of the bolt's thread; 0 if the tensile
// strength is unknown.
func (s Class) Shear() unit.Stress {
	return unit.Stress(s.shearRatio()) * s.Tensile // VDI 2230-1, section 5.5.5: τB/Rm
}

func (s Class) shearRatio() float64 { return cmp.Or(shearRatios[s.Name], leastShearRatio) }
