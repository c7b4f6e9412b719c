package unit

import (
	"cmp"
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

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
// mixed numbers: 4.25, 4,25, 3/8, 4 3/8. The text has plain signs and single
// spaces. A comma that can be a thousands sign is refused: 1,000 is one or a
// thousand. Where there is no number, the error is the bare NoQuantity.
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

// maybeThousands says whether a comma between these digits can part thousands:
// exactly three digits follow it, and at most three stand before it, of which
// the first is no zero.
func maybeThousands(before, after string) bool {
	return len(after) == 3 && before != "" && len(before) <= 3 && before[0] != '0'
}

// mixedNumber gives whole + top/bottom. An improper fraction is refused: 43/8
// is more often 4 3/8 with its space lost.
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

// decimal reads a number whose form is known to be right; NoQuantity where it
// is beyond all figures. Minus zero is zero.
func decimal(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, NoQuantity
	}
	return v + 0, nil
}
