package head

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"
)

// The pressure is the force divided by the area of the ring, and the
// recommended face just reaches the limit.
func TestPressureUnderHead(t *testing.T) {
	usual, err := Complete(tensiontest.Thread(t, "M10"), strength.Class{}, Stated{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := UnderHead(usual, 40000, "cast aluminium")
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "pressure", float64(r.Pressure), 40000/(math.Pi/4*(14.63*14.63-11*11)), 1e-9)
	tensiontest.Near(t, "used", r.Used, float64(r.Pressure)/220, 1e-9)
	tensiontest.Near(t, "face", float64(BearingPressure(40000, r.Face, 11)), 220, 1e-9)
	for says, bad := range map[string]func() (Pressure, error){
		"preload 0 N; allowed: above 0": func() (Pressure, error) {
			return UnderHead(usual, 0, "steel")
		},
		"limiting pressure of 70 GPa is unknown": func() (Pressure, error) {
			return UnderHead(usual, 1, "70 GPa")
		},
	} {
		if _, err := bad(); err == nil || !strings.Contains(words.English().Error(err), says) {
			t.Errorf("error %v; want it to say %q", err, says)
		}
	}
}

// ISO 898-2, proof loads of hexagon nuts in N (ISO 4032, style 1, least
// heights), tested on a hardened mandrel, for which a bolt of class 12.9 is
// used here. The 120° countersinks, 1.08 d wide, bear 0.4 of their depth
// (Alexander). Values from memory. A proof load is borne without damage, so the
// nuts must strip above it, and within an eighth, because the standard rounds
// its stresses over groups of sizes.
func TestNutsBearTheirProofLoad(t *testing.T) {
	heights := map[string]unit.Length{"M8": 6.44, "M10": 8.04, "M12": 10.37, "M16": 14.1}
	for nut, loads := range map[string]map[string]float64{
		"nut class 8":  {"M8": 31800, "M10": 50500, "M12": 74200, "M16": 138200},
		"nut class 10": {"M8": 38100, "M10": 60300, "M12": 88500, "M16": 164900},
		"nut class 12": {"M8": 42500, "M10": 67300, "M12": 100300, "M16": 186800},
	} {
		for name, load := range loads {
			s := tensiontest.Thread(t, name)
			across, _, err := HexagonAcross(s)
			if err != nil {
				t.Fatal(err)
			}
			countersink := unit.Length((1.08*s.MajorMm - s.InternalMinorDiameterMm()) / 2 * math.Tan(math.Pi/6))
			carries := heights[name] - 2*0.6*countersink // instead of the 0.8 P of a tapped hole
			r, err := strength.Strip(strength.Engagement{Thread: s, Class: mustClass(t, "12.9", s), Length: carries + unit.Length(0.8*s.PitchMm), Material: nut, Boss: across})
			if err != nil {
				t.Fatal(err)
			}
			if got := float64(r.PartStrips); got < load || got > 1.125*load {
				t.Errorf("%s %s strips at %.0f N; its proof load is %v N", nut, name, got, load)
			}
		}
	}
}
