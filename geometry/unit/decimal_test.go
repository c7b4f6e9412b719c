package unit_test

import (
	"encoding/json"
	"errors"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// First principles: a decimal is printed as it was written, with a point.
func TestDecimalsAsWritten(t *testing.T) {
	for written, want := range map[string]string{
		"0.15": "0.15", "0,15": "0.15", "2.40": "2.40", "3": "3", "-0.02": "-0.02", "−0,020": "-0.020", "+1.5": "1.5", ".5": "0.5", "5.": "5",
		"0,250": "0.250", "999999.999999": "999999.999999", " 12 ": "12", "-0": "0",
	} {
		d, err := unit.ParseDecimal(written)
		if err != nil || d.String() != want {
			t.Errorf("%q is %s, %v; want %s", written, d, err, want)
		}
	}
	for written, want := range map[string]finding.Code{
		"": unit.NoDecimal, ".": unit.NoDecimal, "a": unit.NoDecimal, "1.2.3": unit.NoDecimal, "1e3": unit.NoDecimal, "1/2": unit.NoDecimal,
		"1234567": unit.NoDecimal, "0.1234567": unit.NoDecimal, "1,234": unit.DoubtfulComma, "--1": unit.NoDecimal, "NaN": unit.NoDecimal,
	} {
		if d, err := unit.ParseDecimal(written); !errors.Is(err, want) {
			t.Errorf("%q is %s, %v; want %s", written, d, err, want)
		}
	}
}

// First principles: sums are exact, whatever is added.
func TestDecimalsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) unit.Decimal {
			return unit.Decimal{Millionths: rapid.Int64Range(-999_999_999_999, 999_999_999_999).Draw(t, name), Decimals: rapid.IntRange(0, 6).Draw(t, name+" decimals")}
		}
		a, b := draw("a"), draw("b")
		if back := a.Plus(b).Minus(b); back.Millionths != a.Millionths {
			t.Errorf("%s + %s − %s = %s", a, b, b, back)
		}
		again, err := unit.ParseDecimal(a.String())
		if err != nil || again.Millionths != a.Millionths || again.Decimals < a.Decimals {
			t.Errorf("%s is read back as %s, %v", a, again, err)
		}
		text, _ := json.Marshal(a)
		var kept unit.Decimal
		if err := json.Unmarshal(text, &kept); err != nil || kept.String() != a.String() {
			t.Errorf("%s is %s in JSON and read back as %s, %v", a, text, kept, err)
		}
	})
}

// First principles: 1 in = 25.4 mm, 1 bar = 100 kPa = 0.1 MPa. Published: 1 psi is
// 6.894757 kPa (NIST SP 811, appendix B.9).
func TestGauges(t *testing.T) {
	for _, tt := range []struct{ written, in, want string }{
		{"2.45 mm", "mm", "2.45 mm"}, {"0.01 in", "mm", "0.254 mm"}, {"12 bar", "kPa", "1200 kPa"}, {"12 bar", "MPa", "1.2 MPa"},
		{"100 psi", "kPa", "689.475729 kPa"}, {"5 percent", "%", "5 %"}, {"5 %", "%", "5 %"}, {"12 deg", "°", "12°"}, {"20 um", "mm", "0.02 mm"}, {"7", "bar", "7 bar"},
	} {
		r, err := unit.ParseReading(tt.written, unit.Gauge(tt.in))
		if err != nil {
			t.Fatal(tt.written, err)
		}
		if got := (unit.Reading{Decimal: r.Unit.In(r.Decimal, unit.Gauge(tt.in)), Unit: unit.Gauge(tt.in)}); got.String() != tt.want {
			t.Errorf("%s is %s, want %s", tt.written, got, tt.want)
		}
	}
	for written, want := range map[string]finding.Code{"2 furlong": unit.NoGauge, "mm": unit.NoDecimal, "two mm": unit.NoDecimal} {
		if r, err := unit.ParseReading(written, "mm"); !errors.Is(err, want) {
			t.Errorf("%q is %s, %v", written, r, err)
		}
	}
	if unit.Gauge("mm").Measures("bar") || !unit.Gauge("mm").Measures("in") || !unit.Gauge("in").IsLength() || unit.Gauge("%").IsLength() {
		t.Error("a unit measures the wrong thing")
	}
}
