package screw

import (
	"math"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

func TestTorquesOfVDI2230AsPublished(t *testing.T) {
	for _, row := range tensiontest.Published(t, "vdi_2230_table_a1.csv") {
		friction := Same(Between(testkit.Number(t, row[2]), testkit.Number(t, row[2])))
		// The table uses the linear form.
		got, err := Target(Bolt{Thread: tensiontest.Thread(t, row[0]), Class: row[1], Friction: &friction, Equation: Linear})
		if err != nil {
			t.Error(err)
			continue
		}
		what := row[0] + " " + row[1] + " µ " + row[2]
		tensiontest.Near(t, what+" preload", float64(got.Preload)/1000, testkit.Number(t, row[3]), 0.01)
		tensiontest.Near(t, what+" torque", float64(got.Torque), testkit.Number(t, row[4]), 0.015)
	}
}

// Published: Shigley 9th ed., Example 8-3: 3/4-16 UNF, 25 kip, both
// coefficients 0.15, collar 1.25 d: 3551 lbf·in. The book has dm = 0.7093 in,
// where d2 is 0.7094 in, 0.02 %.
func TestTorqueOfShigleyExample(t *testing.T) {
	const kip = 4448.2216152605 // NIST SP 811, B.8
	s := tensiontest.Thread(t, "3/4-16 UNF")
	got := Torque(25*kip, s, unit.Length(1.25*s.MajorMm), 0.15, 0.15, Exact)
	tensiontest.Near(t, "torque", float64(got)/tensiontest.PoundInch, 3551, 0.0003)
}

// Published: Bickford, rule of thumb 10 / 40 / 50 % for the stretch of the
// bolt, the thread and the head, within 3 points (M12, both coefficients 0.15).
func TestTorqueSplitsAsTheRuleOfThumb(t *testing.T) {
	s := tensiontest.Thread(t, "M12")
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
			tensiontest.Near(t, text+" low", r.Low, want.Low, 1e-12)
			tensiontest.Near(t, text+" nominal", r.Nominal, want.Nominal, 1e-12)
			tensiontest.Near(t, text+" high", r.High, want.High, 1e-12)
		}
	}
}
