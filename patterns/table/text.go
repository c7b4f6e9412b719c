package table

import (
	"regexp"
	"strings"
)

// asText precedes a cell that a spreadsheet would run as a formula.
// Spreadsheets then treat the cell as text.
const asText = "'"

// running lists the first characters of such cells, and asText itself, so that
// every text is read back unchanged.
const running = "=+-@\t\r" + asText

// plainNumber matches a number, which a spreadsheet does not run.
var plainNumber = regexp.MustCompile(`^-?\d+(\.\d+)?$`)

// textCell writes a text so that no spreadsheet runs it.
func textCell(text string) string {
	if text != "" && strings.Contains(running, text[:1]) && !plainNumber.MatchString(text) {
		return asText + text
	}
	return text
}

// textOf reverses textCell.
func textOf(cell string) string {
	rest, marked := strings.CutPrefix(cell, asText)
	if marked && rest != "" && strings.Contains(running, rest[:1]) {
		return rest
	}
	return cell
}
