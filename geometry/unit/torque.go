package unit

import (
	"math"
	"strconv"
	"strings"
)

// TorqueUnit is a unit on torque wrenches.
type TorqueUnit uint8

const (
	NewtonMetre TorqueUnit = iota
	PoundForceFoot
	PoundForceInch
	KilogramForceMetre
)

// Factors to N·m from NIST SP 811, Appendix B.8. The spellings are without the
// sign or space between their two halves.
var torqueUnits = []scale{
	NewtonMetre: {"N·m", []string{"nm"}, 1},
	PoundForceFoot: {
		"lbf·ft",
		[]string{"lbfft", "ftlbf", "lbft", "ftlb", "lbsft", "ftlbs", "footpound", "footpounds", "poundfoot", "poundfeet"},
		NewtonsPerPound * 12 * millimetresPerInch / 1000,
	},
	PoundForceInch: {
		"lbf·in",
		[]string{"lbfin", "inlbf", "lbin", "inlb", "lbsin", "inlbs", "inchpound", "inchpounds", "poundinch", "poundinches"},
		NewtonsPerPound * millimetresPerInch / 1000,
	},
	KilogramForceMetre: {"kgf·m", []string{"kgfm", "kgm", "mkgf", "mkg"}, newtonsPerKilogram},
}

// String returns the symbol of the unit as printed on the sheets.
func (u TorqueUnit) String() string { return torqueUnits[u].sign }

// GivenTorque is a torque with the unit and the figure of its source, so that
// sheets can print it unchanged.
type GivenTorque struct {
	Value float64 // in Unit
	Unit  TorqueUnit
}

// Nm returns the torque in newton metres.
func (g GivenTorque) Nm() Torque { return Torque(g.Value * torqueUnits[g.Unit].size) }

// Near reports whether two torques are the same in two units, as rounded in a
// manual: to 3 % (common practice, no source).
func (g GivenTorque) Near(other GivenTorque) bool {
	return math.Abs(float64(g.Nm()-other.Nm())) <= 0.03*float64(g.Nm())
}

// String returns the figure as given by its source.
func (g GivenTorque) String() string {
	return strconv.FormatFloat(g.Value, 'f', -1, 64) + " " + g.Unit.String()
}

// halfSigns are possible signs between the two halves of a torque unit.
var halfSigns = strings.NewReplacer("·", "", "⋅", "", "•", "", ".", "", "-", "", "‐", "", "‑", "", "*", "")

// ParseTorque reads "20 N·m", "20 Nm", "15 lbf·ft", "15 ft-lbs", "180 lbf·in",
// "2 kgf·m". The unit is required.
func ParseTorque(s string) (GivenTorque, error) {
	value, name, err := numberAndUnit(s, "", NoTorque, []string{"20 N·m", "15 lbf·ft", "180 lbf·in", "2 kgf·m"})
	if err != nil {
		return GivenTorque{}, err
	}
	lower := strings.ToLower(name)
	u, err := findUnit(s, value, lower, halfSigns.Replace(lower), torqueUnits)
	if err != nil {
		return GivenTorque{}, err
	}
	return GivenTorque{value, TorqueUnit(u)}, nil
}

// In returns the torque as a plain number in unit u.
func (t Torque) In(u TorqueUnit) float64 { return float64(t) / torqueUnits[u].size }
