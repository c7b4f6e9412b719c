package patterns

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"drawdown/patterns/problem"
)

// file is one file of the chain that extends builds, cut into lines for the
// snippets.
type file struct {
	name  string
	level int // 0: the file that is read; 1: the one that it extends, and so on
	text  string
	lines []string
	long  map[int][]rune // the long lines that were shown already
}

// lineEnds are the line breaks of YAML 1.1, which the parser counts.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

func newFile(name string, data []byte) *file {
	text := lineEnds.Replace(string(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	return &file{name: name, text: text, lines: strings.Split(text, "\n"), long: map[int][]rune{}}
}

// lastLine is the number of the last line that holds something.
func (f *file) lastLine() int {
	n := len(f.lines)
	if n > 1 && f.lines[n-1] == "" {
		n--
	}
	return n
}

func (f *file) excerpt(line, column int) (string, int) {
	if line < 1 || line > len(f.lines) {
		return "", 0
	}
	const short = 1000
	text := f.lines[line-1]
	if len(text) < short {
		return problem.Excerpt([]rune(text), column)
	}
	if f.long[line] == nil {
		f.long[line] = []rune(text)
	}
	return problem.Excerpt(f.long[line], column)
}

// checkCharacters finds what is no text: another encoding than UTF-8, and
// control characters. It gives the place of the first one.
func checkCharacters(data []byte) (line, column int, what string) {
	if bytes.HasPrefix(data, []byte{0xFE, 0xFF}) || bytes.HasPrefix(data, []byte{0xFF, 0xFE}) {
		return 1, 1, "the file is in UTF-16; save it as UTF-8"
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	line, column = 1, 1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			return line, column, fmt.Sprintf("the byte 0x%02X is not UTF-8; save the file as UTF-8", data[i])
		case r == 0:
			return line, column, "the file holds a NUL character; it is not text"
		case !isYAMLCharacter(r):
			return line, column, fmt.Sprintf("the file holds the control character U+%04X; remove it", r)
		}
		i += size
		column++
		if r == '\r' && i < len(data) && data[i] == '\n' {
			continue
		}
		if strings.ContainsRune("\n\r\u0085\u2028\u2029", r) {
			line, column = line+1, 1
		}
	}
	return 0, 0, ""
}

// isYAMLCharacter is c-printable of YAML 1.1, section 4.1.1.
func isYAMLCharacter(r rune) bool {
	switch {
	case r == '\t', r == '\n', r == '\r', r == 0x85:
		return true
	case r < 0x20, r >= 0x7F && r < 0xA0, r == 0xFEFF, r == 0xFFFE, r == 0xFFFF:
		return false
	}
	return true
}
