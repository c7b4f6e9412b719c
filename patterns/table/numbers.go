package table

import (
	"regexp"
	"strings"
)

// number matches a number with its decimal sign and group signs, and what
// follows it.
var number = regexp.MustCompile(`^([+\-−]?\d[\d.,'’ \x{a0}\x{202f}]*\d|[+\-−]?[.,]?\d+[.,]?)((?:[eE][+-]?\d+)?\s*[^\d/]*)$`)

// decimals is what the numbers of a table show about their decimal sign.
type decimals struct {
	sure     [2]bool // that the point, the comma is the decimal sign
	possible [2]bool // that it is the decimal sign or a thousands sign
}

// signsOfNumbers are the signs that decimals counts.
const signsOfNumbers = ".,"

// add notes the signs of one number.
func (d *decimals) add(text string) {
	parts := number.FindStringSubmatch(withoutGroups(text))
	if parts == nil {
		return
	}
	n := parts[1]
	last := strings.LastIndexAny(n, signsOfNumbers)
	if last < 0 {
		return
	}
	sign := strings.IndexByte(signsOfNumbers, n[last])
	other := signsOfNumbers[1-sign : 2-sign]
	before, after := strings.TrimLeft(n[:last], "+-−"), n[last+1:]
	switch {
	case strings.Contains(before, other):
		d.sure[sign] = true
	case strings.Contains(before, signsOfNumbers[sign:sign+1]):
		d.sure[1-sign] = true // several of one sign separate thousands
	case len(after) != 3 || before == "" || before[0] == '0' || len(before) > 3:
		d.sure[sign] = true
	default:
		d.possible[sign] = true
	}
}

// sign returns the decimal sign of the table; ok is false if its numbers
// contradict each other.
func (d *decimals) sign() (sign byte, ok bool) {
	switch {
	case d.sure[0] && d.sure[1], !d.sure[0] && !d.sure[1] && d.possible[0] && d.possible[1]:
		return '.', false
	case d.sure[1], d.possible[1] && !d.sure[0]:
		return ',', true
	}
	return '.', true
}

// onlyPossible reports whether every comma of the table may separate thousands.
func (d *decimals) onlyPossible() bool { return d.possible[1] && !d.sure[0] && !d.sure[1] }

// blankGroups matches thousands separated by blanks or apostrophes.
var blankGroups = regexp.MustCompile(`^([+\-−]?\d{1,3})((?:['’ \x{a0}\x{202f}]\d{3})+)([.,]\d*)?(\D*)$`)

func withoutGroups(text string) string {
	parts := blankGroups.FindStringSubmatch(text)
	if parts == nil {
		return text
	}
	return parts[1] + strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, parts[2]) + parts[3] + parts[4]
}

// plain writes a number with a decimal point and without thousands signs. Other
// text stays as it is.
func plain(text string, decimal byte) string {
	parts := number.FindStringSubmatch(withoutGroups(text))
	if parts == nil {
		return text
	}
	group := ","
	if decimal == ',' {
		group = "."
	}
	n := strings.ReplaceAll(parts[1], group, "")
	return strings.Replace(n, ",", ".", 1) + parts[2]
}

// isNumber reports whether a text is a number, with a unit or without.
func isNumber(text string) bool { return number.MatchString(withoutGroups(strings.TrimSpace(text))) }
