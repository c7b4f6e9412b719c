package font

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"drawdown/render/scene"
)

// lookalikes are signs that the typeface lacks and their exact replacements.
var lookalikes = strings.NewReplacer(
	"⌀", "Ø", "⋅", "·", "\u202f", "\u00a0", "\u2011", "-", "ʼ", "’", "⅓", "1⁄3", "⅔", "2⁄3", "\u00ad", "", "\u2009", " ",
)

// Clean normalizes a line for setting: composed letters, replacements for signs
// that the typeface lacks, and single spaces for line ends and tabs.
func Clean(s string) string {
	s = lookalikes.Replace(norm.NFC.String(s))
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, s)
}

// Missing returns the first character of the cleaned line that the typeface
// lacks.
func Missing(s string) (rune, bool) {
	for _, r := range Clean(s) {
		if !Has(r) {
			return r, true
		}
	}
	return 0, false
}

// Fit shortens a line with an ellipsis until it is no wider than width.
func Fit(s string, w scene.Weight, size, width float64) string {
	if Width(s, w, size) <= width {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 {
		runes = runes[:len(runes)-1]
		short := strings.TrimRight(string(runes), " ,;·") + "…"
		if Width(short, w, size) <= width {
			return short
		}
	}
	return ""
}

// Break wraps a text into lines no wider than width. A word wider than a line
// is broken inside. The last line never has a single word if the line above has
// three or more. Each word is measured once.
func Break(s string, w scene.Weight, size, width float64) []string {
	f := faces[w]()
	blank := f.sum(" ")
	var lines, line []string
	taken := 0 // width of the words in the line, in 1/1000 em
	end := func() {
		if len(line) > 0 {
			lines = append(lines, strings.Join(line, " "))
			line = line[:0]
		}
	}
	for _, word := range strings.FieldsFunc(s, breaks) {
		wide := f.sum(word)
		if len(line) > 0 && millimetres(taken+blank+wide, size) <= width {
			line, taken = append(line, word), taken+blank+wide
			continue
		}
		end()
		for word != "" && millimetres(wide, size) > width {
			head := prefix(word, w, size, width)
			lines = append(lines, head)
			word = word[len(head):]
			wide = f.sum(word)
		}
		if word != "" {
			line, taken = append(line, word), wide
		}
	}
	end()
	return accompanied(lines, w, size, width)
}

// accompanied moves one more word down to a last line with one word.
func accompanied(lines []string, w scene.Weight, size, width float64) []string {
	last := len(lines) - 1
	if last < 1 || strings.ContainsFunc(lines[last], breaks) {
		return lines
	}
	above := strings.FieldsFunc(lines[last-1], breaks)
	n := len(above) - 1
	if n < 2 {
		return lines
	}
	if down := above[n] + " " + lines[last]; Width(down, w, size) <= width {
		lines[last-1], lines[last] = strings.Join(above[:n], " "), down
	}
	return lines
}

// LongestWord is the width of the longest word of a text, and so the least
// width of a line.
func LongestWord(s string, w scene.Weight, size float64) float64 {
	longest := 0.0
	for _, word := range strings.FieldsFunc(s, breaks) {
		longest = max(longest, Width(word, w, size))
	}
	return longest
}

// breaks reports whether a line may end at r: at a space, but not at a
// non-breaking one.
func breaks(r rune) bool { return unicode.IsSpace(r) && r != '\u00a0' && r != '\u202f' }

// prefix returns the longest start of a word that fits, at least one character.
func prefix(word string, w scene.Weight, size, width float64) string {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && Width(word[:next], w, size) > width {
			break
		}
		end = next
	}
	return word[:end]
}

// Set cleans and measures a line, and rounds its position and size to what
// every backend can store. The caller fills in everything but Width.
func Set(t scene.Text) scene.Text {
	t.Content = Clean(t.Content)
	t.Size = math.Round(t.Size*100) / 100
	t.Width = Width(t.Content, t.Weight, t.Size)
	t.At = scene.Point{X: scene.Rounded(t.At.X), Y: scene.Rounded(t.At.Y)}
	return t
}

// Check reports whether every backend can paint the page: its figures are valid
// and the typeface has every character of its text.
func Check(p scene.Page) error {
	if err := scene.Check(p); err != nil {
		return err
	}
	for i, it := range p.Items {
		t, ok := it.(scene.Text)
		if !ok {
			continue
		}
		if err := CheckLine(t.Content); err != nil {
			return fmt.Errorf("page %q, item %d: %w", p.Name, i+1, err)
		}
	}
	return nil
}

// CheckLine reports whether the typeface has every character of a line.
func CheckLine(s string) error {
	// An invalid byte would be set as the typeface's mark for unknown
	// characters.
	if strings.ToValidUTF8(s, "") != s {
		return fmt.Errorf("text %.40q is not valid UTF-8", s)
	}
	if r, missing := Missing(s); missing {
		return fmt.Errorf("text %.40q: the typeface has no %q (%U); it holds Latin, Greek and Cyrillic letters and the signs of the trade", s, r, r)
	}
	return nil
}
