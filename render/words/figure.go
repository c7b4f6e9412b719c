package words

import "strings"

// noBreak keeps a figure and its unit on one line.
const noBreak = "\u00a0"

// Figure converts a printed figure to the style of the language. With a decimal
// comma, 24.5 N·m becomes 24,5 N·m, with a non-breaking space. Spanish, German
// and French use the decimal comma, English the point. No figure on a sheet is
// long enough for a thousands separator (common practice, no source; ISO
// 80000-1 allows both decimal signs).
//
// It is for quantities and for the names of metric threads: the trade writes
// the pitch like any other figure, M10×1,5. It is not for ids, dates or numbers
// of standards, nor for property classes, where the point of 10.9 separates two
// numbers and is not a decimal sign.
func (c *Catalogue) Figure(printed string) string {
	if c.Decimal == "." {
		return printed
	}
	printed = strings.ReplaceAll(printed, " ", noBreak)
	var b strings.Builder
	for i := range len(printed) {
		if printed[i] == '.' && digit(printed, i-1) && digit(printed, i+1) {
			b.WriteString(c.Decimal)
		} else {
			b.WriteByte(printed[i])
		}
	}
	return b.String()
}

func digit(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }
