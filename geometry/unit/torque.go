package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// TorqueUnit is a unit that torque wrenches are marked in.
type TorqueUnit uint8

const (
	NewtonMetre TorqueUnit = iota
	PoundForceFoot
	PoundForceInch
	KilogramForceMetre
)

// Factors to N·m from NIST SP 811, Appendix B.8.
var torqueUnits = [...]struct {
	sign      string
	spellings []string
	inNm      float64
}{
	NewtonMetre:        {"N·m", []string{"nm", "n·m", "n.m", "n*m", "n-m", "n⋅m"}, 1},
	PoundForceFoot:     {"lbf·ft", []string{"lbf·ft", "lbfft", "lbf.ft", "lbf-ft", "lbf⋅ft", "ft·lbf", "ftlbf", "ft-lbf", "ft.lbf", "ft-lb", "ftlb", "lb-ft", "lbft", "lb.ft", "lb·ft", "ft·lb", "ft.lb"}, newtonsPerPound * 12 * millimetresPerInch / 1000},
	PoundForceInch:     {"lbf·in", []string{"lbf·in", "lbfin", "lbf.in", "lbf-in", "lbf⋅in", "in·lbf", "inlbf", "in-lbf", "in.lbf", "in-lb", "inlb", "lb-in", "lbin", "lb.in", "lb·in", "in·lb", "in.lb"}, newtonsPerPound * millimetresPerInch / 1000},
	KilogramForceMetre: {"kgf·m", []string{"kgf·m", "kgfm", "kgf.m", "kgf-m", "kgf⋅m", "kgm", "kg·m", "kg.m", "kg-m", "mkg", "mkgf"}, newtonsPerKilogram},
}

// String gives the sign of the unit as the sheets print it.
func (u TorqueUnit) String() string { return torqueUnits[u].sign }

// GivenTorque is a torque with the unit and the figure that its source gave,
// so that the sheet can print it unchanged.
type GivenTorque struct {
	Value float64 // in Unit
	Unit  TorqueUnit
}

// Nm gives the torque in newton metres.
func (g GivenTorque) Nm() Torque { return Torque(g.Value * torqueUnits[g.Unit].inNm) }

// String prints the figure as its source gave it.
func (g GivenTorque) String() string {
	return strconv.FormatFloat(g.Value, 'f', -1, 64) + " " + g.Unit.String()
}

// Other is the same torque in the unit of the other kind of wrench (metric for
// pound-force, pound-force for metric), rounded as that wrench's scale is read.
func (g GivenTorque) Other() GivenTorque {
	if g.Unit != NewtonMetre {
		return g.Nm().OnScale(NewtonMetre)
	}
	if feet := g.Nm().In(PoundForceFoot); feet < smallestFootReading {
		return g.Nm().OnScale(PoundForceInch)
	}
	return g.Nm().OnScale(PoundForceFoot)
}

// smallestFootReading is where a lbf·ft scale becomes too coarse (a whole
// division is over 7 % of the reading) and the small wrench marked in lbf·in
// takes over.
const smallestFootReading = 14

// ParseTorque reads "20 N·m", "20 Nm", "15 lbf·ft", "180 lbf·in", "2 kgf·m".
// The unit is required.
func ParseTorque(s string) (GivenTorque, error) {
	const examples = "20 N·m, 15 lbf·ft, 180 lbf·in, 2 kgf·m"
	number, name := split(s)
	value, err := parseNumber(number)
	if err != nil {
		return GivenTorque{}, fmt.Errorf("%q is not a torque; write for example %s", s, examples)
	}
	if name == "" {
		return GivenTorque{}, fmt.Errorf("%q: %w; write for example %s", s, ErrNoUnit, examples)
	}
	for u, t := range torqueUnits {
		for _, spelling := range t.spellings {
			if spelling == name {
				_, err := checkFinite(s, value*t.inNm)
				return GivenTorque{value, TorqueUnit(u)}, err
			}
		}
	}
	return GivenTorque{}, fmt.Errorf("%q has the unknown unit %q; allowed: N·m, lbf·ft, lbf·in, kgf·m", s, name)
}

// In gives the torque as a plain number in unit u.
func (t Torque) In(u TorqueUnit) float64 { return float64(t) / torqueUnits[u].inNm }

// OnScale rounds the torque to the division that a wrench marked in u is read
// to, so that a conversion never shows false digits.
func (t Torque) OnScale(u TorqueUnit) GivenTorque {
	v := t.In(u)
	step := division(math.Abs(v), u)
	rounded := math.Round(v/step) * step
	// Rounding to a decimal step leaves binary dust; print two decimals at most.
	tidy, _ := strconv.ParseFloat(strings.TrimSpace(strconv.FormatFloat(rounded, 'f', 2, 64)), 64)
	return GivenTorque{tidy, u}
}

// division is the reading step of a wrench scale near value v.
// Common practice, no source: small wrenches are marked in tenths, bench
// wrenches in halves up to 15 and in ones above, long wrenches in fives.
func division(v float64, u TorqueUnit) float64 {
	if u == KilogramForceMetre {
		v *= 10
	}
	step := 1.0
	switch {
	case v < 10:
		step = 0.1
	case v < 15:
		step = 0.5
	case v >= 500:
		step = 5
	}
	if u == KilogramForceMetre {
		step /= 10
	}
	return step
}
