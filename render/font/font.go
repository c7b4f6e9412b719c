// Package font measures and wraps text. It reads the widths of the two embedded
// typefaces once, and every backend paints with these widths, so that a line is
// at the same place on paper and on screen.
//
// The typefaces are Go Regular and Go Bold. They have the Latin, Greek and
// Cyrillic letters of Europe's national languages, and the signs of the trade
// (N·m, °, ×, ≈, Ø). It may import scene only.
package font

import (
	"math"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"drawdown/render/scene"
)

// CapHeight is the height of a capital or a digit in em (OS/2 sCapHeight of Go
// Bold; Go Regular has the same).
const CapHeight = 0.7227

// Ascent and Descent are the extent of the letters in em, accents included.
const (
	Ascent  = 0.93
	Descent = 0.22
)

// Data returns the bytes of the embedded typeface. Callers must not change them.
func Data(w scene.Weight) []byte {
	if w == scene.Bold {
		return gobold.TTF
	}
	return goregular.TTF
}

// face holds what layout needs of one typeface: the advance of each character
// in 1/1000 em, rounded to integers as in the width table of a PDF font; -1 if
// the glyph is missing. Neither typeface has glyphs beyond the table.
type face [1 << 16]int16

var faces = [...]func() *face{
	scene.Regular: sync.OnceValue(func() *face { return measured(scene.Regular) }),
	scene.Bold:    sync.OnceValue(func() *face { return measured(scene.Bold) }),
}

func measured(w scene.Weight) *face {
	var buffer sfnt.Buffer
	var f face
	for r := range f {
		f[r] = advance(Typeface(w), &buffer, rune(r))
	}
	return &f
}

var typefaces = [...]func() *sfnt.Font{
	scene.Regular: sync.OnceValue(func() *sfnt.Font { return parsed(scene.Regular) }),
	scene.Bold:    sync.OnceValue(func() *sfnt.Font { return parsed(scene.Bold) }),
}

func parsed(w scene.Weight) *sfnt.Font {
	f, err := sfnt.Parse(Data(w))
	if err != nil {
		panic("the embedded typeface is broken: " + err.Error())
	}
	return f
}

// Typeface returns the embedded typeface with its glyphs.
func Typeface(w scene.Weight) *sfnt.Font { return typefaces[w]() }

func advance(parsed *sfnt.Font, buffer *sfnt.Buffer, r rune) int16 {
	glyph, err := parsed.GlyphIndex(buffer, r)
	if err != nil || glyph == 0 {
		return -1
	}
	em := parsed.UnitsPerEm()
	wide, err := parsed.GlyphAdvance(buffer, glyph, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return -1
	}
	return int16(math.Round(float64(wide) / 64 * 1000 / float64(em)))
}

// width returns the advance of r in 1/1000 em, or a negative value if the glyph
// is missing.
func (f *face) width(r rune) int {
	if int(r) >= len(f) {
		return -1
	}
	return int(f[r])
}

// sum returns the advance of a line in 1/1000 em.
func (f *face) sum(s string) int {
	sum := 0
	for _, r := range s {
		sum += max(0, f.width(r))
	}
	return sum
}

// Has reports whether the typeface has the character.
func Has(r rune) bool {
	return faces[scene.Regular]().width(r) >= 0 && faces[scene.Bold]().width(r) >= 0
}

// Width returns the width of a line at a given em, both in millimetres.
func Width(s string, w scene.Weight, size float64) float64 {
	return millimetres(faces[w]().sum(s), size)
}

func millimetres(thousandths int, size float64) float64 { return float64(thousandths) / 1000 * size }
