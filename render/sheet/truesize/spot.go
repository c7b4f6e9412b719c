package truesize

import (
	"cmp"
	"math"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
)

// Spot is a place on the sheet for one thing, or its hole.
type Spot struct {
	Name  string // of the thing
	Edge  scene.Shape
	At    scene.Point
	Inner float64 // radius free for text in the middle; 0 for none
	Large string  // in the middle if it can be 3 mm high, otherwise beside
	// Widest is as wide as the widest large word, so that equal spots have
	// words of the same height; "" for the large word itself.
	Widest string
	Small  string // beside
	Note   string // a mark below the large word if it fits, otherwise beside
}

// Capital heights of the large words, in millimetres.
const (
	leastCap  = 3.0
	mostCap   = 10.0
	besideCap = 4.0
	rimAir    = 1.0 // between a word and the edge around it
	lineGap   = 1.2
	besideGap = 1.0 // between an edge and words beside it
)

// Spots draws all spots and sets their words. A spot and its words are one
// piece of the drawing.
func (p *Plate) Spots(spots []Spot) {
	for _, s := range spots {
		p.spots = append(p.spots, s.Edge.Path.Bounds().Grown(0.4))
		p.edges = append(p.edges, s.Edge.Path.Flatten())
	}
	for i, s := range spots {
		s.Edge.Tag = scene.Tag{Name: s.Name, Role: scene.Mark}
		piece := tile.Piece{Name: s.Name, Edge: s.Edge}
		if in := p.middle(s, i); len(in) > 0 {
			for _, t := range in {
				piece.Items = append(piece.Items, t)
			}
			s.Large = ""
			if len(in) > 1 {
				s.Note = ""
			}
		}
		piece.Items = append(piece.Items, p.beside(s, i)...)
		if len(piece.Items) == 0 {
			p.Drawing.Nameless++
		}
		p.Drawing.Pieces = append(p.Drawing.Pieces, piece)
	}
}

// middle sets the large word in the spot, with the note below it if both fit.
func (p *Plate) middle(s Spot, i int) []scene.Text {
	room := s.Inner - rimAir
	if s.Large == "" || room <= 0 {
		return nil
	}
	if s.Note != "" {
		if in := p.withNote(s, i, room); in != nil {
			return in
		}
	}
	capMm := math.Min(mostCap, room/math.Hypot(s.wide()/2, 0.5))
	if capMm < leastCap {
		return nil
	}
	return p.within(i, s.number(capMm, s.At.Y+capMm/2))
}

func (p *Plate) withNote(s Spot, i int, room float64) []scene.Text {
	const noteCap = SmallEm * font.CapHeight
	note := scene.Text{Size: SmallEm, Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: s.Note, Tag: scene.Tag{Name: s.Name, Role: scene.Furniture}}
	note = font.Set(note)
	for capMm := mostCap; capMm >= leastCap; capMm -= 0.1 {
		half := (capMm + lineGap + noteCap) / 2
		if math.Hypot(s.wide()*capMm/2, half) > room || math.Hypot(note.Width/2, half) > room {
			continue
		}
		note.At = scene.Point{X: scene.Rounded(s.At.X), Y: scene.Rounded(s.At.Y + half)}
		return p.within(i, s.number(capMm, s.At.Y-half+capMm), note)
	}
	return nil
}

// wide is the width of the widest large word at a capital height of 1 mm.
func (s Spot) wide() float64 {
	return font.Width(cmp.Or(s.Widest, s.Large), scene.Bold, 1/font.CapHeight)
}

func (s Spot) number(capMm, baseline float64) scene.Text {
	return font.Set(scene.Text{
		At: scene.Point{X: s.At.X, Y: baseline}, Size: math.Floor(capMm/font.CapHeight*20) / 20,
		Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: s.Large, Tag: scene.Tag{Name: s.Name, Role: scene.Number},
	})
}

// within returns the words if they meet no seam and no other spot. Spots can
// overlap if the heads would overlap on the part.
func (p *Plate) within(i int, texts ...scene.Text) []scene.Text {
	for _, t := range texts {
		if p.seams.Cross(t.Box()) {
			return nil
		}
		for k, other := range p.spots {
			if k != i && other.Meets(t.Box()) {
				return nil
			}
		}
	}
	for _, t := range texts {
		p.texts = append(p.texts, t.Box())
	}
	return texts
}

type block struct {
	lines         []scene.Text
	width, height float64
}

func newBlock(s Spot, em float64) block {
	var b block
	add := func(content string, em float64, w scene.Weight, role scene.Role) {
		if content == "" {
			return
		}
		t := font.Set(scene.Text{Size: em, Weight: w, Anchor: scene.Middle, Ink: scene.Black, Content: content, Tag: scene.Tag{Name: s.Name, Role: role}})
		if b.height > 0 {
			b.height += lineGap
		}
		b.height += em * font.CapHeight
		b.width = math.Max(b.width, t.Width)
		b.lines = append(b.lines, t)
	}
	add(s.Large, besideCap/font.CapHeight, scene.Bold, scene.Number)
	add(s.Small, em, scene.Regular, scene.Furniture)
	add(s.Note, em, scene.Bold, scene.Furniture)
	return b
}

// at returns the lines with the middle of the block at c, on the given side of
// the spot, and their bounding box. The large word is nearest to the spot.
func (b block) at(c, side, spot scene.Point) (items []scene.Item, box scene.Box) {
	box = scene.NoBox
	y := c.Y - b.height/2
	for k := range b.lines {
		t := b.lines[k]
		if side.Y < 0 {
			t = b.lines[len(b.lines)-1-k]
		}
		y += t.Size * font.CapHeight
		x := c.X + side.X*(t.Width-b.width)/2
		if side.X == 0 {
			x = math.Max(c.X-(b.width-t.Width)/2, math.Min(c.X+(b.width-t.Width)/2, spot.X))
		}
		t.At = scene.Point{X: scene.Rounded(x), Y: scene.Rounded(y)}
		y += lineGap
		box = box.Union(t.Box())
		items = append(items, t)
	}
	return items, box
}

// sides are the directions for words beside a spot, best first: below, above,
// right, left, then the corners.
var sides = []scene.Point{{X: 0, Y: 1}, {X: 0, Y: -1}, {X: 1, Y: 0}, {X: -1, Y: 0}, {X: 1, Y: 1}, {X: -1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: -1}}

// beside sets the words outside the spot: first where they cross no line of the
// part, then where they meet no other word and no spot, then smaller.
func (p *Plate) beside(s Spot, own int) []scene.Item {
	if s.Large == "" && s.Small == "" && s.Note == "" {
		return nil
	}
	ems := []float64{wordEm, SmallEm}
	if p.reduced > 1 { // not enough space for the larger size
		ems = ems[1:]
	}
	for _, em := range ems {
		for _, strictly := range []bool{true, false} {
			for _, s := range s.ways() {
				if items, ok := p.setBeside(s, newBlock(s, em), own, strictly); ok {
					return items
				}
			}
		}
	}
	if s.Small != "" && s.Large+s.Note != "" { // some words are better than none
		p.Drawing.NoRoom = append(p.Drawing.NoRoom, s.Small)
		s.Small = ""
		return p.beside(s, own)
	}
	if s.Note != "" && s.Large != "" {
		p.Drawing.NoRoom = append(p.Drawing.NoRoom, s.Note)
		s.Note = ""
		return p.beside(s, own)
	}
	p.Drawing.NoRoom = append(p.Drawing.NoRoom, s.Large+s.Note+s.Small) // one of them is missing
	return nil
}

// ways are the spot as it is, and with its note on the line of the small word.
func (s Spot) ways() []Spot {
	if s.Note == "" || s.Small == "" {
		return []Spot{s}
	}
	flat := s
	flat.Small, flat.Note = s.Note+" "+s.Small, ""
	return []Spot{s, flat}
}

// setBeside sets a block of words at the first free place, or, if lines may be
// broken, at the one that breaks the least of them.
func (p *Plate) setBeside(s Spot, b block, own int, strictly bool) (items []scene.Item, ok bool) {
	edge, least := s.Edge.Path.Bounds(), math.Inf(1)
	var taken scene.Box
	for _, slide := range []float64{0, 0.35, -0.35} {
		for _, side := range sides {
			c := scene.Point{
				X: s.At.X + side.X*(edge.Width()/2+besideGap+b.width/2),
				Y: s.At.Y + side.Y*(edge.Height()/2+besideGap+b.height/2),
			}
			switch {
			case side.X == 0:
				c.X += slide * b.width
			case side.Y == 0:
				c.Y += slide * edge.Height()
			case slide == 0: // a corner is closer than the box around a spot
				c.X -= side.X * edge.Width() * 0.12
				c.Y -= side.Y * edge.Height() * 0.12
			}
			words, box := b.at(c, side, s.At)
			grown := box.Grown(0.3)
			if !p.free(grown, own, strictly) || p.seams.Part(box, edge) || !p.nearest(words, own) {
				continue
			}
			if broken := p.broken(words); broken < least-0.1 {
				least, items, taken = broken, words, grown
			}
		}
		if least == 0 {
			break // no place can be better
		}
	}
	if items == nil {
		return nil, false
	}
	p.texts = append(p.texts, taken)
	return p.cleared(items), true
}

// broken is the length of the lines that words would cover, in millimetres.
func (p *Plate) broken(words []scene.Item) float64 {
	length := 0.0
	for _, it := range words {
		t, ok := it.(scene.Text)
		if !ok {
			continue
		}
		box := t.Box().Grown(0.2)
		for _, l := range p.lines {
			if a, b, ok := box.Clipped(l.a, l.b); ok && box.Meets(l.box) {
				length += a.Distance(b)
			}
		}
	}
	return length
}

// cleared returns words with a white background behind those on a line, which
// breaks the line: a figure with a line through it can be misread.
func (p *Plate) cleared(words []scene.Item) []scene.Item {
	var behind []scene.Item
	for _, it := range words {
		t, ok := it.(scene.Text)
		if b := t.Box().Grown(0.2); ok && p.onLine(b) {
			behind = append(behind, scene.Shape{Path: scene.Rect(b.Left, b.Top, b.Width(), b.Height(), 0), Fill: scene.White})
		}
	}
	return append(behind, words...)
}

func (p *Plate) nearest(items []scene.Item, own int) bool {
	for _, it := range items {
		t, ok := it.(scene.Text)
		if !ok || t.Tag.Role != scene.Number {
			continue
		}
		box := t.Box()
		distance := scene.RunsToBox(p.edges[own], box) + 0.1
		for i := range p.edges {
			if i != own && p.spots[i].Grown(distance).Meets(box) && scene.RunsToBox(p.edges[i], box) < distance {
				return false
			}
		}
	}
	return true
}
