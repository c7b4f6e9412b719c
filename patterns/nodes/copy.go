package nodes

import (
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// copied is the text of a file as given to the parser. If a syntax error shows
// what was meant, the copy has the correction. Otherwise it leaves out the part
// with the error, so that one error does not hide other problems.
type copied struct {
	lines []string
	put   map[int]blanks // by line, from 1
	lost  []string       // keys of the parts left out; "" if unknown
	left  *int           // bytes that may still be parsed, to limit the time for a file
	last  *lineRunes
}

// lineRunes caches the characters of the last line, which may be long.
type lineRunes struct {
	line  string
	runes []rune
}

// blanks are characters inserted into a line that the file does not have.
type blanks struct{ column, count int }

// Limits: total bytes parsed because of syntax errors, and the largest text to
// correct.
const (
	mostParsed    = 8 << 20
	largestMended = 200_000
)

func newCopy(f *File) copied {
	left := mostParsed
	return copied{lines: strings.Split(cleaned(f.Text), "\n"), put: map[int]blanks{}, left: &left, last: &lineRunes{}}
}

// with returns a copy with some lines replaced.
func (c copied) with(anew map[int]string) copied {
	c.lines, c.put = slices.Clone(c.lines), maps.Clone(c.put)
	for line, text := range anew {
		c.lines[line-1] = text
	}
	return c
}

// runes returns the characters of a line.
func (c copied) runes(line int) []rune {
	if text := c.lines[line-1]; text != c.last.line {
		*c.last = lineRunes{text, []rune(text)}
	}
	return c.last.runes
}

// text returns the first lines.
func (c copied) text(lines int) []byte {
	return []byte(strings.Join(c.lines[:lines], "\n") + "\n")
}

func (c copied) decode() (document, second *yaml.Node, err error) {
	return decode(c.text(len(c.lines)))
}

// parses reports whether the first lines can be parsed. It returns false once
// too much was parsed.
func (c copied) parses(lines int) bool {
	text := c.text(lines)
	if *c.left -= len(text); *c.left < 0 {
		return false
	}
	_, _, err := decode(text)
	return err == nil
}

// lookAhead is the number of lines within which a bracket may close.
const lookAhead = 30

// past returns the end of a part of the text that includes a line and can be
// parsed, or 0. Inside a bracket that closes further down nothing can be parsed
// either.
func (c copied) past(line int) int {
	for end := line; end < min(line+lookAhead, len(c.lines)); end++ {
		if c.parses(end) {
			return end
		}
	}
	if c.parses(len(c.lines)) {
		return len(c.lines)
	}
	return 0
}

// stoppingLine finds the line that makes the text unreadable. The parser often
// reports the start of the enclosing part instead. The text can be parsed up to
// the line before, but no further.
func (c copied) stoppingLine() int {
	good, bad := 0, len(c.lines)
	for good+1 < bad {
		if middle := (good + bad) / 2; c.parses(middle) {
			good = middle
		} else {
			bad = middle
		}
		if good+1 < bad {
			continue
		}
		if end := c.past(bad + 1); end > 0 && end < len(c.lines) {
			good, bad = end, len(c.lines)
		}
	}
	return bad
}

// column converts a column of the copy to one of the file.
func (c copied) column(line, column int) int {
	if b := c.put[line]; column > b.column {
		return max(1, column-b.count)
	}
	return column
}

// without leaves out the top-level part of the file that contains a line.
func (c copied) without(line int, keys []string) copied {
	isTop := func(text string) bool { return text != "" && !strings.ContainsAny(text[:1], " \t-#]}") }
	from, to := line, line+1
	for from > 1 && !isTop(c.lines[from-1]) {
		from--
	}
	for to <= len(c.lines) && !isTop(c.lines[to-1]) {
		to++
	}
	key := ""
	for _, k := range keys {
		if behind, begins := strings.CutPrefix(c.lines[from-1], k); begins && strings.TrimLeft(behind, "abcdefghijklmnopqrstuvwxyz") == behind {
			key = k
		}
	}
	anew := map[int]string{}
	for l := from; l < to; l++ {
		anew[l] = ""
	}
	c = c.with(anew)
	c.lost = append(slices.Clone(c.lost), key)
	return c
}
