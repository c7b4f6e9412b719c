package unit_test

import (
	"strings"
	"testing"

	"drawdown/geometry/unit"
)

// First principles, as for all other quantities.
func TestSpellingsOfStiffness(t *testing.T) {
	for text, want := range map[string]float64{
		"MPa/mm": 1, "N/mm³": 1, "N/mm3": 1, "N / mm^3": 1, "GPa/mm": 1000, "kN/mm³": 1000, "ksi/in": 1000 * pound / (25.4 * 25.4 * 25.4),
	} {
		if got, err := unit.ParseAreaStiffness("7.5 " + text); err != nil || !near(float64(got.Nominal), 7.5*want) {
			t.Errorf("%s: %v, %v; want %g", text, got, err, 7.5*want)
		}
	}
	for text, want := range map[string]float64{
		"N/mm²": 1, "N/mm2": 1, "N/mm^2": 1, "MPa": 1, "kN/mm²": 1000, "GPa": 1000, "ksi": 1000 * pound / (25.4 * 25.4),
	} {
		if got, err := unit.ParseLineStiffness("7.5" + text); err != nil || !near(float64(got.Nominal), 7.5*want) {
			t.Errorf("%s: %v, %v; want %g", text, got, err, 7.5*want)
		}
	}
}

// First principles: the middle of two ends is the root of their product.
func TestStiffnessSpans(t *testing.T) {
	for text, want := range map[string]unit.Span[unit.AreaStiffness]{
		"120 MPa/mm":              {Low: 120, Nominal: 120, High: 120},
		"50-200MPa/mm":            {Low: 50, Nominal: 100, High: 200},
		"50–120–250 N/mm³":        {Low: 50, Nominal: 120, High: 250},
		"50 MPa/mm - 200 MPa/mm":  {Low: 50, Nominal: 100, High: 200},
		"50 to 200 MPa/mm":        {Low: 50, Nominal: 100, High: 200},
		"5e-1 - 2e0 MPa/mm":       {Low: 0.5, Nominal: 1, High: 2},
		"0.5 GPa/mm-2000 MPa/mm ": {Low: 500, Nominal: 1000, High: 2000},
	} {
		if got, err := unit.ParseAreaStiffness(text); err != nil || got != want {
			t.Errorf("%s: %v, %v; want %v", text, got, err, want)
		}
	}
	if got, err := unit.ParseLineStiffness("450-1800 N/mm²"); err != nil || got != (unit.Span[unit.LineStiffness]{Low: 450, Nominal: 900, High: 1800}) {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestWhatIsNoStiffness(t *testing.T) {
	for text, want := range map[string]string{
		"120":               "the unit is missing; write for example 120 MPa/mm",
		"50-250":            "the unit is missing",
		"250-50 MPa/mm":     "fall; allowed: figures that rise",
		"0 MPa/mm":          "allowed: 0.01 to 1000000 MPa/mm",
		"-5 MPa/mm":         "allowed: 0.01 to 1000000 MPa/mm",
		"1e99 MPa/mm":       "allowed: 0.01 to 1000000 MPa/mm",
		"1-2-3-4 MPa/mm":    "more than three figures",
		"120 N/mm²":         "unknown unit",
		"5--6 MPa/mm":       "allowed: 0.01",
		"50-felt MPa/mm":    "unknown unit",
		"":                  "is not a quantity",
		"50 MPa/mm - 1 bar": "unknown unit",
	} {
		if _, err := unit.ParseAreaStiffness(text); err == nil || !strings.Contains(said(err), want) {
			t.Errorf("%q: want %q, got %v", text, want, err)
		}
	}
	for text, want := range map[string]string{"4.2e-6": "4.2e-6 mm/N", "4.2e-6 N/mm": "allowed: mm/N, µm/kN"} {
		if _, err := unit.ParseFlexibility(text); err == nil || !strings.Contains(said(err), want) {
			t.Errorf("%q: want %q, got %v", text, want, err)
		}
	}
	if _, err := unit.ParseBendingStiffness("2e8 N·mm"); err == nil || !strings.Contains(said(err), "allowed: N·mm², N·m²") {
		t.Errorf("got %v", err)
	}
}

// Any range that is accepted ascends and is within the limits.
func FuzzParseAreaStiffness(f *testing.F) {
	for _, s := range append(seeds, "50-120-250 MPa/mm", "50–250 N/mm³", "5e-1-2 MPa/mm", "-", "--", "e-", "1e99 MPa/mm") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		b, err := unit.ParseAreaStiffness(text)
		if err == nil && !(b.Low >= 0.01 && b.Low <= b.Nominal*(1+1e-15) && b.Nominal <= b.High*(1+1e-15) && b.High <= 1e6) {
			t.Errorf("%q: a stiffness of %v", text, b)
		}
	})
}
