package dxf

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// codePages are the values of $DWGCODEPAGE.
var codePages = map[string]encoding.Encoding{
	"ansi_874": charmap.Windows874, "ansi_1250": charmap.Windows1250, "ansi_1251": charmap.Windows1251,
	"ansi_1252": charmap.Windows1252, "ansi_1253": charmap.Windows1253, "ansi_1254": charmap.Windows1254,
	"ansi_1255": charmap.Windows1255, "ansi_1256": charmap.Windows1256, "ansi_1257": charmap.Windows1257,
	"ansi_1258": charmap.Windows1258,
	"ansi_932":  japanese.ShiftJIS, "ansi_936": simplifiedchinese.GBK, "ansi_949": korean.EUCKR, "ansi_950": traditionalchinese.Big5,
	"dos437": charmap.CodePage437, "dos850": charmap.CodePage850, "dos852": charmap.CodePage852, "dos855": charmap.CodePage855,
	"dos860": charmap.CodePage860, "dos863": charmap.CodePage863, "dos865": charmap.CodePage865, "dos866": charmap.CodePage866,
}

// letters converts the texts of a drawing to Unicode.
type letters struct {
	page  encoding.Encoding // nil: UTF-8
	guess bool              // none is named: UTF-8 if the bytes are valid, else the page
	done  map[string]string // texts read before
}

// newLetters uses UTF-8 for drawings from version AC1021 (2007) on, and before
// that the code page that they name.
func newLetters(version, page string) letters {
	l := letters{done: map[string]string{}, guess: page == ""}
	if strings.ToUpper(version) < "AC1021" || version == "" {
		l.page = codePages[strings.ToLower(strings.ReplaceAll(page, "-", "_"))]
		if l.page == nil {
			l.page = charmap.Windows1252
		}
	}
	return l
}

func (l letters) read(raw string) string {
	text, known := l.done[raw]
	if known {
		return text
	}
	text = raw
	if l.page != nil && !(l.guess && utf8.ValidString(raw)) {
		if decoded, err := l.page.NewDecoder().String(raw); err == nil {
			text = decoded
		}
	}
	text = unescape(strings.ToValidUTF8(text, "�"))
	if len(l.done) < 10_000 {
		l.done[raw] = text
	}
	return text
}

// escaped matches a character that the code page lacks: \U+00E9.
var escaped = regexp.MustCompile(`\\U\+[0-9A-Fa-f]{4}`)

func unescape(text string) string {
	return escaped.ReplaceAllStringFunc(text, func(code string) string {
		v, _ := strconv.ParseUint(code[3:], 16, 32) // four hexadecimal digits
		return string(rune(v))
	})
}
