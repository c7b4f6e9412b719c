package nodes

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
)

// checkCharacters finds what is not text: encodings other than UTF-8, and
// control characters. UTF-16 gets here only if it is broken. It returns the
// position of the first one, or no code if there is none.
func checkCharacters(data []byte) (line, column int, why finding.Finding) {
	if bytes.HasPrefix(data, []byte{0xFE, 0xFF}) || bytes.HasPrefix(data, []byte{0xFF, 0xFE}) {
		return 1, 1, finding.Failed(UTF16, nil)
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	line, column = 1, 1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			return line, column, finding.Failed(NotUTF8, finding.Values{"byte": fmt.Sprintf("%02X", data[i])})
		case r == 0:
			return line, column, finding.Failed(NUL, nil)
		case !isYAMLCharacter(r):
			return line, column, finding.Failed(ControlCharacter, finding.Values{"character": fmt.Sprintf("%04X", r)})
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
	return 0, 0, why
}

// isYAMLCharacter reports whether r is in c-printable of YAML 1.1, section
// 4.1.1.
func isYAMLCharacter(r rune) bool {
	if unicode.IsControl(r) {
		return strings.ContainsRune("\t\n\r\u0085", r)
	}
	return r != 0xFEFF && r != 0xFFFE && r != 0xFFFF
}

// cleaned returns a text for the parser, without what checkCharacters finds.
func cleaned(text string) string {
	return strings.Map(func(r rune) rune {
		if r == utf8.RuneError || !isYAMLCharacter(r) {
			return '?'
		}
		return r
	}, text)
}
