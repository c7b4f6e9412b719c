package unit

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

// Dimension is what a unit measures.
type Dimension uint8

const (
	LengthDimension Dimension = iota
	ForceDimension
	StressDimension
	TorqueDimension
)

// Asked is a unit in which a figure is wanted.
type Asked struct {
	Dimension Dimension
	sign      string
	size      float64
}

// ParseAsked reads the name of one unit of length, force, stress or torque, as
// people write it. The error lists those there are.
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

// Print writes a figure, given in the unit used inside (mm, N, MPa, N·m), in
// the unit asked for, to four figures.
func (a Asked) Print(inside float64) string {
	v := inside / a.size
	if v == 0 {
		return "0 " + a.sign
	}
	decimals := max(0, 3-int(math.Floor(math.Log10(math.Abs(v)))))
	return strconv.FormatFloat(v, 'f', decimals, 64) + " " + a.sign
}
