package unit_test

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
)

// seeds are texts that people write, right and wrong.
var seeds = []string{
	"", " ", "20", "20 N·m", "20Nm", "15 ft-lbs", "180 lbf·in", "2,2 mkg", "110 mm", "4 3/8 in", "4-3/8″", "⅜ in", "90°", "0.25 turn",
	"30 kN", "830 MPa", "120 ksi", "10 min", "4 h", "1,000 mm", "1.234,5 mm", "1 000 mm", "1e400 mm", "-5e-3 m", "3/0 in", "e5 mm", "−0 mm",
	"NaN mm", "0x1p4 mm", "1_0 mm", "\u00a05\u202fmm", "5e", "5e+", "\xff5 mm", "5 \xffmm", "½", "1/2/3 in", "10 '' mm", "0\xe2 \x80\xb3",
}

// checkParsed checks every parser with every text: it does not panic; a
// rejected text gives zero and an error that quotes it; an accepted one gives a
// finite figure, which spaces around it and the case of letters do not change.
func checkParsed(t *testing.T, text string, parse func(string) (float64, error)) {
	t.Helper()
	got, err := parse(text)
	if err != nil {
		if got != 0 || len(said(err)) < 10 || !strings.HasPrefix(said(err), `"`) {
			t.Errorf("%q: %v, %v", text, got, err)
		}
		return
	}
	if math.IsNaN(got) || math.IsInf(got, 0) || (got == 0 && math.Signbit(got)) {
		t.Errorf("%q: %v", text, got)
	}
	if !strings.ContainsAny(text, "0123456789½¼¾⅛⅜⅝⅞") {
		t.Errorf("%q has no digit and reads as %v", text, got)
	}
	for _, same := range []string{"\t " + text + "\u00a0", strings.ToUpper(text), strings.ReplaceAll(text, " ", "\u202f")} {
		if again, err := parse(same); err != nil || again != got {
			t.Errorf("%q reads as %v, %q as %v, %v", text, got, same, again, err)
		}
	}
}

func fuzzQuantity(f *testing.F, parse func(string) (float64, error)) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) { checkParsed(t, text, parse) })
}

func FuzzParseLength(f *testing.F) {
	fuzzQuantity(f, func(s string) (float64, error) { v, err := unit.ParseLength(s, "mm"); return float64(v), err })
}

func FuzzParseAngle(f *testing.F)            { fuzzQuantity(f, parsers["angle"].parse) }
func FuzzParseForce(f *testing.F)            { fuzzQuantity(f, parsers["force"].parse) }
func FuzzParseStress(f *testing.F)           { fuzzQuantity(f, parsers["stress"].parse) }
func FuzzParseFlexibility(f *testing.F)      { fuzzQuantity(f, parsers["flexibility"].parse) }
func FuzzParseBendingStiffness(f *testing.F) { fuzzQuantity(f, parsers["bending stiffness"].parse) }
func FuzzParseDuration(f *testing.F)         { fuzzQuantity(f, parsers["duration"].parse) }

// A torque that was read also prints, and the print reads as the same torque.
func FuzzParseTorque(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		checkParsed(t, text, parsers["torque"].parse)
		g, err := unit.ParseTorque(text)
		if err != nil {
			return
		}
		if again, err := unit.ParseTorque(g.String()); err != nil || again != g {
			t.Errorf("%q prints %s, which reads as %v, %v", text, g, again, err)
		}
	})
}
