package problem

import "strconv"

// Quoted prints a value of the file, shortened where it is long.
func Quoted(s string) string { return strconv.Quote(Shortened(s)) }

// Shortened cuts a text that is long.
func Shortened(s string) string {
	const shown = 60
	if runes := []rune(s); len(runes) > shown {
		return string(runes[:shown]) + "…"
	}
	return s
}
