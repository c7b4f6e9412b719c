package unit

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"drawdown/geometry/finding"
)

// ParseLength reads "110 mm", "110,5 mm" or "4 3/8 in"; a bare number takes
// bareUnit, which is "mm" or "in".
//
// This and the other parsers take a decimal point or a decimal comma. A comma
// that can be a thousands sign, as in "1,000 mm", is an error that says how to
// write either reading. All errors are findings of this package.
func ParseLength(s, bareUnit string) (Length, error) {
	return parse[Length](s, bareUnit, lengthScales, "110 mm", "4.25 in")
}

// ParseAngle reads "90°", "90 deg" or "0.25 turn". The unit is required.
func ParseAngle(s string) (Angle, error) {
	return parse[Angle](s, "", angleScales, "90°", "90 deg")
}

// ParseForce reads "30 kN" or "6750 lbf". The unit is required.
func ParseForce(s string) (Force, error) {
	return parse[Force](s, "", forceScales, "30 kN", "6750 lbf")
}

// ParseStress reads "830 MPa" or "120 ksi". The unit is required.
func ParseStress(s string) (Stress, error) {
	return parse[Stress](s, "", stressScales, "830 MPa", "120 ksi")
}

// ParseDuration reads "10 min" or "4 h". The unit is required.
func ParseDuration(s string) (Duration, error) {
	return parse[Duration](s, "", durationScales, "10 min", "4 h")
}

func parse[T ~float64](s, bareUnit string, scales []scale, examples ...string) (T, error) {
	value, name, err := numberAndUnit(s, bareUnit, NoQuantity, examples)
	if err != nil {
		return 0, err
	}
	lower := strings.ToLower(name)
	i, err := findUnit(s, value, lower, lower, scales)
	if err != nil {
		return 0, err
	}
	return T(value * scales[i].size), nil
}

// findUnit gives the number of the unit with the spelling. The value is not too
// large in it.
func findUnit(s string, value float64, name, spelling string, scales []scale) (int, error) {
	for i, sc := range scales {
		if !slices.Contains(sc.spellings, spelling) {
			continue
		}
		if math.IsInf(value*sc.size, 0) {
			return 0, finding.Failed(TooLarge, finding.Values{"written": s})
		}
		return i, nil
	}
	return 0, finding.Failed(Unknown, finding.Values{"written": s, "unit": name, "allowed": signsOf(scales)})
}

// numberAndUnit reads the number and gives the unit behind it, without spaces;
// bareUnit where there is none. A text that is no such quantity has the code
// given.
func numberAndUnit(s, bareUnit string, code finding.Code, examples []string) (value float64, name string, err error) {
	number, name := split(s)
	value, err = parseNumber(number)
	// A broken character can lose a space and become another one.
	if errors.Is(err, NoQuantity) || !utf8.ValidString(s) {
		return 0, "", finding.Failed(code, finding.Values{"written": s, "examples": examples})
	}
	if err != nil {
		return 0, "", unreadable(s, err)
	}
	if name == "" {
		name = bareUnit
	}
	if name == "" {
		return 0, "", finding.Failed(NoUnit, finding.Values{"written": s, "examples": examples})
	}
	return value, name, nil
}

// signs brings the signs that people and word processors write to one form.
var signs = strings.NewReplacer(
	"−", "-", "⁄", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// split parts the number from the unit behind it: the number with plain signs,
// single spaces and a small e, the unit without spaces or a full stop behind.
func split(s string) (number, name string) {
	s = strings.Join(strings.Fields(signs.Replace(s)), " ")
	end := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789.,+-/ ", r) })
	if end < 0 {
		return s, ""
	}
	end += len(exponent.FindString(s[end:]))
	name = strings.ReplaceAll(s[end:], " ", "")
	return strings.ToLower(strings.TrimSpace(s[:end])), strings.TrimSuffix(name, ".")
}

// exponent is where an e belongs to the number.
var exponent = regexp.MustCompile(`^[eE][+-]*\d+`)

func unreadable(s string, why error) error {
	return finding.Failed(Unreadable, finding.Values{"written": s, "why": why})
}

func signsOf(scales []scale) []string {
	var all []string
	for _, sc := range scales {
		all = append(all, sc.sign)
	}
	return all
}
