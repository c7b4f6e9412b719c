package unit

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

// Dimension is the quantity that a unit measures.
type Dimension uint8

const (
	LengthDimension Dimension = iota
	ForceDimension
	StressDimension
	TorqueDimension
)

// Asked is a unit in which a figure is requested.
type Asked struct {
	Dimension Dimension
	sign      string
	size      float64
}

// ParseAsked reads the name of one unit of length, force, stress or torque, as
// people write it. The error lists the available ones.
func ParseAsked(name string) (Asked, error) {
	wanted := strings.ToLower(strings.Join(strings.Fields(name), ""))
	var known []string
	for dimension, scales := range [][]scale{
		LengthDimension: lengthScales, ForceDimension: forceScales, StressDimension: stressScales, TorqueDimension: torqueUnits,
	} {
		spelt := wanted
		if Dimension(dimension) == TorqueDimension {
			spelt = halfSigns.Replace(wanted)
		}
		for _, s := range scales {
			if slices.Contains(s.spellings, spelt) {
				return Asked{Dimension(dimension), s.sign, s.size}, nil
			}
		}
		known = append(known, signsOf(scales)...)
	}
	return Asked{}, finding.Failed(NotAsked, finding.Values{"unit": name, "allowed": known})
}

// Print formats a figure, given in internal units (mm, N, MPa, N·m), in the
// requested unit, to four digits.
func (a Asked) Print(inside float64) string {
	v := inside / a.size
	if v == 0 {
		return "0 " + a.sign
	}
	decimals := max(0, 3-int(math.Floor(math.Log10(math.Abs(v)))))
	return strconv.FormatFloat(v, 'f', decimals, 64) + " " + a.sign
}
