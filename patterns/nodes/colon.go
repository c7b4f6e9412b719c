package nodes

import (
	"regexp"
	"slices"
	"unicode/utf8"

	"drawdown/patterns/problem"
)

// TightColonWords says what a colon without its blank lacks.
func TightColonWords(key, rest string) string {
	return "put a space after the colon: " + key + ": " + problem.Shortened(rest)
}

var tightLine = regexp.MustCompile(`^(\s*(?:- +)?)([a-z][a-z ]*):(\S.*)$`)

// tightColonNear finds a colon without its blank on the line that the parser
// could not read, or on the one above it: the parser then takes the key and its
// value for one word.
func (f *File) tightColonNear(line int, message string, keys []string) (at, column int, words string) {
	if message != "could not find expected ':'" && message != "mapping values are not allowed in this context" {
		return 0, 0, ""
	}
	for at = line; at >= max(1, line-1); at-- {
		m := tightLine.FindStringSubmatch(f.Lines[at-1])
		if m != nil && slices.Contains(keys, m[2]) {
			return at, utf8.RuneCountInString(m[1]) + 1, TightColonWords(m[2], m[3])
		}
	}
	return 0, 0, ""
}
