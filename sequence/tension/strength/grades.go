package strength

import (
	"fmt"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// grade is one row of a strength table: a class for a range of sizes.
type grade struct {
	name              string // a designation; for a property class only its figures
	standard          string
	unified           bool    // for threads of ASME B1.1; otherwise ISO metric
	overMm, upToMm    float64 // nominal diameters, the first excluded
	smallest, largest string  // the same in words
	proof             unit.Stress
	yield, tensile    unit.Stress
	austenitic        bool
}

const (
	iso898  = "ISO 898-1:2013, table 3"
	sae429  = "SAE J429, table 1"
	iso3506 = "ISO 3506-1:1997, table 2" // later editions have the same stresses
	a193    = "ASTM A193/A193M, table 2" // B7 to 2 1/2 in; all others from memory
	a320    = "ASTM A320/A320M, table 1" // values from memory
	a325    = "ASTM A325, A490"          // values from memory; A325 as before 2015, when bolts over 1 in became stronger

	Inch             = 25.4                            // mm
	ksi  unit.Stress = 1000 * 4.4482216152605 / 645.16 // NIST SP 811, B.8: lbf/in²
)

// grades holds all classes, with the sizes of a class ascending.
var grades = []grade{
	metricClass("4.6", 0, 39, 225, 240, 400),
	metricClass("4.8", 0, 39, 310, 340, 420),
	metricClass("5.6", 0, 39, 280, 300, 500),
	metricClass("5.8", 0, 39, 380, 420, 520),
	metricClass("6.8", 0, 39, 440, 480, 600),
	metricClass("8.8", 0, 16, 580, 640, 800),
	metricClass("8.8", 16, 39, 600, 660, 830),
	metricClass("9.8", 0, 16, 650, 720, 900),
	metricClass("10.9", 0, 39, 830, 940, 1040),
	metricClass("12.9", 0, 39, 970, 1100, 1220),

	inchGrade("grade 1", noTwelve, 1.5, 33, 36, 60),
	inchGrade("grade 2", noTwelve, 0.75, 55, 57, 74),
	inchGrade("grade 2", 0.75, 1.5, 33, 36, 60),
	inchGrade("grade 5", noTwelve, 1, 85, 92, 120),
	inchGrade("grade 5", 1, 1.5, 74, 81, 105),
	inchGrade("grade 8", noTwelve, 1.5, 120, 130, 150),

	austenitic("A2-50", 39, 210, 500),
	austenitic("A2-70", 24, 450, 700),
	austenitic("A2-80", 24, 600, 800),
	austenitic("A4-50", 39, 210, 500),
	austenitic("A4-70", 24, 450, 700),
	austenitic("A4-80", 24, 600, 800),

	flangeSteel("A193 B7", a193, 0, 64, 720, 860),
	flangeSteel("A193 B7", a193, 64, 100, 655, 795),
	flangeSteelInch("A193 B7", a193, 0, 2.5, 105, 125),
	flangeSteelInch("A193 B7", a193, 2.5, 4, 95, 115),
	flangeSteel("A193 B7M", a193, 0, 100, 550, 690),
	flangeSteelInch("A193 B7M", a193, 0, 4, 80, 100),
	flangeSteel("A193 B16", a193, 0, 64, 725, 860),
	flangeSteel("A193 B16", a193, 64, 100, 655, 760),
	flangeSteelInch("A193 B16", a193, 0, 2.5, 105, 125),
	flangeSteelInch("A193 B16", a193, 2.5, 4, 95, 110),
	stainless18("A193 B8"), stainless18Inch("A193 B8"),
	stainless18("A193 B8M"), stainless18Inch("A193 B8M"),
	flangeSteel("A320 L7", a320, 0, 64, 725, 860),
	flangeSteelInch("A320 L7", a320, 0, 2.5, 105, 125),

	structural("A325", 0.5, 1, 85, 92, 120),
	structural("A325", 1, 1.5, 74, 81, 105),
	structural("A490", 0.5, 1.5, 120, 130, 150),
}

// noTwelve is the diameter of No. 12, the size below 1/4 in, where SAE J429
// begins.
const noTwelve = 0.216

var inchNames = map[float64]string{noTwelve: "1/4 in", 0.75: "3/4 in", 1: "1 in", 1.5: "1 1/2 in", 2.5: "2 1/2 in", 4: "4 in"}

func metricClass(name string, overMm, upToMm float64, proof, yield, tensile unit.Stress) grade {
	return grade{name: name, standard: iso898, overMm: overMm, upToMm: upToMm,
		smallest: "M1.6", largest: fmt.Sprintf("M%g", upToMm), proof: proof, yield: yield, tensile: tensile}
}

func inchGrade(name string, overIn, upToIn float64, proofKsi, yieldKsi, tensileKsi unit.Stress) grade {
	return grade{name: name, standard: sae429, unified: true, overMm: overIn * Inch, upToMm: upToIn * Inch,
		smallest: inchNames[overIn], largest: inchNames[upToIn], proof: proofKsi * ksi, yield: yieldKsi * ksi, tensile: tensileKsi * ksi}
}

func austenitic(name string, upToMm float64, yield, tensile unit.Stress) grade {
	return grade{name: name, standard: iso3506, upToMm: upToMm, smallest: "M1.6", largest: fmt.Sprintf("M%g", upToMm),
		proof: proofByRule(yield), yield: yield, tensile: tensile, austenitic: true}
}

// flangeSteel is a grade without a proof load.
func flangeSteel(name, standard string, overMm, upToMm float64, yield, tensile unit.Stress) grade {
	return grade{name: name, standard: standard, overMm: overMm, upToMm: upToMm,
		smallest: "M1.6", largest: fmt.Sprintf("M%g", upToMm), proof: proofByRule(yield), yield: yield, tensile: tensile}
}

func flangeSteelInch(name, standard string, overIn, upToIn float64, yieldKsi, tensileKsi unit.Stress) grade {
	return grade{name: name, standard: standard, unified: true, overMm: overIn * Inch, upToMm: upToIn * Inch,
		smallest: "No. 4", largest: inchNames[upToIn], proof: proofByRule(yieldKsi * ksi), yield: yieldKsi * ksi, tensile: tensileKsi * ksi}
}

// stainless18 is class 1 of A193: solution-treated, 205 and 515 MPa, 30 and 75
// ksi. Class 2 is stronger, by size.
func stainless18(name string) grade {
	g := flangeSteel(name, a193, 0, 100, 205, 515)
	g.austenitic = true
	return g
}

func stainless18Inch(name string) grade {
	g := flangeSteelInch(name, a193, 0, 4, 30, 75)
	g.austenitic = true
	return g
}

// structural is a heavy hexagon bolt for structures, from 1/2 in on.
func structural(name string, fromIn, upToIn float64, proofKsi, yieldKsi, tensileKsi unit.Stress) grade {
	over := fromIn * Inch
	if fromIn == leastStructural {
		over -= 0.1 // this size included
	}
	return grade{name: name, standard: a325, unified: true, overMm: over, upToMm: upToIn * Inch,
		smallest: "1/2 in", largest: inchNames[upToIn], proof: proofKsi * ksi, yield: yieldKsi * ksi, tensile: tensileKsi * ksi}
}

const leastStructural = 0.5 // in

const proofOfYield = 0.85

// proofByRule returns the proof stress if a standard has none.
func proofByRule(yield unit.Stress) unit.Stress {
	return proofOfYield * yield // Shigley 9th ed., below Eq. (8-32): Sp about 0.85 Sy
}

func (g grade) holdsFor(t thread.Thread) bool {
	const dustMm = 1e-6
	return g.unified == t.Unified() && t.MajorMm > g.overMm+dustMm && t.MajorMm <= g.upToMm+dustMm
}

func (g grade) strength() Class {
	s := Class{Name: g.name, Standard: g.standard, Proof: g.proof, Yield: g.yield, Tensile: g.tensile, Austenitic: g.austenitic}
	switch g.standard {
	case iso898:
		s.sort = property
	case sae429:
		s.Name = "SAE J429 " + g.name
	case a193, a320, a325:
		s.Name = "ASTM " + g.name
	}
	if g.proof == proofByRule(g.yield) {
		standard, _, _ := strings.Cut(g.standard, ",")
		standard, _, _ = strings.Cut(standard, ":")
		s.Assumed = []finding.Finding{finding.Noted(ProofAssumed, finding.Values{"standard": standard, "share": proofOfYield}).From("Shigley 9th ed., below Eq. (8-32)")}
	}
	return s
}
