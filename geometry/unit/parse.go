package unit

import (
	"cmp"
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawdown/geometry/finding"
)

// ParseLength reads "110 mm", "110,5 mm" or "4 3/8 in". A bare number is in
// bareUnit, which is "mm" or "in".
//
// This and the other parsers accept a decimal point or a decimal comma. A comma
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

// findUnit returns the index of the unit with the spelling. It rejects values
// that are too large in that unit.
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

// numberAndUnit reads the number and returns the unit after it, without spaces,
// or bareUnit if there is none. A text that is not such a quantity gives an
// error with the given code.
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
	if name = cmp.Or(name, bareUnit); name == "" {
		return 0, "", finding.Failed(NoUnit, finding.Values{"written": s, "examples": examples})
	}
	return value, name, nil
}

// signs replaces variants of signs by one form.
var signs = strings.NewReplacer(
	"−", "-", "⁄", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// split separates the number from its unit: the number with plain signs, single
// spaces and a lower-case e, the unit without spaces or a trailing full stop.
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

// exponent matches an e that belongs to the number.
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

var (
	// 110, +4.25, .5, 5., 1.5e3
	pointNumber = regexp.MustCompile(`^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$`)
	// 4,25 and ,5
	commaNumber = regexp.MustCompile(`^[+-]?(\d*),(\d+)(?:e[+-]?\d+)?$`)
	// 3/8, 4 3/8 and 4-3/8
	fraction = regexp.MustCompile(`^([+-]?)(?:(\d+)[ -])?(\d+)/(\d+)$`)
	// 1,234.5, 1.234,5, 1,234,567 and 1 000
	thousands = regexp.MustCompile(`^[+-]?\d{1,3}(?:[., ]\d{3})+(?:[.,]\d*)?$`)
)

// parseNumber reads decimals with a point or a comma, simple fractions and
// mixed numbers: 4.25, 4,25, 3/8, 4 3/8. The text must have plain signs and
// single spaces. A comma that can be a thousands sign is rejected: 1,000 is one
// or a thousand. If there is no number, the error is NoQuantity alone.
func parseNumber(s string) (float64, error) {
	if m := fraction.FindStringSubmatch(s); m != nil {
		return mixedNumber(m[1], m[2], m[3], m[4])
	}
	if m := commaNumber.FindStringSubmatch(s); m != nil {
		if maybeThousands(m[1], m[2]) {
			return 0, finding.Failed(DoubtfulComma, finding.Values{
				"number": s, "thousands": strings.Replace(s, ",", "", 1), "decimal": strings.Replace(s, ",", ".", 1),
			})
		}
		s = strings.Replace(s, ",", ".", 1)
	}
	if pointNumber.MatchString(s) {
		return decimal(s)
	}
	if thousands.MatchString(s) {
		return 0, finding.Failed(ThousandsSigns, finding.Values{"number": s})
	}
	return 0, NoQuantity
}

// maybeThousands reports whether a comma between these digits can be a
// thousands sign: exactly three digits follow it, and at most three come before
// it, the first of them not zero.
func maybeThousands(before, after string) bool {
	return len(after) == 3 && before != "" && len(before) <= 3 && before[0] != '0'
}

// mixedNumber returns whole + top/bottom. An improper fraction is rejected:
// 43/8 is more often 4 3/8 with a lost space.
func mixedNumber(sign, whole, top, bottom string) (float64, error) {
	over, errOver := decimal(top)
	under, errUnder := decimal(bottom)
	count, errCount := decimal(cmp.Or(whole, "0"))
	if err := cmp.Or(errOver, errUnder, errCount); err != nil {
		return 0, err
	}
	if over >= under {
		return 0, finding.Failed(ImproperFraction, finding.Values{"fraction": top + "/" + bottom})
	}
	value := over/under + count
	if sign == "-" {
		value = 0 - value
	}
	return value, nil
}

// decimal reads a number of valid form, or returns NoQuantity if it is too
// large. Minus zero becomes zero.
func decimal(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, NoQuantity
	}
	return v + 0, nil
}
