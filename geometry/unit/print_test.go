package unit_test

import (
	"fmt"
	"testing"

	"drawdown/geometry/unit"
)

// First principles: decimal notation, at most a tenth of a degree, a hundredth
// of a millimetre, a tenth of a minute; no trailing zeros.
func TestPrint(t *testing.T) {
	tests := []struct {
		quantity fmt.Stringer
		want     string
	}{
		{unit.Angle(90), "90°"},
		{unit.Angle(22.5), "22.5°"},
		{unit.Angle(360.0 / 7), "51.4°"},
		{unit.Angle(-0.01), "0°"},
		{unit.Angle(-180), "-180°"},
		{unit.Length(110), "110 mm"},
		{unit.Length(-142.5), "-142.5 mm"},
		{unit.Length(0.396875), "0.4 mm"},
		{unit.Length(111.125), "111.12 mm"}, // halves go to the even digit
		{unit.Length(1200), "1200 mm"},
		{unit.Length(0), "0 mm"},
		{unit.Length(-0.001), "0 mm"},
		{unit.Duration(10), "10 min"},
		{unit.Duration(1.5), "1.5 min"},
		{unit.Duration(60), "1 h"},
		{unit.Duration(90), "90 min"},
		{unit.Duration(240), "4 h"},
		{unit.Duration(6000), "100 h"},
		{unit.Duration(0.75), "45 s"},
		{unit.Duration(1.0 / 60), "1 s"},
		{unit.Duration(0), "0 min"},
		{unit.NewtonMetre, "N·m"},
		{unit.PoundForceFoot, "lbf·ft"},
		{unit.PoundForceInch, "lbf·in"},
		{unit.KilogramForceMetre, "kgf·m"},
		{unit.GivenTorque{Value: 20.3375, Unit: unit.NewtonMetre}, "20.3375 N·m"}, // as given, never rounded
		{unit.GivenTorque{Value: 22.5, Unit: unit.PoundForceFoot}, "22.5 lbf·ft"},
		{unit.GivenTorque{Value: 1200, Unit: unit.PoundForceInch}, "1200 lbf·in"},
	}
	for _, tt := range tests {
		if got := tt.quantity.String(); got != tt.want {
			t.Errorf("%#v prints %q, want %q", tt.quantity, got, tt.want)
		}
	}
}

// First principles: 1 in = 25.4 mm; at most a thousandth, no trailing zeros.
func TestInches(t *testing.T) {
	for length, want := range map[unit.Length]string{
		111.125: "4.375 in", 25.4: "1 in", 95: "3.74 in", 0.396875: "0.016 in", 0: "0 in", -12.7: "-0.5 in",
	} {
		if got := length.Inches(); got != want {
			t.Errorf("%v mm prints %q, want %q", float64(length), got, want)
		}
	}
}
