package nodes

import (
	"regexp"
	"slices"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// TightColon reports a colon without a space after it.
func TightColon(key, rest string) finding.Finding {
	return finding.Failed(SpaceAfterColon, finding.Values{"key": key, "rest": problem.Shortened(rest)})
}

var tightLine = regexp.MustCompile(`^(\s*(?:- +)?)([a-z][a-z ]*):(\S.*)$`)

// tightColonNear finds a colon without a space on the line that the parser
// could not read, or on the one above: the parser then takes key and value for
// one word.
func (c copied) tightColonNear(line int, code finding.Code, keys []string) (at, column int, key, rest string) {
	for at = line; at >= max(1, line-1) && (code == ColonMissing || code == ColonOutOfPlace); at-- {
		m := tightLine.FindStringSubmatch(c.lines[at-1])
		if m != nil && slices.Contains(keys, m[2]) {
			return at, utf8.RuneCountInString(m[1]) + 1, m[2], m[3]
		}
	}
	return 0, 0, "", ""
}
