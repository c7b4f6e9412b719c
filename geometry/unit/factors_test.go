package unit_test

import (
	"math"
	"math/big"
	"os"
	"strconv"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/geometry/unit"
)

// one returns the size of one named unit in internal units.
func one(t *testing.T, quantity, name string) float64 {
	t.Helper()
	var v float64
	var err error
	switch quantity {
	case "torque":
		var g unit.GivenTorque
		g, err = unit.ParseTorque("1 " + name)
		v = float64(g.Nm())
	case "force":
		var f unit.Force
		f, err = unit.ParseForce("1 " + name)
		v = float64(f)
	case "stress":
		var s unit.Stress
		s, err = unit.ParseStress("1 " + name)
		v = float64(s)
	case "length":
		var l unit.Length
		l, err = unit.ParseLength("1 "+name, "")
		v = float64(l)
	default:
		t.Fatalf("quantity %q is not known to this test", quantity)
	}
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Published: NIST SP 811, Appendix B.8 (testdata). The printed factor must
// equal ours rounded to its seven digits; the long one may differ in the last
// binary digit, because it was calculated in floating point.
func TestFactorsArePublished(t *testing.T) {
	rows := testkit.Published(t, os.DirFS("testdata"), "nist_sp811.csv")
	if len(rows) != 8 {
		t.Fatalf("%d factors, want 8", len(rows))
	}
	for _, row := range rows {
		got := one(t, row[1], row[2]) * testkit.Number(t, row[3])
		printed, long := testkit.Number(t, row[4]), testkit.Number(t, row[5])
		if rounded := testkit.Number(t, strconv.FormatFloat(got, 'g', 7, 64)); rounded != printed {
			t.Errorf("%s: %v, published %v", row[0], got, printed)
		}
		if math.Abs(got-long) > 4e-16*long {
			t.Errorf("%s: %v, long form %v", row[0], got, long)
		}
	}
}

// First principles: the exact definitions (pound, standard gravity, inch),
// multiplied as fractions and rounded once, are our factors to the last bit.
func TestFactorsAreExact(t *testing.T) {
	product := func(figures ...string) float64 {
		exact := big.NewRat(1, 1)
		for _, f := range figures {
			r, ok := new(big.Rat).SetString(f)
			if !ok {
				t.Fatal(f)
			}
			exact.Mul(exact, r)
		}
		v, _ := exact.Float64()
		return v
	}
	const pound, gravity = "0.45359237", "9.80665"
	tests := []struct {
		quantity, unit string
		want           float64
	}{
		{"torque", "lbf·ft", product(pound, gravity, "0.3048")},
		{"torque", "lbf·in", product(pound, gravity, "0.0254")},
		{"torque", "kgf·m", product(gravity)},
		{"force", "lbf", product(pound, gravity)},
		{"force", "kip", product(pound, gravity, "1000")},
		{"force", "kgf", product(gravity)},
		{"stress", "psi", product(pound, gravity, "100/64516")},
		{"stress", "ksi", product(pound, gravity, "100000/64516")},
		{"length", "in", product("25.4")},
		{"length", "ft", product("304.8")},
	}
	for _, tt := range tests {
		if got := one(t, tt.quantity, tt.unit); got != tt.want {
			t.Errorf("1 %s = %v, want %v", tt.unit, got, tt.want)
		}
	}
}

// Calculated from the published factors (testdata). The figures are cut to six
// decimals there, hence the tolerance of one in the sixth.
func TestPublishedConversions(t *testing.T) {
	units := map[string]unit.TorqueUnit{
		"N·m": unit.NewtonMetre, "lbf·ft": unit.PoundForceFoot, "lbf·in": unit.PoundForceInch,
	}
	for _, row := range testkit.Published(t, os.DirFS("testdata"), "nist_sp811_examples.csv") {
		g, err := unit.ParseTorque(row[0])
		if err != nil {
			t.Fatal(err)
		}
		u, ok := units[row[2]]
		if !ok {
			t.Fatalf("unit %q is not known to this test", row[2])
		}
		if got, want := g.Nm().In(u), testkit.Number(t, row[1]); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s = %v %s, want %v", row[0], got, u, want)
		}
	}
}
