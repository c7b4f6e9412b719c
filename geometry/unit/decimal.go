package unit

import (
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

// Decimal is a figure as a gauge shows it or a file gives it: exact to a
// millionth, with as many decimals as were written. 2.40 stays 2.40, and 2.40 +
// 0.05 is exactly 2.45.
type Decimal struct {
	Millionths int64
	Decimals   int // at least so many are printed
}

const (
	mostDecimals = 6
	mostWhole    = 6 // digits before the decimal sign
	million      = 1_000_000
)

var plainDecimal = regexp.MustCompile(`^([+-]?)(\d*)(?:[.,](\d*))?$`)

// ParseDecimal reads "0.15", "0,15", "−0.02" or "3", with at most six digits
// before and after the decimal sign. A comma that can be a thousands sign is an
// error, as in ParseLength.
func ParseDecimal(s string) (Decimal, error) {
	written := signs.Replace(strings.TrimSpace(s))
	parts := plainDecimal.FindStringSubmatch(written)
	if parts == nil || parts[2]+parts[3] == "" || len(parts[2]) > mostWhole || len(parts[3]) > mostDecimals {
		return Decimal{}, finding.Failed(NoDecimal, finding.Values{"written": s, "most": mostDecimals})
	}
	if strings.Contains(written, ",") && maybeThousands(parts[2], parts[3]) {
		return Decimal{}, finding.Failed(DoubtfulComma, finding.Values{
			"number": s, "thousands": strings.Replace(s, ",", "", 1), "decimal": strings.Replace(s, ",", ".", 1),
		})
	}
	digits := parts[2] + parts[3] + strings.Repeat("0", mostDecimals-len(parts[3]))
	v, err := strconv.ParseInt(parts[1]+digits, 10, 64)
	return Decimal{v, len(parts[3])}, err
}

// String prints the figure with its decimals.
func (d Decimal) String() string {
	digits := strconv.FormatInt(max(d.Millionths, -d.Millionths), 10)
	digits = strings.Repeat("0", max(0, mostDecimals+1-len(digits))) + digits
	whole, part := digits[:len(digits)-mostDecimals], strings.TrimRight(digits[len(digits)-mostDecimals:], "0")
	part += strings.Repeat("0", max(0, d.Decimals-len(part)))
	if part != "" {
		whole += "." + part
	}
	if d.Millionths < 0 {
		return "-" + whole
	}
	return whole
}

// Plus and Minus are exact.
func (d Decimal) Plus(other Decimal) Decimal {
	return Decimal{d.Millionths + other.Millionths, max(d.Decimals, other.Decimals)}
}
func (d Decimal) Minus(other Decimal) Decimal {
	return d.Plus(Decimal{-other.Millionths, other.Decimals})
}

// Times returns the figure multiplied by n.
func (d Decimal) Times(n int64) Decimal { return Decimal{d.Millionths * n, d.Decimals} }

// Middle is half way to another figure, with as many decimals as needed.
func (d Decimal) Middle(other Decimal) Decimal {
	return Decimal{(d.Millionths + other.Millionths) / 2, max(d.Decimals, other.Decimals)}
}

// Less reports whether the figure is below another.
func (d Decimal) Less(other Decimal) bool { return d.Millionths < other.Millionths }

// Float is the nearest floating-point number.
func (d Decimal) Float() float64 { return float64(d.Millionths) / million }

// MarshalJSON writes a number with its decimals.
func (d Decimal) MarshalJSON() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalJSON reads a number and keeps its decimals.
func (d *Decimal) UnmarshalJSON(data []byte) (err error) {
	*d, err = ParseDecimal(string(data))
	return err
}
