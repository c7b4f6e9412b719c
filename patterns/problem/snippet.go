package problem

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// excerptReach is how many characters a long line shows on each side of the
// place.
const excerptReach = 100

// Excerpt returns the part of a source line that is shown for the place at
// column (from 1, in characters), and the mark: the place in that part. A line
// that is shown whole has the mark 0.
func Excerpt(line []rune, column int) (snippet string, mark int) {
	if len(line) <= 2*excerptReach {
		return string(line), 0
	}
	place := min(max(column-1, 0), len(line))
	from, to := max(0, place-excerptReach), min(len(line), place+excerptReach)
	mark = place - from + 1
	snippet = string(line[from:to])
	if from > 0 {
		snippet, mark = "…"+snippet, mark+1
	}
	if to < len(line) {
		snippet += "…"
	}
	return snippet, mark
}

// padding returns the blanks that reach as far on a terminal as the first n
// characters of the line. Tabs stay tabs, so that every tab width fits.
func padding(line string, n int) string {
	var b strings.Builder
	for _, r := range line {
		if n <= 0 {
			break
		}
		n--
		if r == '\t' {
			b.WriteByte('\t')
			continue
		}
		b.WriteString(strings.Repeat(" ", cells(r)))
	}
	return b.String()
}

// cells is the number of terminal cells that a character takes (Unicode
// Standard Annex 11, East Asian Width: W and F take two).
func cells(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// harmless replaces control characters, which could drive the terminal.
func harmless(line string) string {
	return strings.Map(func(r rune) rune {
		if r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
			return unicode.ReplacementChar
		}
		return r
	}, line)
}
