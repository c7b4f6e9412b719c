package strength

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// FED-STD-H28, shear areas in in² per inch of engagement, 2A in 2B (values from
// memory, printed to 3 figures).
func TestShearAreasFromMemory(t *testing.T) {
	for _, c := range []struct {
		thread    string
		bolt, nut float64
	}{{"1/4-20", 0.368, 0.539}, {"1/2-13", 0.779, 1.12}} {
		s := tensiontest.Thread(t, c.thread)
		l := s.Limits()
		tensiontest.Near(t, c.thread+" bolt", BoltShearAreaMm2(s, l, in)/(in*in), c.bolt, 0.003) // the limits of size are rounded there
		tensiontest.Near(t, c.thread+" nut", NutShearAreaMm2(s, l, in)/(in*in), c.nut, 0.005)
	}
}

// VDI 2230-1, table A9: limiting surface pressure in MPa (values from memory).
func TestLimitingPressuresFromMemory(t *testing.T) {
	for text, want := range map[string]unit.Stress{
		"steel": 490, "E295": 710, "C45": 630, "grey cast iron": 850, "GJS-400": 600,
		"cast aluminium": 220, "die-cast aluminium": 290, "wrought aluminum": 230, "7075": 410, "AZ91": 180, "TiAl6V4": 890,
	} {
		m, err := ParseMaterial(text)
		if err != nil || m.LimitingPressure != want {
			t.Errorf("%s: %v, %v; want %v", text, m.LimitingPressure, err, want)
		}
	}
}

// Alexander's factors where their pieces meet, and at the limits of their
// range: 0.897 at equal strength (printed to 3 figures); C1 is 1 at 1.9.
func TestAlexandersFactorsMeet(t *testing.T) {
	tensiontest.Near(t, "C2 at 1", boltBending(1+1e-9), 0.897, 0.0006)
	tensiontest.Near(t, "C3 at 1", nutBending(1-1e-9), 0.897, 0.0006)
	tensiontest.Near(t, "C1 at 1.9", dilation(1.9-1e-9), 1, 1e-6)
	tensiontest.Near(t, "C1 at 1.4", dilation(1.4), 0.75, 0.001)
	for ratio := 1.0; ratio < 2.2; ratio += 0.01 {
		if boltBending(ratio+0.01) < boltBending(ratio)-1e-3 {
			t.Errorf("C2 falls at %v", ratio)
		}
	}
}

// First principles: the area is the part of the cylinder between the flanks,
// added up turn by turn.
func TestShearAreaAgainstTheProfile(t *testing.T) {
	for _, name := range []string{"M6", "M10", "M12x1.25", "3/8-16"} {
		s := tensiontest.Thread(t, name)
		l := s.Limits()
		// At the pitch diameter a ridge is half a pitch wide; every millimetre
		// of radius adds 2 tan 30°.
		width := s.PitchMm/2 + 2*math.Tan(math.Pi/6)*(l.BoltPitchMm-l.NutMinorMm)/2
		turns := 10 / s.PitchMm
		tensiontest.Near(t, name, BoltShearAreaMm2(s, l, 10), turns*width*math.Pi*l.NutMinorMm, 1e-9)
	}
}

// VDI 2230-1:2015, table 7: shear divided by tensile strength (values from
// memory).
func TestShearRatiosFromMemory(t *testing.T) {
	m10 := tensiontest.Thread(t, "M10")
	for class, want := range map[string]float64{"4.6": 0.70 * 400, "8.8": 0.65 * 800, "10.9": 0.62 * 1040, "12.9": 0.60 * 1220, "A2-70": 0.72 * 700, "A4-80": 0.68 * 800, "9.8": 0.60 * 900} {
		tensiontest.Near(t, class, float64(mustClass(t, class, m10).Shear()), want, 1e-9)
	}
}
