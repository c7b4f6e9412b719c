package unit

import (
	"math"
	"strconv"
	"strings"
)

// String prints the angle as a person reads it off a gauge.
func (a Angle) String() string { return plain(float64(a), 1) + "°" }

// String prints the length in millimetres, to a hundredth at most.
func (l Length) String() string { return plain(float64(l), 2) + " mm" }

// Inches prints the length in inches, to a thousandth at most.
func (l Length) Inches() string { return plain(float64(l)/millimetresPerInch, 3) + " in" }

// String prints minutes; hours when they are whole, and seconds under a minute.
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

// plain prints v with at most the given decimals and no trailing zeros.
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
