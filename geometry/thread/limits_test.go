package thread

import (
	"math"
	"testing"
)

// Values from memory of the tables of ISO 965-2 (6g, 6H; printed to 0.001 mm)
// and ASME B1.1 (2A, 2B; printed to 0.0001 in, the inner diameter to 0.001 in).
func TestLimitsFromMemory(t *testing.T) {
	const inch = 25.4
	for _, c := range []struct {
		name                    string
		want                    Limits // in the unit
		unit, slack, minorSlack float64
	}{
		{"M5", Limits{4.826, 4.361, 4.605, 4.334}, 1, 0.0021, 0.0021},
		{"M6", Limits{5.794, 5.212, 5.500, 5.153}, 1, 0.0021, 0.0021},
		{"M8", Limits{7.760, 7.042, 7.348, 6.912}, 1, 0.0021, 0.0021},
		{"M10", Limits{9.732, 8.862, 9.206, 8.676}, 1, 0.0021, 0.0021},
		{"M12", Limits{11.701, 10.679, 11.063, 10.441}, 1, 0.0021, 0.0021},
		{"No. 8-32", Limits{0.1571, 0.1399, 0.1475, 0.139}, inch, 0.00011, 1e-9},
		{"No. 10-32", Limits{0.1831, 0.1658, 0.1736, 0.164}, inch, 0.00011, 1e-9},
		{"1/4-20", Limits{0.2408, 0.2127, 0.2224, 0.207}, inch, 0.00011, 1e-9},
		{"1/2-13", Limits{0.4876, 0.4435, 0.4565, 0.434}, inch, 0.00011, 1e-9},
	} {
		s, err := Parse(c.name)
		if err != nil {
			t.Fatal(err)
		}
		got := s.Limits()
		for what, pair := range map[string][3]float64{
			"bolt major": {got.BoltMajorMm, c.want.BoltMajorMm, c.slack},
			"bolt pitch": {got.BoltPitchMm, c.want.BoltPitchMm, c.slack},
			"nut pitch":  {got.NutPitchMm, c.want.NutPitchMm, c.slack},
			"nut minor":  {got.NutMinorMm, c.want.NutMinorMm, c.minorSlack},
		} {
			if math.Abs(pair[0]/c.unit-pair[1]) > pair[2] {
				t.Errorf("%s %s: %.4f; want %.4f", c.name, what, pair[0]/c.unit, pair[1])
			}
		}
	}
}

// First principles: a bolt fits into its nut, and their threads overlap.
func TestLimitsLeavePlayAndOverlap(t *testing.T) {
	for _, s := range every() {
		l := s.Limits()
		if !(l.BoltPitchMm < s.PitchDiameterMm() && s.PitchDiameterMm() < l.NutPitchMm) {
			t.Errorf("%s: pitch diameters %v, %v do not leave play", s.Name, l.BoltPitchMm, l.NutPitchMm)
		}
		if !(l.BoltMajorMm < s.MajorMm && l.NutMinorMm > s.InternalMinorDiameterMm() && l.NutMinorMm < l.BoltMajorMm) {
			t.Errorf("%s: %+v", s.Name, l)
		}
	}
}
