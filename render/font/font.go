// Package font measures and breaks text. It reads the widths of the two
// embedded typefaces once, and every backend paints by these widths, so that
// the same line stands at the same place on paper and on screen.
//
// The typefaces are Go Regular and Go Bold. They hold the Latin, Greek and
// Cyrillic letters of Europe's national languages, and the signs of the trade
// (N·m, °, ×, ≈, Ø).
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

// CapHeight is the height of a capital or a digit as a share of the em
// (OS/2 sCapHeight of Go Bold; Go Regular has the same).
const CapHeight = 0.7227

// Ascent and Descent bound the letters as shares of the em, accents included.
const (
	Ascent  = 0.93
	Descent = 0.22
)

// Data gives the bytes of the embedded typeface. Callers must not change them.
func Data(w scene.Weight) []byte {
	if w == scene.Bold {
		return gobold.TTF
	}
	return goregular.TTF
}

// face holds what layout needs of one typeface.
type face struct {
	parsed *sfnt.Font
	mu     sync.Mutex
	buffer sfnt.Buffer
	widths map[rune]int // advance in 1/1000 em; -1 where the glyph is missing
}

var faces = [2]func() *face{
	sync.OnceValue(func() *face { return open(goregular.TTF) }),
	sync.OnceValue(func() *face { return open(gobold.TTF) }),
}

func open(data []byte) *face {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		panic("the embedded typeface is broken: " + err.Error())
	}
	return &face{parsed: parsed, widths: map[rune]int{}}
}

// width gives the advance of r in 1/1000 em, rounded to whole numbers as a PDF
// font's width table holds it.
func (f *face) width(r rune) int {
	f.mu.Lock()
	defer f.mu.Unlock()
	if w, ok := f.widths[r]; ok {
		return w
	}
	w := f.load(r)
	f.widths[r] = w
	return w
}

func (f *face) load(r rune) int {
	glyph, err := f.parsed.GlyphIndex(&f.buffer, r)
	if err != nil || glyph == 0 {
		return -1
	}
	em := f.parsed.UnitsPerEm()
	advance, err := f.parsed.GlyphAdvance(&f.buffer, glyph, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return -1
	}
	return int(math.Round(float64(advance) / 64 * 1000 / float64(em)))
}

// Has says whether the typeface holds the character.
func Has(r rune) bool {
	return faces[scene.Regular]().width(r) >= 0 && faces[scene.Bold]().width(r) >= 0
}

// Width measures a line set at the given em, both in millimetres.
func Width(s string, w scene.Weight, size float64) float64 {
	f := faces[w]()
	sum := 0
	for _, r := range s {
		sum += max(0, f.width(r))
	}
	return float64(sum) / 1000 * size
}
