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
	a193    = "ASTM A193/A193M, table 2"

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

	{name: "A193 B7", standard: a193, upToMm: 64, smallest: "M1.6", largest: "M64",
		proof: proofByRule(720), yield: 720, tensile: 860},
	{name: "A193 B7", standard: a193, unified: true, upToMm: 2.5 * Inch, smallest: "No. 4", largest: "2 1/2 in",
		proof: proofByRule(105 * ksi), yield: 105 * ksi, tensile: 125 * ksi},
}

// noTwelve is the diameter of No. 12, the size below 1/4 in, where SAE J429
// begins.
const noTwelve = 0.216

var inchNames = map[float64]string{noTwelve: "1/4 in", 0.75: "3/4 in", 1: "1 in", 1.5: "1 1/2 in"}

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
	case a193:
		s.Name = "ASTM " + g.name
	}
	if g.proof == proofByRule(g.yield) {
		standard, _, _ := strings.Cut(g.standard, ",")
		standard, _, _ = strings.Cut(standard, ":")
		s.Assumed = []finding.Finding{finding.Noted(ProofAssumed, finding.Values{"standard": standard, "share": proofOfYield}).From("Shigley 9th ed., below Eq. (8-32)")}
	}
	return s
}
