package unit

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// Gauge is the unit of a figure read from a gauge.
type Gauge string

// GaugeUnits are the units that a measured value can have: lengths, angles,
// pressures, and shares.
var GaugeUnits = []Gauge{"mm", "µm", "in", "°", "bar", "kPa", "MPa", "psi", "%"}

// gaugeScale is the quantity of a unit, its size in a common unit, and its
// other spellings.
type gaugeScale struct {
	of        string
	size      float64
	spellings []string
}

// Pressures in pascals: 1 bar = 100 kPa (BIPM, SI brochure, table 8); psi is
// lbf/in², calculated like the other factors of this package.
var gaugeScales = map[Gauge]gaugeScale{
	"mm":  {"length", 1, []string{"millimetre", "millimeter"}},
	"µm":  {"length", 0.001, []string{"μm", "um"}}, // the micro sign, and the Greek letter
	"in":  {"length", millimetresPerInch, []string{"inch", `"`, "″"}},
	"°":   {"angle", 1, []string{"deg", "degree", "degrees"}},
	"bar": {"pressure", 1e5, nil},
	"kPa": {"pressure", 1e3, nil},
	"MPa": {"pressure", 1e6, nil},
	"psi": {"pressure", NewtonsPerPound / (millimetresPerInch * millimetresPerInch) * 1e6, nil},
	"%":   {"share", 1, []string{"percent"}},
}

// ParseGauge reads the unit of a measured value.
func ParseGauge(s string) (Gauge, error) {
	s = strings.TrimSpace(s)
	for _, g := range GaugeUnits {
		if strings.EqualFold(string(g), s) || slices.Contains(gaugeScales[g].spellings, strings.ToLower(s)) {
			return g, nil
		}
	}
	return "", finding.Failed(NoGauge, finding.Values{"written": s, "allowed": GaugeNames()})
}

// GaugeNames lists the units as texts.
func GaugeNames() []string {
	names := make([]string, len(GaugeUnits))
	for i, g := range GaugeUnits {
		names[i] = string(g)
	}
	return names
}

// IsLength reports whether the unit is one of length.
func (g Gauge) IsLength() bool { return gaugeScales[g].of == "length" }

// Measures reports whether both units measure the same quantity.
func (g Gauge) Measures(other Gauge) bool { return gaugeScales[g].of == gaugeScales[other].of }

// In converts a figure of this unit to another of the same quantity, rounded to
// a millionth. In the same unit it stays exact.
func (g Gauge) In(d Decimal, other Gauge) Decimal {
	if g == other {
		return d
	}
	return Decimal{int64(math.Round(float64(d.Millionths) * gaugeScales[g].size / gaugeScales[other].size)), 0}
}

// Reading is a figure with the unit of its gauge.
type Reading struct {
	Decimal
	Unit Gauge
}

// String prints "0.15 mm", "12 %", "90°".
func (r Reading) String() string {
	if r.Unit == "°" {
		return r.Decimal.String() + string(r.Unit)
	}
	return r.Decimal.String() + " " + string(r.Unit)
}

// ParseReading reads a figure with its unit, or without one, which then is
// bare.
func ParseReading(s string, bare Gauge) (Reading, error) {
	number, name := strings.TrimSpace(s), ""
	if end := strings.IndexFunc(number, func(r rune) bool { return !strings.ContainsRune("0123456789.,+-−", r) }); end >= 0 {
		number, name = number[:end], number[end:]
	}
	d, err := ParseDecimal(number)
	if number == "" {
		return Reading{}, finding.Failed(NoDecimal, finding.Values{"written": s, "most": mostDecimals})
	}
	if err != nil {
		return Reading{}, err
	}
	if strings.TrimSpace(name) == "" {
		return Reading{d, bare}, nil
	}
	g, err := ParseGauge(name)
	return Reading{d, g}, err
}
