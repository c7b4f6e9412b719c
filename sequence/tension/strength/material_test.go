package strength

import (
	"math"
	"strings"
	"testing"

	"drawdown/render/words"
	"drawdown/sequence/tension"
	"drawdown/sequence/tension/tensiontest"
)

// First principles: shear strength is at least 0.55 of the tensile strength
// (Tresca 0.5, and more for brittle iron), no name is repeated, and every name
// can be read.
func TestMaterialsKeepTheirOrder(t *testing.T) {
	seen := map[string]string{}
	for _, m := range materials {
		if !(m.Elastic > 0 && m.Tensile > 0 && m.Shear > 0.55*m.Tensile-1 && m.Shear <= 1.2*m.Tensile && m.LimitingPressure > 0 && m.Source != "") {
			t.Errorf("%+v", m)
		}
		for _, name := range m.names {
			if other, ok := seen[tension.PlainWords(name)]; ok {
				t.Errorf("%q stands for %s and %s", name, other, m.Name)
			}
			seen[tension.PlainWords(name)] = m.Name
			if got, err := ParseMaterial(strings.ToUpper(name)); err != nil || got.Name != m.Name {
				t.Errorf("%q reads as %q, %v", name, got.Name, err)
			}
		}
	}
}

// First principles: 10 Mpsi is 68.9 GPa (NIST SP 811, B.8).
func TestStatedModulus(t *testing.T) {
	m, err := ParseMaterial("10000 ksi")
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "modulus", float64(m.Elastic), 10*tensiontest.MillionPsi, 1e-12)
	for _, text := range []string{"70 MPa", "-70 GPa", "7000 GPa", "NaN GPa", "", "70"} {
		if m, err := ParseMaterial(text); err == nil || !strings.Contains(words.English().Error(err), "allowed") || m != (Material{}) {
			t.Errorf("%q: %+v, %v", text, m, err)
		}
	}
}

func FuzzParseMaterial(f *testing.F) {
	for _, seed := range []string{"steel", "grey cast iron", "70 GPa", "1e3 ksi", "NaN GPa", "7075-T6"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		m, err := ParseMaterial(text)
		if err != nil && m != (Material{}) || err == nil && !(m.Elastic >= 1e3 && !math.IsInf(float64(m.Elastic), 0) && m.Name != "") {
			t.Errorf("ParseMaterial(%q) = %+v, %v", text, m, err)
		}
	})
}
