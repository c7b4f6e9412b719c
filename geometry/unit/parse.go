package unit

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ErrNoUnit is wrapped by the error for a bare number where a unit is needed.
var ErrNoUnit = errors.New("the unit is missing")

// ParseLength reads "110 mm" or "4 3/8 in"; a bare number takes bareUnit,
// which is "mm" or "in".
func ParseLength(s, bareUnit string) (Length, error) {
	v, err := parse(s, bareUnit, lengthScales, "110 mm, 4.25 in")
	return Length(v), err
}

// ParseAngle reads "90°", "90 deg" or "0.25 turn". The unit is required.
func ParseAngle(s string) (Angle, error) {
	v, err := parse(s, "", angleScales, "90°, 90 deg")
	return Angle(v), err
}

// ParseForce reads "30 kN" or "6750 lbf". The unit is required.
func ParseForce(s string) (Force, error) {
	v, err := parse(s, "", forceScales, "30 kN, 6750 lbf")
	return Force(v), err
}

// ParseStress reads "830 MPa" or "120 ksi". The unit is required.
func ParseStress(s string) (Stress, error) {
	v, err := parse(s, "", stressScales, "830 MPa, 120 ksi")
	return Stress(v), err
}

// ParseDuration reads "10 min" or "4 h". The unit is required.
func ParseDuration(s string) (Duration, error) {
	v, err := parse(s, "", durationScales, "10 min, 4 h")
	return Duration(v), err
}

func parse(s, bareUnit string, scales []scale, examples string) (float64, error) {
	number, name := split(s)
	value, err := parseNumber(number)
	if err != nil {
		return 0, fmt.Errorf("%q is not a quantity; write for example %s", s, examples)
	}
	if name == "" {
		if bareUnit == "" {
			return 0, fmt.Errorf("%q: %w; write for example %s", s, ErrNoUnit, examples)
		}
		name = bareUnit
	}
	for _, sc := range scales {
		for _, spelling := range sc.spellings {
			if spelling == name {
				return checkFinite(s, value*sc.size)
			}
		}
	}
	return 0, fmt.Errorf("%q has the unknown unit %q; allowed: %s", s, name, spellings(scales))
}

// split parts the number from the unit behind it and brings the unit to the
// form in which the tables hold it: lower case, no spaces.
func split(s string) (number, name string) {
	s = strings.TrimSpace(s)
	end := len(s)
	for i, r := range s {
		if !strings.ContainsRune("0123456789.,+-−/ \u00a0eE", r) {
			end = i
			break
		}
		// An e belongs to the number only when an exponent follows it.
		if (r == 'e' || r == 'E') && !exponentFollows(s[i+1:]) {
			end = i
			break
		}
	}
	number = strings.TrimSpace(strings.ReplaceAll(s[:end], "\u00a0", " "))
	name = strings.ToLower(strings.Join(strings.Fields(s[end:]), ""))
	return number, name
}

func exponentFollows(s string) bool {
	s = strings.TrimLeft(s, "+-")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}

// parseNumber reads decimals with a point or a comma, simple fractions and
// mixed numbers: 4.25, 4,25, 3/8, 4 3/8.
func parseNumber(s string) (float64, error) {
	s = strings.ReplaceAll(s, "−", "-")
	fields := strings.Fields(s)
	switch len(fields) {
	case 1:
		return parseSimple(fields[0])
	case 2:
		if !strings.Contains(fields[1], "/") {
			return 0, strconv.ErrSyntax
		}
		whole, err := parseSimple(fields[0])
		if err != nil {
			return 0, err
		}
		part, err := parseSimple(fields[1])
		if err != nil || part < 0 {
			return 0, strconv.ErrSyntax
		}
		return whole + math.Copysign(part, whole), nil
	}
	return 0, strconv.ErrSyntax
}

func parseSimple(s string) (float64, error) {
	over, under, isFraction := strings.Cut(s, "/")
	top, err := strconv.ParseFloat(strings.Replace(over, ",", ".", 1), 64)
	if err != nil || !isFraction {
		return top, err
	}
	bottom, err := strconv.ParseFloat(under, 64)
	if err != nil || bottom == 0 {
		return 0, strconv.ErrSyntax
	}
	return top / bottom, nil
}

func checkFinite(s string, v float64) (float64, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a finite quantity", s)
	}
	return v, nil
}

func spellings(scales []scale) string {
	var first []string
	for _, sc := range scales {
		first = append(first, sc.spellings[0])
	}
	return strings.Join(first, ", ")
}
