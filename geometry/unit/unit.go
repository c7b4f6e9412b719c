// Package unit defines the quantities of bolted joints as named types, with
// their parsers and printed forms. Inside the program every quantity is in one
// unit (mm, degrees, N·m, N, MPa); other units exist only in input and output.
// It imports only findings, which it returns for a text that is not a quantity.
//
// Conversion factors: NIST Special Publication 811 (2008), Appendix B.8,
// calculated here from their exact definitions (1 lb = 0.453 592 37 kg,
// standard gravity 9.806 65 m/s², 1 in = 25.4 mm).
package unit

import (
	"math"
	"strconv"
	"strings"
)

// Length in millimetres.
type Length float64

// Angle in degrees.
type Angle float64

// Force in newtons.
type Force float64

// Stress in megapascals (N/mm²).
type Stress float64

// Torque in newton metres.
type Torque float64

// Duration in minutes: a joint settles within minutes or hours, not fractions
// of a second.
type Duration float64

const (
	millimetresPerInch = 25.4
	NewtonsPerPound    = 0.45359237 * 9.80665
	newtonsPerKilogram = 9.80665
)

// scale is one unit: its printed symbol, its accepted spellings (lower case,
// without spaces or a trailing full stop) and its size in internal units.
type scale struct {
	sign      string
	spellings []string
	size      float64
}

var lengthScales = []scale{
	{"mm", []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, 1},
	{"cm", []string{"cm"}, 10},
	{"m", []string{"m"}, 1000},
	{"in", []string{"in", "inch", "inches", `"`, "″", "”", "''"}, millimetresPerInch},
	{"ft", []string{"ft", "foot", "feet"}, 12 * millimetresPerInch},
}

var angleScales = []scale{
	{"°", []string{"°", "deg", "degree", "degrees", "º", "˚"}, 1},
	{"turn", []string{"turn", "turns"}, 360},
}

var forceScales = []scale{
	{"N", []string{"n"}, 1},
	{"kN", []string{"kn"}, 1000},
	{"lbf", []string{"lbf", "lb", "lbs"}, NewtonsPerPound},
	{"kip", []string{"kip", "kips"}, 1000 * NewtonsPerPound},
	{"kgf", []string{"kgf"}, newtonsPerKilogram},
}

var stressScales = []scale{
	{"MPa", []string{"mpa", "n/mm²", "n/mm2", "n/mm^2"}, 1},
	{"GPa", []string{"gpa"}, 1000},
	{"psi", []string{"psi"}, NewtonsPerPound / (millimetresPerInch * millimetresPerInch)},
	{"ksi", []string{"ksi"}, 1000 * NewtonsPerPound / (millimetresPerInch * millimetresPerInch)},
}

var durationScales = []scale{
	{"min", []string{"min", "mins", "minute", "minutes"}, 1},
	{"h", []string{"h", "hr", "hrs", "hour", "hours"}, 60},
	{"s", []string{"s", "sec", "second", "seconds"}, 1.0 / 60},
}

// String formats the angle as read from a gauge.
func (a Angle) String() string { return plain(float64(a), 1) + "°" }

// String formats the length in millimetres, to at most a hundredth.
func (l Length) String() string { return plain(float64(l), 2) + " mm" }

// Inches formats the length in inches, to at most a thousandth.
func (l Length) Inches() string { return plain(float64(l)/millimetresPerInch, 3) + " in" }

// String formats minutes, whole hours, or seconds below a minute.
func (d Duration) String() string {
	minutes := float64(d)
	switch {
	case minutes >= 60 && math.Mod(minutes, 60) == 0:
		return plain(minutes/60, 0) + " h"
	case minutes != 0 && math.Abs(minutes) < 1:
		return plain(minutes*60, 1) + " s"
	}
	return plain(minutes, 1) + " min"
}

// plain formats v with at most the given decimals and no trailing zeros.
func plain(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals > 0 {
		s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
