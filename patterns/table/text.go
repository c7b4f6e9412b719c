package table

import (
	"regexp"
	"strings"
)

// asText stands before a cell that a spreadsheet would take for a formula and
// run. Spreadsheets take what follows as text.
const asText = "'"

// running are the signs that such a cell begins with, and asText itself, so that
// every text is read back as it was.
const running = "=+-@\t\r" + asText

// plainNumber is a figure, which a spreadsheet does not run.
var plainNumber = regexp.MustCompile(`^-?\d+(\.\d+)?$`)

// textCell writes a text so that no spreadsheet runs it.
func textCell(text string) string {
	if text != "" && strings.Contains(running, text[:1]) && !plainNumber.MatchString(text) {
		return asText + text
	}
	return text
}

// textOf reads what textCell has written.
func textOf(cell string) string {
	rest, marked := strings.CutPrefix(cell, asText)
	if marked && rest != "" && strings.Contains(running, rest[:1]) {
		return rest
	}
	return cell
}
