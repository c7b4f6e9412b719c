package strength

import (
	"math"
	"strconv"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/sequence/tension/tensiontest"
)

// The figures in this file are published; the files of testdata and the
// comments name the tables and the reason for each tolerance.

func TestMetricLoadsAsPublished(t *testing.T) {
	for _, row := range tensiontest.Published(t, "iso_898_1_loads.csv") {
		s := tensiontest.Thread(t, row[1])
		c := mustClass(t, row[2], s)
		stress := c.Proof
		if row[0] == "tensile" {
			stress = c.Tensile
		}
		// ISO 898-1 multiplies the printed stress area, with 3 figures.
		area := testkit.Number(t, strconv.FormatFloat(s.StressAreaMm2(), 'g', 3, 64))
		tensiontest.Near(t, row[0]+" "+row[1]+" "+row[2], float64(stress)*area, testkit.Number(t, row[3]), 0.006)
	}
}

func TestInchProofLoadsAsPublished(t *testing.T) {
	const newtonsPerPound = 4.4482216152605 // NIST SP 811, B.8
	for _, row := range tensiontest.Published(t, "sae_j429_loads.csv") {
		s := tensiontest.Thread(t, row[0])
		c := mustClass(t, row[1], s)
		tensiontest.Near(t, row[0]+" "+row[1], float64(c.Proof)*s.StressAreaMm2()/newtonsPerPound, testkit.Number(t, row[2]), 0.006)
	}
}

// Published: ISO 898-1 mechanical properties; SAE J429; ISO 3506-1; ASTM A193.
// Proof, yield, tensile; 0 if the published text gives none.
func TestStrengthsAsPublished(t *testing.T) {
	psi := func(v float64) float64 { return v * 6.894757293168361e-3 } // NIST SP 811, B.8
	for _, c := range []struct {
		class, thread         string
		proof, yield, tensile float64
	}{
		{"4.6", "M10", 225, 240, 400},
		{"5.6", "M10", 280, 300, 500},
		{"6.8", "M10", 440, 480, 600},
		{"8.8", "M16", 580, 640, 800},
		{"8.8", "M18", 600, 660, 830},
		{"10.9", "M24", 830, 940, 1040},
		{"12.9", "M5", 970, 1100, 1220},
		{"grade 1", "1/4-20", psi(33000), psi(36000), psi(60000)},
		{"grade 1", "1 1/2-6", psi(33000), psi(36000), psi(60000)},
		{"grade 2", "3/4-10", psi(55000), psi(57000), psi(74000)},
		{"grade 5", "1-8", psi(85000), psi(92000), psi(120000)},
		{"grade 8", "1 1/2-12", psi(120000), psi(130000), psi(150000)},
		{"A2-50", "M8", 0, 210, 500},
		{"A4-50", "M8", 0, 210, 500},
		{"A2-70", "M8", 0, 450, 700},
		{"A4-70", "M8", 0, 450, 700},
		{"A193 B7", "M64", 0, 720, 860},
		{"A193 B7", "1-8", 0, psi(105000), psi(125000)},
	} {
		got := mustClass(t, c.class, tensiontest.Thread(t, c.thread))
		if c.proof != 0 {
			tensiontest.Near(t, c.class+" "+c.thread+" proof", float64(got.Proof), c.proof, 1e-9)
		}
		tensiontest.Near(t, c.class+" "+c.thread+" yield", float64(got.Yield), c.yield, 1e-9)
		tensiontest.Near(t, c.class+" "+c.thread+" tensile", float64(got.Tensile), c.tensile, 1e-9)
	}
}

// Each is within one unit of its last digit.
func TestStructuralPretensionsAsPublished(t *testing.T) {
	for _, row := range tensiontest.Published(t, "structural_pretension.csv") {
		s := tensiontest.Thread(t, row[1])
		stress, load := testkit.Number(t, row[2]), 1000.
		if row[4] == "kip" {
			stress, load = stress*tensiontest.MillionPsi/1000, 1000*tensiontest.PoundForce
		}
		if got := 0.7 * stress * s.StressAreaMm2() / load; math.Abs(got-testkit.Number(t, row[3])) > 1 {
			t.Errorf("%s %s: %.1f %s; published %s", row[0], row[1], got, row[4], row[3])
		}
	}
}
