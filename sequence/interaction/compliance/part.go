// Package compliance calculates the deflection of part and gasket at each bolt
// for one newton at each other bolt: plates, rows, rings and separate pieces on
// a foundation, and the usual stiffness of gaskets. It knows no bolts, plans or
// passes. It may import bounds, geometry and the materials.
package compliance

import (
	"math"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// Part is a clamped part as a plate that bends.
type Part struct {
	Elastic   unit.Stress
	Poisson   float64
	Thickness unit.Length // the thickness that bends; for a ribbed or hollow part less than its height
}

// HeadBendingShare is the effective bending thickness of a cylinder head
// divided by its height (engineering estimate: 0.4 to 0.6).
const HeadBendingShare = 0.5

// PartOf returns a part of a known material. Poisson's ratio is a textbook value
// for the kind of material (Shigley 9th ed., table A-5, rounded).
func PartOf(m strength.Material, thickness unit.Length) Part {
	return Part{Elastic: m.Elastic, Poisson: poissonOf(m.Name), Thickness: thickness}
}

func poissonOf(material string) float64 {
	name := strings.ToLower(material)
	for _, known := range []struct {
		word    string
		poisson float64
	}{
		{"grey", 0.26}, {"ductile", 0.28}, {"aluminium", 0.33}, {"magnesium", 0.35},
		{"titanium", 0.34}, {"brass", 0.32}, {"bronze", 0.35}, {"copper", 0.33},
	} {
		if strings.Contains(name, known.word) {
			return known.poisson
		}
	}
	return 0.30 // steel, and stated moduli
}

func (p Part) Check() error {
	if err := positive(quantity{"modulus of the part", float64(p.Elastic), "MPa"}, quantity{"thickness of the part", float64(p.Thickness), "mm"}); err != nil {
		return err
	}
	return checkPoisson(p.Poisson)
}

// RigidityNmm is the bending stiffness D of the part as a plate.
func (p Part) RigidityNmm() float64 {
	t := float64(p.Thickness)
	return float64(p.Elastic) * t * t * t / (12 * (1 - p.Poisson*p.Poisson)) // Timoshenko and Woinowsky-Krieger, eq. (3): D = Eh³/12(1 − ν²)
}

// BendingNmm2 is the bending stiffness E·I of the part as a beam.
func (p Part) BendingNmm2(width unit.Length) float64 {
	t := float64(p.Thickness)
	return float64(p.Elastic) * float64(width) * t * t * t / 12
}

// CharacteristicLengthMm is the distance over which a plate on a foundation
// spreads a load.
func CharacteristicLengthMm(rigidityNmm, foundationMPaPerMm float64) float64 {
	return math.Pow(rigidityNmm/foundationMPaPerMm, 0.25) // Timoshenko and Woinowsky-Krieger, art. 57: l = (D/k)^¼
}

// Facing is the stiffness of two flexible parts against the gasket between
// them: plates (D), beams (E·I), rings (E·I, G·J) or hubs. It is exact for two
// with the same outline and Poisson's ratio; two equal parts have half the
// stiffness of one.
func Facing(one, other float64) float64 { return one * other / (one + other) }
