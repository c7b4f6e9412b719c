package truesize

import (
	"slices"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
)

// free reports whether a box meets no seam, no text and no spot but its own; if
// strictly, no line either.
func (p *Plate) free(b scene.Box, own int, strictly bool) bool {
	if p.seams.Cross(b) || slices.ContainsFunc(p.texts, b.Meets) {
		return false
	}
	for i, s := range p.spots {
		if i != own && b.Meets(s) {
			return false
		}
	}
	return !strictly || !p.onLine(b)
}

func (p *Plate) onLine(b scene.Box) bool {
	return slices.ContainsFunc(p.lines, func(l segment) bool { return b.Meets(l.box) && b.Cut(l.a, l.b) })
}

// nudges are the steps by which a word may be moved, the shortest first.
var nudges = func() []scene.Point {
	var all []scene.Point
	for y := -30.0; y <= 30; y += 3 {
		for x := -45.0; x <= 45; x += 5 {
			all = append(all, scene.Point{X: x, Y: y})
		}
	}
	slices.SortStableFunc(all, func(a, b scene.Point) int {
		return int(a.X*a.X+3*a.Y*a.Y) - int(b.X*b.X+3*b.Y*b.Y)
	})
	return all
}()

// Words sets the words on the part and the front arrow.
func (p *Plate) Words() {
	p.front()
	for _, b := range p.joint.Bores {
		p.word(b.Label, p.At(b.Centre), scene.Black)
	}
	for _, l := range p.joint.Labels {
		p.word(l.Text, p.At(l.At), scene.Black)
	}
}

// wordEm is the size of the words on the part, SmallEm of those at a spot. At
// true size they are the same on every paper.
const (
	wordEm  = 4.2
	SmallEm = 3.5
)

func (p *Plate) word(content string, at scene.Point, ink scene.Ink) {
	if content == "" {
		return
	}
	word := tile.Piece{Name: content, Items: []scene.Item{font.Set(scene.Text{
		At: scene.Point{X: at.X, Y: at.Y + wordEm*font.CapHeight/2}, Size: wordEm, Anchor: scene.Middle, Ink: ink, Content: content,
	})}}
	for _, strictly := range []bool{true, false} {
		if p.set(word, nudges, func(scene.Box) bool { return true }, strictly) {
			return
		}
	}
	p.Drawing.NoRoom = append(p.Drawing.NoRoom, content)
}

// wordAir is kept free around a word.
const wordAir = 0.6

// set places a word at the first step where good reports true and the space is
// free.
func (p *Plate) set(word tile.Piece, steps []scene.Point, good func(scene.Box) bool, strictly bool) bool {
	b := word.Bounds()
	for _, step := range steps {
		there := b.Moved(step).Grown(wordAir)
		if good(b.Moved(step)) && p.free(there, -1, strictly) {
			p.texts = append(p.texts, there)
			word = word.Moved(step)
			word.Items = p.cleared(word.Items)
			p.Drawing.Words = append(p.Drawing.Words, word)
			return true
		}
	}
	return false
}

// front puts the word FRONT and an arrow beside the part. If a view has no
// front its top is marked, because nothing else on the sheets shows which way
// is up.
func (p *Plate) front() {
	way, known := diagram.FrontWays[p.joint.Front]
	content := p.words.Sheet.Front
	if !known {
		way, content = scene.Point{Y: -1}, p.words.Tile.Top
	}
	arrow := diagram.Arrow{Gap: 3, Length: 6, Half: 3, Air: 1.5, Em: wordEm}
	piece := tile.Piece{Name: content, Items: arrow.Beside(p.Drawing.Bounds(), way, content)}
	p.texts = append(p.texts, piece.Bounds())
	p.Drawing.Words = append(p.Drawing.Words, piece)
}
