package tension

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
)

// FED-STD-H28, shear areas in in² for each inch of engagement, 2A in 2B (values
// from memory, printed to 3 figures).
func TestShearAreasFromMemory(t *testing.T) {
	for _, c := range []struct {
		thread    string
		bolt, nut float64
	}{{"1/4-20", 0.368, 0.539}, {"1/2-13", 0.779, 1.12}} {
		s := mustThread(t, c.thread)
		l := s.Limits()
		near(t, c.thread+" bolt", BoltShearAreaMm2(s, l, in)/(in*in), c.bolt, 0.003) // limits of size are rounded there
		near(t, c.thread+" nut", NutShearAreaMm2(s, l, in)/(in*in), c.nut, 0.005)
	}
}

// VDI 2230-1, table 5, and the examples of its text: a bolt with nut and two
// plates has one thread, two faces and one joint (values from memory).
func TestEmbeddingFromMemory(t *testing.T) {
	for _, c := range []struct {
		r             Roughness
		d             LoadDirection
		faces, joints int
		want          float64
	}{
		{Fine, AlongBolt, 2, 1, 3 + 5 + 1.5},
		{Medium, AlongBolt, 2, 1, 3 + 6 + 2},
		{Medium, AcrossBolt, 2, 1, 3 + 9 + 2.5},
		{Coarse, AlongBolt, 1, 2, 3 + 4 + 6},
		{Coarse, AcrossBolt, 2, 0, 3 + 13},
	} {
		got, err := Embedding(c.r, c.d, c.faces, c.joints)
		if err != nil {
			t.Error(err)
		}
		near(t, string(c.r), got, c.want, 1e-12)
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

// Alexander's factors where their pieces meet, and at the ends of their range:
// 0.897 at equal strength (printed to 3 figures); C1 is 1 at 1.9.
func TestAlexandersFactorsMeet(t *testing.T) {
	near(t, "C2 at 1", boltBending(1+1e-9), 0.897, 0.0006)
	near(t, "C3 at 1", nutBending(1-1e-9), 0.897, 0.0006)
	near(t, "C1 at 1.9", dilation(1.9-1e-9), 1, 1e-6)
	near(t, "C1 at 1.4", dilation(1.4), 0.75, 0.001)
	for ratio := 1.0; ratio < 2.2; ratio += 0.01 {
		if boltBending(ratio+0.01) < boltBending(ratio)-1e-3 {
			t.Errorf("C2 falls at %v", ratio)
		}
	}
}

// First principles: the area is the wall that the flanks leave standing on the
// cylinder, added up turn by turn.
func TestShearAreaAgainstTheProfile(t *testing.T) {
	for _, name := range []string{"M6", "M10", "M12x1.25", "3/8-16"} {
		s := mustThread(t, name)
		l := s.Limits()
		// At the pitch diameter a ridge is half a pitch wide, and every millimetre
		// of radius widens it by 2 tan 30°.
		width := s.PitchMm/2 + 2*math.Tan(math.Pi/6)*(l.BoltPitchMm-l.NutMinorMm)/2
		turns := 10 / s.PitchMm
		near(t, name, BoltShearAreaMm2(s, l, 10), turns*width*math.Pi*l.NutMinorMm, 1e-9)
	}
}

// VDI 2230-1:2015, table 7: shear over tensile strength (values from memory).
func TestShearRatiosFromMemory(t *testing.T) {
	m10 := mustThread(t, "M10")
	for class, want := range map[string]float64{"4.6": 0.70 * 400, "8.8": 0.65 * 800, "10.9": 0.62 * 1040, "12.9": 0.60 * 1220, "A2-70": 0.72 * 700, "A4-80": 0.68 * 800, "9.8": 0.60 * 900} {
		near(t, class, float64(mustClass(t, class, m10).Shear()), want, 1e-9)
	}
}

// ISO 898-2, proof loads of hexagon nuts in N (ISO 4032, style 1, least heights),
// tried on a hardened mandrel: a bolt of class 12.9 stands for it. The 120°
// countersinks, 1.08 d wide, bear 0.4 of their depth (Alexander). Values from
// memory; a proof load is borne without harm, so the nuts are to strip above it,
// and within an eighth, as the standard rounds its stresses over groups of sizes.
func TestNutsBearTheirProofLoad(t *testing.T) {
	heights := map[string]unit.Length{"M8": 6.44, "M10": 8.04, "M12": 10.37, "M16": 14.1}
	for nut, loads := range map[string]map[string]float64{
		"nut class 8":  {"M8": 31800, "M10": 50500, "M12": 74200, "M16": 138200},
		"nut class 10": {"M8": 38100, "M10": 60300, "M12": 88500, "M16": 164900},
		"nut class 12": {"M8": 42500, "M10": 67300, "M12": 100300, "M16": 186800},
	} {
		for name, load := range loads {
			s := mustThread(t, name)
			across, _, err := HexagonAcross(s)
			if err != nil {
				t.Fatal(err)
			}
			countersink := unit.Length((1.08*s.MajorMm - s.InternalMinorDiameterMm()) / 2 * math.Tan(math.Pi/6))
			carries := heights[name] - 2*0.6*countersink // in place of the 0.8 P of a tapped hole
			r, err := Strip(Engagement{Bolt: Bolt{Thread: s, Class: "12.9", Lubricant: "oil"}, Length: carries + unit.Length(0.8*s.PitchMm), Material: nut, Boss: across})
			if err != nil {
				t.Fatal(err)
			}
			if got := float64(r.PartStrips); got < load || got > 1.125*load {
				t.Errorf("%s %s strips at %.0f N; its proof load is %v N", nut, name, got, load)
			}
		}
	}
}
