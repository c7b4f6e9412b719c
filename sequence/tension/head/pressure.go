package head

import (
	"fmt"
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
	"drawdown/sequence/tension/strength"
)

// BearingPressure gives the pressure of a head on the ring below it.
func BearingPressure(force unit.Force, face, hole unit.Length) unit.Stress {
	return unit.Stress(float64(force) / (math.Pi / 4 * float64(face*face-hole*hole))) // VDI 2230-1, Eq. (R10): pM = FM/Ap
}

// Pressure is the pressure under a head, or under its washer, against what the
// part bears.
type Pressure struct {
	Pressure unit.Stress
	Limit    unit.Stress
	Used     float64     // Pressure over Limit
	Face     unit.Length // that would keep to the limit, with the same hole
	Notes    []string

	Assumptions []string
	Sources     []string
}

// PressureUnderHead works out the pressure of a head on a material at a
// preload. The error says what is missing or does not fit, and what is allowed.
func UnderHead(on Bearing, preload unit.Force, material string) (Pressure, error) {
	m, err := strength.ParseMaterial(material)
	if err != nil {
		return Pressure{}, err
	}
	if m.LimitingPressure == 0 {
		return Pressure{}, fmt.Errorf("the limiting pressure of %s is unknown; allowed: %s", m.Name, strength.MaterialList())
	}
	if !(preload > 0 && !math.IsInf(float64(preload), 1)) {
		return Pressure{}, fmt.Errorf("preload %.4g N; allowed: above 0", float64(preload))
	}
	r := Pressure{
		Pressure:    BearingPressure(preload, on.Part.Face, on.Part.Hole),
		Limit:       m.LimitingPressure,
		Face:        faceFor(preload, on.Part.Hole, m.LimitingPressure),
		Assumptions: append(tension.Told(on.Assumed), fmt.Sprintf("%s bears %.0f MPa (%s), assumed", m.Name, float64(m.LimitingPressure), m.Source)),
		Sources:     []string{"VDI 2230 Part 1, step R10 (bearing pressure)", m.Source + " (limiting pressure)"},
	}
	r.Used = float64(r.Pressure / r.Limit)
	if r.Used > 1 {
		presses, cure := "head", "a hardened washer"
		if on.Washer != nil {
			presses, cure = "washer", "a thicker and wider washer"
		}
		r.Notes = []string{fmt.Sprintf("the %s presses %.0f MPa on %s, which bears %.0f MPa: it sinks in and the preload falls; allowed: %s or a bearing face of at least %.1f mm",
			presses, float64(r.Pressure), m.Name, float64(r.Limit), cure, strength.UpTo(r.Face))}
	}
	return r, nil
}

// faceFor gives the outer diameter at which the pressure is the limit.
func faceFor(force unit.Force, hole unit.Length, limit unit.Stress) unit.Length {
	return unit.Length(math.Sqrt(float64(hole*hole) + 4/math.Pi*float64(force)/float64(limit)))
}
