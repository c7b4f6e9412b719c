package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
)

// sizes lists every spelling of a parser with the size of one such unit in
// internal units. First principles: the SI prefixes and the definitions of NIST
// SP 811 (1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s²).
type sizes []struct {
	spellings []string
	size      float64
}

const pound = 0.45359237 * 9.80665 // newtons in one lbf

var (
	lengths = sizes{
		{[]string{"mm", "MM", "millimetre", "millimetres", "millimeter", "millimeters"}, 1},
		{[]string{"cm"}, 10},
		{[]string{"m"}, 1000},
		{[]string{"in", "In", "in.", "inch", "inches", `"`, "″", "”", "''"}, 25.4},
		{[]string{"ft", "ft.", "foot", "feet"}, 304.8},
	}
	angles = sizes{
		{[]string{"°", "º", "˚", "deg", "deg.", "degree", "Degrees"}, 1},
		{[]string{"turn", "turns"}, 360},
	}
	forces = sizes{
		{[]string{"N", "n"}, 1},
		{[]string{"kN", "KN"}, 1000},
		{[]string{"lbf", "lb", "lbs"}, pound},
		{[]string{"kip", "kips"}, 1000 * pound},
		{[]string{"kgf"}, 9.80665},
	}
	stresses = sizes{
		{[]string{"MPa", "mpa", "N/mm²", "N/mm2", "N/mm^2", "N / mm²"}, 1},
		{[]string{"GPa"}, 1000},
		{[]string{"psi", "PSI"}, pound / (25.4 * 25.4)},
		{[]string{"ksi"}, 1000 * pound / (25.4 * 25.4)},
	}
	durations = sizes{
		{[]string{"min", "min.", "mins", "minute", "minutes"}, 1},
		{[]string{"h", "hr", "hrs", "hour", "hours"}, 60},
		{[]string{"s", "sec", "second", "seconds"}, 1.0 / 60},
	}
	flexibilities = sizes{
		{[]string{"mm/N", "mm / N", "MM/N"}, 1},
		{[]string{"µm/kN", "μm/kN", "um/kN"}, 1e-6},
	}
	bendings = sizes{
		{[]string{"N·mm²", "N mm²", "Nmm2", "N mm^2", "N*mm^2", "N⋅mm²", "N.mm²"}, 1},
		{[]string{"N·m²", "N m^2", "Nm2"}, 1e6},
		{[]string{"kN·m²", "kN m^2"}, 1e9},
		{[]string{"lbf·in²", "lbf in^2", "lb in2"}, pound * 25.4 * 25.4},
	}
	torques = sizes{
		{[]string{"N·m", "Nm", "N m", "N.m", "N*m", "N-m", "N⋅m", "N•m", "nm", "NM", "N\u00a0m", "N.m."}, 1},
		{[]string{
			"lbf·ft", "lbf ft", "lbfft", "lbf.ft", "lbf-ft", "lbf⋅ft", "ft·lbf", "ft lbf", "ftlbf", "ft-lbf", "ft.lbf",
			"ft-lb", "ft-lbs", "ft lb", "ft lbs", "ft. lbs.", "ftlb", "FT-LB", "lb-ft", "lb ft", "lbft", "lb.ft", "lb·ft", "ft·lb", "ft.lb", "lbs-ft",
			"foot-pounds", "foot pound", "pound-feet", "pound-foot", "ft‑lb",
		}, pound * 0.3048},
		{[]string{
			"lbf·in", "lbf in", "lbfin", "lbf.in", "lbf-in", "lbf⋅in", "in·lbf", "in lbf", "inlbf", "in-lbf", "in.lbf",
			"in-lb", "in-lbs", "in lb", "in lbs", "in. lbs.", "inlb", "lb-in", "lb in", "lbin", "lb.in", "lb·in", "in·lb", "in.lb", "lbs-in",
			"inch-pounds", "inch pound", "pound-inches", "pound-inch",
		}, pound * 0.0254},
		{[]string{"kgf·m", "kgf m", "kgfm", "kgf.m", "kgf-m", "kgf⋅m", "kgm", "kg·m", "kg.m", "kg-m", "mkg", "mkgf", "m·kgf"}, 9.80665},
	}
)

// parsers maps each parser from text to the figure in internal units.
var parsers = map[string]struct {
	parse func(string) (float64, error)
	sizes sizes
}{
	"length": {func(s string) (float64, error) { v, err := unit.ParseLength(s, ""); return float64(v), err }, lengths},
	"angle":  {func(s string) (float64, error) { v, err := unit.ParseAngle(s); return float64(v), err }, angles},
	"force":  {func(s string) (float64, error) { v, err := unit.ParseForce(s); return float64(v), err }, forces},
	"stress": {func(s string) (float64, error) { v, err := unit.ParseStress(s); return float64(v), err }, stresses},
	"duration": {func(s string) (float64, error) {
		v, err := unit.ParseDuration(s)
		return float64(v), err
	}, durations},
	"flexibility": {func(s string) (float64, error) { v, err := unit.ParseFlexibility(s); return float64(v), err }, flexibilities},
	"bending stiffness": {func(s string) (float64, error) {
		v, err := unit.ParseBendingStiffness(s)
		return float64(v), err
	}, bendings},
	"torque": {func(s string) (float64, error) { v, err := unit.ParseTorque(s); return float64(v.Nm()), err }, torques},
}

func TestEverySpelling(t *testing.T) {
	// A unit after a space, without one, after a no-break and a narrow no-break
	// space, and with spaces around.
	joins := []string{"7.5 %", "7.5%", "7,5\u00a0%", "7.5\u202f%", "  7.5\t% "}
	for name, p := range parsers {
		for _, size := range p.sizes {
			for _, spelling := range size.spellings {
				for _, join := range joins {
					text := strings.Replace(join, "%", spelling, 1)
					if got, err := p.parse(text); err != nil || !near(got, 7.5*size.size) {
						t.Errorf("%s %q: %v, %v; want %v", name, text, got, err, 7.5*size.size)
					}
				}
			}
		}
	}
}

// First principles: arithmetic.
func TestNumbers(t *testing.T) {
	tests := map[string]float64{
		"110 mm":       110,
		"+110 mm":      110,
		"-142.5 mm":    -142.5,
		"−142.5 mm":    -142.5, // the minus sign of typeset text
		"110,5 mm":     110.5,
		"-0,25mm":      -0.25,
		",5 mm":        0.5,
		",500 mm":      0.5,
		".5 mm":        0.5,
		"5. mm":        5,
		"1,5e2 mm":     150,
		"1.5E2mm":      150,
		"15e-1 mm":     1.5,
		"2e+1mm":       20,
		"0 mm":         0,
		"1,50 mm":      1.5,
		"1,2345 mm":    1.2345,
		"0,125 mm":     0.125, // thousands do not begin with a zero
		"-0,125 mm":    -0.125,
		"1234,567 mm":  1234.567, // nor do they have four digits before the first sign
		"1.000 mm":     1,        // a point is always decimal
		"12.345 mm":    12.345,
		"3/8 in":       9.525,
		`3/8"`:         9.525,
		"4 3/8 in":     111.125,
		"4-3/8 in":     111.125,
		"4 3/8\u2033":  111.125,
		"4\u00a03/8in": 111.125,
		"4⅜ in":        111.125,
		"½ in":         12.7,
		"-4 3/8 in":    -111.125,
		"-3/8 in":      -9.525,
		"1 3⁄4 in":     44.45,
		"1/64 in":      0.396875,
	}
	for text, want := range tests {
		if got, err := unit.ParseLength(text, ""); err != nil || !near(float64(got), want) {
			t.Errorf("%q: %v, %v; want %v", text, float64(got), err, want)
		}
	}
}

func TestZeroHasNoMinus(t *testing.T) {
	for _, text := range []string{"-0 mm", "−0.0 mm", "-0,0 mm", "-0/8 in", "-0 0/8 in"} {
		if got, err := unit.ParseLength(text, ""); err != nil || got != 0 || math.Signbit(float64(got)) {
			t.Errorf("%q: %v, %v", text, float64(got), err)
		}
	}
}

func TestBareLengths(t *testing.T) {
	for bare, want := range map[string]float64{"mm": -4.5, "in": -114.3} {
		if got, err := unit.ParseLength("-4.5", bare); err != nil || !near(float64(got), want) {
			t.Errorf("-4.5 in %s: %v, %v", bare, got, err)
		}
	}
	// A unit in the text takes precedence.
	if got, err := unit.ParseLength("2 in", "mm"); err != nil || !near(float64(got), 50.8) {
		t.Errorf("2 in: %v, %v", got, err)
	}
	if _, err := unit.ParseLength("12", ""); !errors.Is(err, unit.NoUnit) {
		t.Errorf("no unit at all: %v", err)
	}
}

func TestUnitMissing(t *testing.T) {
	for name, p := range parsers {
		for _, text := range []string{"20", " 20 ", "3/8", "1.5e3"} {
			_, err := p.parse(text)
			if !errors.Is(err, unit.NoUnit) || !strings.Contains(said(err), "write for example") {
				t.Errorf("%s %q: %v", name, text, err)
			}
		}
	}
}

// Every error quotes what was written and says what to write instead.
func TestRefused(t *testing.T) {
	const example, allowed = "write for example 110 mm, 4.25 in", "allowed: mm, cm, m, in, ft"
	tests := map[string]string{
		"":                example,
		" ":               example,
		"mm":              example,
		"abc":             example,
		"NaN mm":          example,
		"Inf mm":          example,
		"-inf mm":         example,
		"0x10 mm":         allowed,
		"1_000 mm":        allowed,
		"1'000 mm":        allowed,
		"--5 mm":          example,
		"5- mm":           example,
		"- mm":            example,
		"1.2.3 mm":        example,
		"1..2 mm":         example,
		"1,2,3 mm":        example,
		"5, mm":           example,
		", mm":            example,
		". mm":            example,
		"4 5 mm":          example,
		"10 - 5 mm":       example,
		"4.5 3/8 in":      example,
		"1/2 3/8 in":      example,
		"4 -3/8 in":       example,
		"4 3/-8 in":       example,
		"3/8.5 in":        example,
		"3,5/8 in":        example,
		"1/2/3 in":        example,
		"3/ in":           example,
		"/8 in":           example,
		"e5 mm":           example,
		"1 e5 mm":         example,
		"5e+-3 mm":        example,
		"5 \xe2 \x80\xb3": example, // the bytes of a double prime with a space between
		"5 furlong":       allowed,
		"5 e":             allowed,
		"5e mm":           allowed,
		"5 mm mm":         allowed,
		"5 mm 3":          allowed,
		"110 N·m":         allowed,
		"5 %":             allowed,
		"3/0 in":          "the fraction 3/0 must be below one; write for example 3/8 or 4 3/8",
		"43/8 in":         "the fraction 43/8 must be below one",
		"4 11/8 in":       "the fraction 11/8 must be below one",
		"8/8 in":          "must be below one",
		"1e309 mm":        example,
		"-1e309 mm":       example,
		"1e308 in":        "too large",
		"1,000 mm":        "the comma in 1,000 can be a decimal or a thousands sign; write 1000 or 1.000",
		"1,000mm":         "write 1000 or 1.000",
		"-12,345 mm":      "write -12345 or -12.345",
		"123,456 mm":      "write 123456 or 123.456",
		"1,500e3 mm":      "write 1500e3 or 1.500e3",
		"1,234.5 mm":      "has thousands signs; write the number without them",
		"1.234,5 mm":      "has thousands signs",
		"1,234,567 mm":    "has thousands signs",
		"1.234.567 mm":    "has thousands signs",
		"1 000 mm":        "has thousands signs",
		"1\u00a0000 mm":   "has thousands signs",
		"12 000,5 mm":     "has thousands signs",
		"-1\u202f000,5mm": "has thousands signs",
	}
	for text, want := range tests {
		got, err := unit.ParseLength(text, "")
		if err == nil {
			t.Errorf("%q: read as %v", text, float64(got))
			continue
		}
		if got != 0 || !strings.Contains(said(err), want) {
			t.Errorf("%q: %v, %q; want %q", text, float64(got), err, want)
		}
	}
}

// The error names the unknown unit and lists the units of that quantity.
func TestUnknownUnits(t *testing.T) {
	tests := []struct{ quantity, text, unknown, allowed string }{
		{"length", "5 furlong", "furlong", "mm, cm, m, in, ft"},
		{"angle", "90 Rad", "rad", "°, turn"},
		{"angle", "90° 30'", "°30'", "°, turn"},
		{"force", "30 kg", "kg", "N, kN, lbf, kip, kgf"},
		{"stress", "120 bar", "bar", "MPa, GPa, psi, ksi"},
		{"duration", "1 h 30 min", "h30min", "min, h, s"},
		{"torque", "20 N", "n", "N·m, lbf·ft, lbf·in, kgf·m"},
		{"torque", "20 lbf/ft", "lbf/ft", "N·m, lbf·ft, lbf·in, kgf·m"},
		{"torque", "20 ftft", "ftft", "N·m, lbf·ft, lbf·in, kgf·m"},
		{"torque", "20·5 Nm", "·5nm", "N·m, lbf·ft, lbf·in, kgf·m"},
	}
	for _, tt := range tests {
		_, err := parsers[tt.quantity].parse(tt.text)
		if err == nil || !strings.Contains(said(err), `unknown unit "`+tt.unknown+`"; allowed: `) ||
			!strings.HasSuffix(said(err), "; allowed: "+tt.allowed) {
			t.Errorf("%s %q: %v", tt.quantity, tt.text, err)
		}
	}
}

// A torque keeps the figure and unit of its source.
func TestGivenTorqueIsKept(t *testing.T) {
	tests := []struct {
		text  string
		want  unit.GivenTorque
		print string
	}{
		{"20 Nm", unit.GivenTorque{Value: 20, Unit: unit.NewtonMetre}, "20 N·m"},
		{"22,5 n.m", unit.GivenTorque{Value: 22.5, Unit: unit.NewtonMetre}, "22.5 N·m"},
		{"65 ft-lbs", unit.GivenTorque{Value: 65, Unit: unit.PoundForceFoot}, "65 lbf·ft"},
		{"7 1/2 lb-ft", unit.GivenTorque{Value: 7.5, Unit: unit.PoundForceFoot}, "7.5 lbf·ft"},
		{"180 in-lbs", unit.GivenTorque{Value: 180, Unit: unit.PoundForceInch}, "180 lbf·in"},
		{"2,2 mkg", unit.GivenTorque{Value: 2.2, Unit: unit.KilogramForceMetre}, "2.2 kgf·m"},
	}
	for _, tt := range tests {
		got, err := unit.ParseTorque(tt.text)
		if err != nil || got != tt.want || got.String() != tt.print {
			t.Errorf("%q: %v, %v; want %v", tt.text, got, err, tt.print)
		}
	}
	for text, want := range map[string]string{
		"1e308 kgf·m": "too large",
		"1,200 N·m":   "write 1200 or 1.200",
		"N·m":         `is not a torque; write for example 20 N·m`,
	} {
		if got, err := unit.ParseTorque(text); err == nil || got != (unit.GivenTorque{}) || !strings.Contains(said(err), want) {
			t.Errorf("%q: %v, %v; want %q", text, got, err, want)
		}
	}
}
