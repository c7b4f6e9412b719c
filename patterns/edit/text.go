package edit

import (
	"bytes"
	"slices"
	"unicode"
	"unicode/utf8"
)

// text is a file's bytes with the starts of its lines.
type text struct {
	bytes []byte
	lines []int
}

const mark = "\uFEFF" // that some editors put before the first character

// breaks are the line breaks of YAML 1.1, as the parser counts them.
var breaks = [][]byte{[]byte("\r\n"), []byte("\r"), []byte("\n"), []byte("\u0085"), []byte("\u2028"), []byte("\u2029")}

func newText(data []byte) text {
	t := text{bytes: data}
	start := 0
	if bytes.HasPrefix(data, []byte(mark)) {
		start = len(mark)
	}
	t.lines = append(t.lines, start)
	for at := start; at < len(data); {
		if n := t.breakAt(at); n > 0 {
			at += n
			t.lines = append(t.lines, at)
		} else {
			at++
		}
	}
	return t
}

// breakAt returns the length of the line break at an offset, 0 for none.
func (t text) breakAt(at int) int {
	switch t.bytes[at] {
	case '\r', '\n', 0xC2, 0xE2: // how all breaks begin
		for _, b := range breaks {
			if bytes.HasPrefix(t.bytes[at:], b) {
				return len(b)
			}
		}
	}
	return 0
}

// offset converts a position of the parser, from 1 and in characters.
func (t text) offset(line, column int) int {
	if line < 1 || line > len(t.lines) {
		return len(t.bytes)
	}
	at := t.lines[line-1]
	for ; column > 1 && at < len(t.bytes); column-- {
		_, size := utf8.DecodeRune(t.bytes[at:])
		at += size
	}
	return at
}

// lineStart returns the start of the line with an offset.
func (t text) lineStart(at int) int {
	i, exact := slices.BinarySearch(t.lines, at)
	if !exact {
		i--
	}
	return t.lines[max(i, 0)]
}

// lineEnd returns the offset of the break that ends the line with an offset.
func (t text) lineEnd(at int) int {
	for at < len(t.bytes) && t.breakAt(at) == 0 {
		at++
	}
	return at
}

// nextLine returns the start of the next line.
func (t text) nextLine(at int) int {
	at = t.lineEnd(at)
	if at < len(t.bytes) {
		at += t.breakAt(at)
	}
	return at
}

// column returns the column of an offset, from 1 and in characters.
func (t text) column(at int) int {
	return utf8.RuneCount(t.bytes[t.lineStart(at):at]) + 1
}

// newline returns the line break that the file uses.
func (t text) newline() string {
	if end := t.lineEnd(0); end < len(t.bytes) {
		return string(t.bytes[end : end+t.breakAt(end)])
	}
	return "\n"
}

// skipSpace returns the offset of the next character that is no space or line
// break.
func (t text) skipSpace(at int) int {
	for at < len(t.bytes) {
		r, size := utf8.DecodeRune(t.bytes[at:])
		if !unicode.IsSpace(r) {
			break
		}
		at += size
	}
	return at
}

// skipBlank skips comments, too.
func (t text) skipBlank(at int) int {
	for {
		at = t.skipSpace(at)
		if at >= len(t.bytes) || t.bytes[at] != '#' {
			return at
		}
		at = t.lineEnd(at)
	}
}

// blank reports whether there are only spaces between two offsets.
func (t text) blank(from, to int) bool { return t.skipSpace(from) >= to }

// opensLine reports whether only spaces precede an offset on its line.
func (t text) opensLine(at int) bool { return t.blank(t.lineStart(at), at) }

func (t text) has(at int, sign byte) bool { return at < len(t.bytes) && t.bytes[at] == sign }
