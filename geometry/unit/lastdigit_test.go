package unit_test

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
)

// First principles: an inch is 25.4 mm, a digit a tenth of the one before.
func TestLastDigit(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]float64{
		"95.02": 0.01, "95,0 mm": 0.1, "60": 1, "60.": 1, "3.740 in": 0.0254, "4 3/8 in": 25.4 / 8, "3 ½ in": 12.7,
		"9.502e1": 0.01, "0.5 m": 100, "1e2": 100,
	} {
		if got, err := unit.LastDigit(text, "mm"); err != nil || math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	if got, err := unit.LastDigit("wide", "mm"); err == nil {
		t.Errorf("a word has the last digit %v", got)
	}
}
