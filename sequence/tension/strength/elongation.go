package strength

import (
	"cmp"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// elongations holds the least elongation after fracture by the name of the
// class (values from memory): ISO 898-1:2013, table 3 (classes 4.8, 5.8 and 6.8
// stretch least), SAE J429, table 1, ASTM A193, A320, A325, A490. ISO 3506-1 states that
// of stainless steel in diameters; the figures here are on the safe side.
var elongations = map[string]float64{
	"4.6": 0.22, "4.8": 0.14, "5.6": 0.20, "5.8": 0.10, "6.8": 0.08,
	"8.8": 0.12, "9.8": 0.10, "10.9": 0.09, "12.9": 0.08,
	"SAE J429 grade 1": 0.18, "SAE J429 grade 2": 0.18, "SAE J429 grade 5": 0.14, "SAE J429 grade 8": 0.12,
	"A2-50": 0.20, "A4-50": 0.20, "A2-70": 0.16, "A4-70": 0.16, "A2-80": 0.12, "A4-80": 0.12,
	"ASTM A193 B7": 0.16, "ASTM A193 B7M": 0.18, "ASTM A193 B16": 0.16, "ASTM A193 B8": 0.30, "ASTM A193 B8M": 0.30, "ASTM A320 L7": 0.16,
	"ASTM A325": 0.14, "ASTM A490": 0.14,
}

// leastElongation is used if the class is a stated proof stress (common
// practice, no source: that of the hardest bolts).
const leastElongation = 0.08

// elongation returns the least elongation after fracture of the bolt's material.
func (s Class) elongation() float64 { return cmp.Or(elongations[s.Name], leastElongation) }

// UniformStrain returns the plastic strain up to which a bolt stretches
// uniformly; there its load is greatest.
func (s Class) UniformStrain() float64 {
	return s.elongation() / 2 // common practice, no source: half of the elongation after fracture
}

// NeckingDiameters returns how far one place of a bolt still stretches until it
// breaks, in diameters. A test bar of five diameters (ISO 898-1, clause 9.1)
// has the rest of its elongation there; a bolt that breaks while it is turned
// has less.
func (s Class) NeckingDiameters() float64 {
	const bar, whileTurned = 5, 0.25 // the second: common practice, no source; on the safe side of the nut rotations required by RCSC and EN 14399-3
	return (s.elongation() - s.UniformStrain()) * bar * whileTurned
}

// hardeningWhereUnknown is the ratio of tensile strength to yield stress for a
// bolt with only one stated stress (common practice, no source: class 10.9 and
// 12.9 have 1.11).
const hardeningWhereUnknown = 1.1

// Expansion returns the expansion by heat per kelvin: VDI 2230-1, table A9
// (values from memory), of steel and of austenitic steel.
func (s Class) Expansion() float64 {
	if s.Austenitic {
		return 16e-6
	}
	return 11.5e-6
}

// Hardened returns the greatest stress that the material bears.
func (s Class) Hardened() unit.Stress {
	if s.Tensile <= s.Yield {
		return s.Yield * hardeningWhereUnknown
	}
	return s.Tensile
}

// AssumedTensile reports the assumed tensile strength of a class with only one
// stated stress.
func AssumedTensile(s Class) finding.Finding {
	return finding.Noted(TensileAssumed, finding.Values{"tensile": s.Hardened(), "ratio": hardeningWhereUnknown}).From(finding.CommonPractice)
}
