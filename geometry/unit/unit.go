// Package unit holds the quantities of bolted joints as named types, their
// parsers and their printed forms. Inside the program every quantity is in one
// unit (mm, degrees, N·m, N, MPa); other units exist only at the edges.
//
// Conversion factors: NIST Special Publication 811 (2008), Appendix B.8, built
// here from their exact definitions (1 lb = 0.453 592 37 kg, standard gravity
// 9.806 65 m/s², 1 in = 25.4 mm).
package unit

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

// Duration in minutes: a joint settles in minutes and hours, never in
// fractions of a second.
type Duration float64

const (
	millimetresPerInch = 25.4
	newtonsPerPound    = 0.45359237 * 9.80665
	newtonsPerKilogram = 9.80665
)

// scale is one unit as people write it: its accepted spellings (lower case,
// without spaces) and its size in the unit used inside.
type scale struct {
	spellings []string
	size      float64
}

var lengthScales = []scale{
	{[]string{"mm", "millimetre", "millimetres", "millimeter", "millimeters"}, 1},
	{[]string{"cm"}, 10},
	{[]string{"m"}, 1000},
	{[]string{"in", "inch", "inches", `"`, "″"}, millimetresPerInch},
	{[]string{"ft"}, 12 * millimetresPerInch},
}

var angleScales = []scale{
	{[]string{"°", "deg", "degree", "degrees"}, 1},
	{[]string{"turn", "turns"}, 360},
}

var forceScales = []scale{
	{[]string{"n"}, 1},
	{[]string{"kn"}, 1000},
	{[]string{"lbf", "lb"}, newtonsPerPound},
	{[]string{"kip", "kips"}, 1000 * newtonsPerPound},
	{[]string{"kgf"}, newtonsPerKilogram},
}

var stressScales = []scale{
	{[]string{"mpa", "n/mm²", "n/mm2"}, 1},
	{[]string{"gpa"}, 1000},
	{[]string{"psi"}, newtonsPerPound / (millimetresPerInch * millimetresPerInch)},
	{[]string{"ksi"}, 1000 * newtonsPerPound / (millimetresPerInch * millimetresPerInch)},
}

var durationScales = []scale{
	{[]string{"min", "minute", "minutes"}, 1},
	{[]string{"h", "hour", "hours"}, 60},
	{[]string{"s", "second", "seconds"}, 1.0 / 60},
}
