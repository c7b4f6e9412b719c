package words

import "strings"

// noBreak keeps a figure and its unit on one line.
const noBreak = "\u00a0"

// Figure writes a printed figure as the language does: 24.5 N·m becomes
// 24,5 N·m where the decimal sign is a comma, and its blank does not break.
// The decimal sign is the comma in Spanish, German and French and the point in
// English; no figure on a sheet is long enough for a sign between thousands
// (common practice, no source; ISO 80000-1 allows both signs).
//
// It is for quantities, and for the names of metric threads: the trade of all
// three languages writes the pitch as any other figure, M10×1,5. It is not for
// ids, dates, numbers of standards, nor for property classes, where the point
// of 10.9 parts two numbers and is no decimal sign.
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
