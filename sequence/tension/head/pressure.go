package head

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// BearingPressure returns the pressure of a head on the ring below it.
func BearingPressure(force unit.Force, face, hole unit.Length) unit.Stress {
	return unit.Stress(float64(force) / (math.Pi / 4 * float64(face*face-hole*hole))) // VDI 2230-1, Eq. (R10): pM = FM/Ap
}

// Pressure is the pressure under a head, or under its washer, and the limit of
// the part.
type Pressure struct {
	Pressure unit.Stress
	Limit    unit.Stress
	Used     float64     // Pressure divided by Limit
	Face     unit.Length // that would reach the limit, with the same hole

	Assumptions []finding.Finding
	Sources     []string
}

// UnderHead calculates the pressure of a head on a material at a preload. The
// error says what is missing or does not fit, and what is allowed.
func UnderHead(on Bearing, preload unit.Force, material string) (Pressure, error) {
	m, err := strength.ParseMaterial(material)
	if err != nil {
		return Pressure{}, err
	}
	if m.LimitingPressure == 0 {
		return Pressure{}, finding.Failed(LimitUnknown, finding.Values{"material": m.Term(), "allowed": strength.Materials()})
	}
	if !(preload > 0 && !math.IsInf(float64(preload), 1)) {
		return Pressure{}, finding.Failed(NoPreload, finding.Values{"preload": preload})
	}
	r := Pressure{
		Pressure:    BearingPressure(preload, on.Part.Face, on.Part.Hole),
		Limit:       m.LimitingPressure,
		Face:        faceFor(preload, on.Part.Hole, m.LimitingPressure),
		Assumptions: append(slices.Clip(on.Assumed), finding.Noted(LimitAssumed, finding.Values{"material": m.Term(), "limit": m.LimitingPressure, "source": finding.Term(m.Source)}).From(m.Source)),
		Sources:     []string{"VDI 2230 Part 1, step R10 (bearing pressure)", m.Source + " (limiting pressure)"},
	}
	r.Used = float64(r.Pressure / r.Limit)
	return r, nil
}

// faceFor returns the outer diameter at which the pressure equals the limit.
func faceFor(force unit.Force, hole unit.Length, limit unit.Stress) unit.Length {
	return unit.Length(math.Sqrt(float64(hole*hole) + 4/math.Pi*float64(force)/float64(limit)))
}
