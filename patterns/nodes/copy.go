package nodes

import (
	"maps"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// copied is the text of a file as it goes to the parser. Where a slip of syntax
// shows what was meant, that stands in it; where it does not, the part round the
// slip is left out, so that one slip hides no other problem.
type copied struct {
	lines []string
	put   map[int]blanks // by the line, from 1
	lost  []string       // keys of the parts that are left out; "" where that is unknown
	left  *int           // bytes that may still be parsed, so that no file takes long
	last  *lineRunes
}

// lineRunes keeps the characters of the line looked at last, which may be long.
type lineRunes struct {
	line  string
	runes []rune
}

// blanks are characters put into a line, which the file does not have.
type blanks struct{ column, count int }

// most bytes parsed on behalf of slips, and the largest text to look at.
const (
	mostParsed    = 8 << 20
	largestMended = 200_000
)

func newCopy(f *File) copied {
	left := mostParsed
	return copied{lines: strings.Split(cleaned(f.Text), "\n"), put: map[int]blanks{}, left: &left, last: &lineRunes{}}
}

// with returns a copy with some lines written anew.
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

// parses reports whether the first lines can be read; no longer once much was
// tried.
func (c copied) parses(lines int) bool {
	text := c.text(lines)
	if *c.left -= len(text); *c.left < 0 {
		return false
	}
	_, _, err := decode(text)
	return err == nil
}

// lookAhead is how far down a bracket may close.
const lookAhead = 30

// past returns the end of a piece of the text that reaches over a line and can
// be read; 0 where there is none. Inside a bracket that closes further down
// nothing can be read either.
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
// names the start of the part round it instead. Text up to the line before can
// be read, and no longer piece of it.
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

// column returns the column of the file for one of the copy.
func (c copied) column(line, column int) int {
	if b := c.put[line]; column > b.column {
		return max(1, column-b.count)
	}
	return column
}

// without leaves out the part at the top of the file that a line stands in.
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
