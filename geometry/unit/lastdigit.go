package unit

import (
	"cmp"
	"math"
	"strconv"
	"strings"
)

// LastDigit returns the value of one unit in the last digit of a written
// length, or in the numerator of its fraction: 0.01 mm for "95.02 mm", 1/8 in
// for "4 3/8 in". The errors are those of ParseLength.
func LastDigit(s, bareUnit string) (Length, error) {
	if _, err := ParseLength(s, bareUnit); err != nil {
		return 0, err
	}
	number, name := split(s)
	one, err := ParseLength("1 "+cmp.Or(name, bareUnit), "")
	return one * Length(stepOf(number)), err
}

// stepOf returns the step from a valid number to the next one with as many
// digits.
func stepOf(number string) float64 {
	if _, denominator, is := strings.Cut(number, "/"); is {
		n, _ := strconv.ParseFloat(strings.TrimSpace(denominator), 64)
		return 1 / n
	}
	mantissa, exponent, _ := strings.Cut(number, "e")
	power, _ := strconv.Atoi(exponent) // 0 if there is none
	if point := strings.LastIndexAny(mantissa, ".,"); point >= 0 {
		power -= len(mantissa) - point - 1
	}
	return math.Pow10(power)
}
