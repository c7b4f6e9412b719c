package strength

import (
	"strings"

	"drawdown/geometry/unit"
)

// elongations holds the least elongation after fracture by the name that the
// sheets print (values from memory): ISO 898-1:2013, table 3 (classes 4.8, 5.8
// and 6.8 stretch least), SAE J429, table 1, ASTM A193, table 2. ISO 3506-1
// states stainless steel in diameters; the figures are the safe side of it.
var elongations = map[string]float64{
	"class 4.6": 0.22, "class 4.8": 0.14, "class 5.6": 0.20, "class 5.8": 0.10, "class 6.8": 0.08,
	"class 8.8": 0.12, "class 9.8": 0.10, "class 10.9": 0.09, "class 12.9": 0.08,
	"SAE J429 grade 1": 0.18, "SAE J429 grade 2": 0.18, "SAE J429 grade 5": 0.14, "SAE J429 grade 8": 0.12,
	"A2-50": 0.20, "A4-50": 0.20, "A2-70": 0.16, "A4-70": 0.16, "A2-80": 0.12, "A4-80": 0.12,
	"ASTM A193 B7": 0.16,
}

// leastElongation is taken where the class is a stated proof stress (common
// practice, no source: that of the hardest bolts).
const leastElongation = 0.08

// Elongation gives the least elongation after fracture of the bolt's material;
// known is false where it is the one of the hardest bolts.
func (s Class) Elongation() (share float64, known bool) {
	share, known = elongations[strings.TrimSpace(s.Name)]
	if !known {
		share = leastElongation
	}
	return share, known
}

// UniformStrain gives the plastic strain up to which a bolt stretches evenly;
// there its load is greatest.
func (s Class) UniformStrain() float64 {
	share, _ := s.Elongation()
	return share / 2 // common practice, no source: half of the elongation after fracture
}

// NeckingDiameters gives how far one place of a bolt still draws in until it
// breaks, in diameters. A test bar of five diameters (ISO 898-1, clause 9.1)
// shows the rest of its elongation there; a bolt that is torn while it is
// turned shows less.
func (s Class) NeckingDiameters() float64 {
	const bar, whileTurned = 5, 0.25 // the second: common practice, no source; on the safe side of the nut rotations that RCSC and EN 14399-3 ask for
	share, _ := s.Elongation()
	return (share - s.UniformStrain()) * bar * whileTurned
}

// hardeningWhereUnknown is the tensile strength over the yield stress of a
// bolt of which only one stress is stated (common practice, no source: class
// 10.9 and 12.9 have 1.11).
const HardeningWhereUnknown = 1.1

// hardened gives the stress at which the material bears most.
func (s Class) Hardened() unit.Stress {
	if s.Tensile <= s.Yield {
		return s.Yield * HardeningWhereUnknown
	}
	return s.Tensile
}
