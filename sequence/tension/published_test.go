package tension

import (
	"math"
	"strconv"
	"testing"

	"drawdown/geometry/unit"
)

// The figures of this file are published; the files of testdata and the
// comments name the tables and the reason of each tolerance.

func TestMetricLoadsAsPublished(t *testing.T) {
	for _, row := range published(t, "testdata/iso_898_1_loads.csv") {
		s := mustThread(t, row[1])
		c := mustClass(t, row[2], s)
		stress := c.Proof
		if row[0] == "tensile" {
			stress = c.Tensile
		}
		// ISO 898-1 multiplies the stress area as printed, to 3 figures.
		area := number(t, strconv.FormatFloat(s.StressAreaMm2(), 'g', 3, 64))
		near(t, row[0]+" "+row[1]+" "+row[2], float64(stress)*area, number(t, row[3]), 0.006)
	}
}

func TestInchProofLoadsAsPublished(t *testing.T) {
	const newtonsPerPound = 4.4482216152605 // NIST SP 811, B.8
	for _, row := range published(t, "testdata/sae_j429_loads.csv") {
		s := mustThread(t, row[0])
		c := mustClass(t, row[1], s)
		near(t, row[0]+" "+row[1], float64(c.Proof)*s.StressAreaMm2()/newtonsPerPound, number(t, row[2]), 0.006)
	}
}

// Published: ISO 898-1 mechanical properties; SAE J429; ISO 3506-1; ASTM A193.
// Proof, yield, tensile; 0 where the published text gives none.
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
		got := mustClass(t, c.class, mustThread(t, c.thread))
		if c.proof != 0 {
			near(t, c.class+" "+c.thread+" proof", float64(got.Proof), c.proof, 1e-9)
		}
		near(t, c.class+" "+c.thread+" yield", float64(got.Yield), c.yield, 1e-9)
		near(t, c.class+" "+c.thread+" tensile", float64(got.Tensile), c.tensile, 1e-9)
	}
}

func TestTorquesOfVDI2230AsPublished(t *testing.T) {
	for _, row := range published(t, "testdata/vdi_2230_table_a1.csv") {
		friction := Same(Between(number(t, row[2]), number(t, row[2])))
		// The table holds the linear form.
		got, err := Target(Bolt{Thread: mustThread(t, row[0]), Class: row[1], Friction: &friction, Equation: Linear})
		if err != nil {
			t.Error(err)
			continue
		}
		what := row[0] + " " + row[1] + " µ " + row[2]
		near(t, what+" preload", float64(got.Preload)/1000, number(t, row[3]), 0.01)
		near(t, what+" torque", float64(got.Torque), number(t, row[4]), 0.015)
	}
}

func TestBearingGeometryAsPublished(t *testing.T) {
	for _, row := range published(t, "testdata/bearing_geometry.csv") {
		s := mustThread(t, row[0])
		across, _, err := HexagonAcross(s)
		if err != nil {
			t.Error(err)
		}
		if face, want := BearingFace(across, false), number(t, row[1]); math.Abs(float64(face)-want) > 0.00501 { // printed to 0.01 mm
			t.Errorf("%s: face %.4f mm; published %v", row[0], float64(face), want)
		}
		if hole, _ := ClearanceHole(s); float64(hole) != number(t, row[2]) {
			t.Errorf("%s: hole %v; published %s", row[0], hole, row[2])
		}
	}
}

// Published: Shigley 9th ed., Example 8-3: 3/4-16 UNF, 25 kip, both coefficients
// 0.15, collar 1.25 d: 3551 lbf·in. The book has dm = 0.7093 in where d2 is
// 0.7094 in, 0.02 %.
func TestTorqueOfShigleyExample(t *testing.T) {
	const kip, poundInch = 4448.2216152605, 0.11298482902761668 // NIST SP 811, B.8
	s := mustThread(t, "3/4-16 UNF")
	got := Torque(25*kip, s, unit.Length(1.25*s.MajorMm), 0.15, 0.15, Exact)
	near(t, "torque", float64(got)/poundInch, 3551, 0.0003)
}

// Published: Bickford, rule of thumb 10 / 40 / 50 % for the stretch of the
// bolt, the thread and the head, within 3 points (M12, both coefficients 0.15).
func TestTorqueSplitsAsTheRuleOfThumb(t *testing.T) {
	s := mustThread(t, "M12")
	const face = 15.065 // mm, (ISO 4014 + ISO 273 medium)/2
	whole := ThreadArmMm(s, 0.15, Exact) + HeadArmMm(face, 0.15)
	stretch := ThreadArmMm(s, 0, Exact)
	for i, got := range []float64{stretch, ThreadArmMm(s, 0.15, Exact) - stretch, HeadArmMm(face, 0.15)} {
		if want := []float64{10, 40, 50}[i]; math.Abs(got/whole*100-want) > 3 {
			t.Errorf("part %d: %.1f %%; want %v", i, got/whole*100, want)
		}
	}
}

// Published: VDI 2230 Part 1, table A5, classes A, B, C and their typical uses.
func TestLubricantsFollowFrictionClasses(t *testing.T) {
	for text, want := range map[string]Range{
		"molybdenum disulfide paste": {0.04, 0.07, 0.10},
		"MoS2 paste":                 {0.04, 0.07, 0.10},
		"wax":                        {0.04, 0.07, 0.10},
		"Engine Oil":                 {0.08, 0.12, 0.16},
		"oiled":                      {0.08, 0.12, 0.16},
		"grease":                     {0.08, 0.12, 0.16},
		"as delivered":               {0.14, 0.19, 0.24},
		"zinc-plated":                {0.14, 0.19, 0.24},
		"zinc plated":                {0.14, 0.19, 0.24},
	} {
		got, err := FrictionOf(text)
		if err != nil {
			t.Error(err)
		}
		for _, r := range []Range{got.Thread, got.Head} {
			near(t, text+" low", r.Low, want.Low, 1e-12)
			near(t, text+" nominal", r.Nominal, want.Nominal, 1e-12)
			near(t, text+" high", r.High, want.High, 1e-12)
		}
	}
}
