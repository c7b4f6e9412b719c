package strength

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/testkit"
	"drawdown/geometry/thread"
	"drawdown/render/words"
	"drawdown/sequence/tension/tensiontest"
)

// Spellings: common practice, no source.
func TestParseClassReadsClassesAsPeopleWriteThem(t *testing.T) {
	for _, c := range []struct{ text, thread, name string }{
		{"10.9", "M10", "class 10.9"},
		{"10,9", "M10", "class 10.9"},
		{" Class 10.9 ", "M10", "class 10.9"},
		{"property class 8.8", "M10", "class 8.8"},
		{"Grade 8.8", "M10", "class 8.8"},
		{"ISO 898-1 class 8.8", "M10", "class 8.8"},
		{"grade 8", "3/8-16", "SAE J429 grade 8"},
		{"Gr. 8", "3/8-16", "SAE J429 grade 8"},
		{"gr5", "3/8-16", "SAE J429 grade 5"},
		{"8", "3/8-16", "SAE J429 grade 8"},
		{"SAE 5", "3/8-16", "SAE J429 grade 5"},
		{"SAE J429 Grade 2", "3/8-16", "SAE J429 grade 2"},
		{"A2-70", "M8", "A2-70"},
		{"a4 80", "M8", "A4-80"},
		{"A270", "M8", "A2-70"},
		{"ISO 3506-1 A2-70", "M8", "A2-70"},
		{"B7", "1-8", "ASTM A193 B7"},
		{"ASTM A193 B7", "M24", "ASTM A193 B7"},
		{"a193 grade b7", "M24", "ASTM A193 B7"},
		{"830 MPa", "M10", "proof stress 830 MPa"},
		{"120 ksi", "M10", "proof stress 120 ksi"},
		{"830 N/mm²", "3/8-16", "proof stress 830 N/mm²"},
	} {
		got, err := ParseClass(c.text, tensiontest.Thread(t, c.thread))
		if err != nil || words.English().What(got.Named()) != c.name {
			t.Errorf("ParseClass(%q, %s) = %q, %v; want %q", c.text, c.thread, got.Named(), err, c.name)
		}
	}
}

// First principles: 120 ksi is 827.37 MPa (NIST SP 811, B.8).
func TestStatedProofStress(t *testing.T) {
	got := mustClass(t, "120 ksi", tensiontest.Thread(t, "M10"))
	tensiontest.Near(t, "proof", float64(got.Proof), 120*6.894757293168361, 1e-12)
	if got.Yield != got.Proof || got.Tensile != 0 || !finding.Has(got.Assumed, YieldAssumed) {
		t.Errorf("%+v; want the yield at the proof stress, said as an assumption", got)
	}
}

func TestParseClassErrorsSayWhatIsAllowed(t *testing.T) {
	for _, c := range []struct{ text, thread, says string }{
		{"9.9", "M10", `class "9.9" is not known; allowed: 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9, A2-50`},
		{"9.8", "M20", "does not exist in M20×2.5: ISO 898-1:2013, table 3 gives it for M1.6 to M16; allowed: 4.6"},
		{"8.8", "M90", "for M1.6 to M39; allowed: A193 B7, A193 B7M, A193 B16, A193 B8, A193 B8M, or a proof stress such as 830 MPa or 120 ksi (for M90×6)"},
		{"8.8", "M42", "for M1.6 to M39; allowed: A193 B7, A193 B7M, A193 B16, A193 B8, A193 B8M, A320 L7, or a proof stress such as 830 MPa or 120 ksi (for M42×4.5)"},
		{"A2-70", "M30", "for M1.6 to M24"},
		{"grade 8", "M10", "SAE J429, table 1 is not for metric threads; allowed: 4.6"},
		{"10.9", "3/8-16", "is not for inch threads; allowed: grade 1, grade 2, grade 5, grade 8, A193 B7"},
		{"grade 5", "#10-24", "for 1/4 in to 1 1/2 in"},
		{"grade 5", "#12-28", "for 1/4 in to 1 1/2 in"},
		{"grade 8", "1 3/4-5", "for 1/4 in to 1 1/2 in"},
		{"830", "M10", "is not known"},
		{"", "M10", "is not known"},
		{"830 psi", "M10", "is out of range for bolts; allowed: 100 MPa to 2000 MPa"},
		{"-830 MPa", "M10", "is out of range for bolts"},
		{"830 GPa", "M10", "is out of range for bolts"},
	} {
		got, err := ParseClass(c.text, tensiontest.Thread(t, c.thread))
		if err == nil {
			t.Errorf("ParseClass(%q, %s) = %v; want an error", c.text, c.thread, got)
			continue
		}
		if !reflect.DeepEqual(got, Class{}) {
			t.Errorf("ParseClass(%q, %s) gives %v with its error", c.text, c.thread, got)
		}
		if !strings.Contains(words.English().Error(err), c.says) {
			t.Errorf("ParseClass(%q, %s): %v; want it to say %q", c.text, c.thread, err, c.says)
		}
	}
}

// First principles: proof below yield below tensile stress. In ISO 898-1 the
// tensile stress is at least a hundred times the figure before the point, and
// the yield stress at least the stated share of it.
func TestGradesKeepTheirOrder(t *testing.T) {
	for i, g := range grades {
		if !(0 < g.proof && g.proof < g.yield && g.yield < g.tensile) {
			t.Errorf("%s: proof %v, yield %v, tensile %v", g.name, g.proof, g.yield, g.tensile)
		}
		if g.upToMm <= g.overMm || g.smallest == "" || g.largest == "" {
			t.Errorf("%s: from %v %q to %v %q", g.name, g.overMm, g.smallest, g.upToMm, g.largest)
		}
		if i > 0 && grades[i-1].name == g.name && grades[i-1].unified == g.unified && grades[i-1].upToMm != g.overMm {
			t.Errorf("%s: a gap between the sizes", g.name)
		}
		if g.standard != iso898 {
			continue
		}
		hundreds, tenths, _ := strings.Cut(g.name, ".")
		if nominal := 100 * testkit.Number(t, hundreds); float64(g.tensile) < nominal || float64(g.yield) < nominal*testkit.Number(t, tenths)/10 {
			t.Errorf("%s: yield %v, tensile %v fall short of the name", g.name, g.yield, g.tensile)
		}
	}
}

// First principles: an accepted class has finite, positive stresses in order; a
// rejected one gives nothing.
func FuzzParseClass(f *testing.F) {
	for _, seed := range []string{"10.9", "grade 8", "A2-70", "A193 B7", "830 MPa", "1e3 ksi", "class", "NaN MPa"} {
		f.Add(seed, "M10")
		f.Add(seed, "3/8-16")
	}
	f.Fuzz(func(t *testing.T, text, name string) {
		s, err := thread.Parse(name)
		if err != nil {
			return
		}
		got, err := ParseClass(text, s)
		if err != nil {
			if !reflect.DeepEqual(got, Class{}) {
				t.Errorf("%v with the error %v", got, err)
			}
			return
		}
		if got.Name == "" || !(got.Proof > 0 && got.Proof <= got.Yield && !math.IsInf(float64(got.Yield), 0)) {
			t.Errorf("ParseClass(%q, %s) = %+v", text, name, got)
		}
	})
}
