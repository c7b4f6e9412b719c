package truesize

import (
	"slices"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet/tile"
)

// Group is a set of fasteners that hold one thing, such as a bearing cap, which
// goes back to its place the same way round.
type Group struct {
	Name    string
	Members []geometry.Point
	Reach   float64 // distance of the line around them, in millimetres of the part
}

// Outline draws a line around a group. It must be called before the spots, so
// that words keep clear of the line.
func (p *Plate) Outline(g Group) {
	if len(g.Members) == 0 {
		return
	}
	path := p.around(geometry.Hull(g.Members), g.Reach)
	p.line(path, scene.Black, 0.2, 0)
	p.Drawing.Lines[len(p.Drawing.Lines)-1].Tag = scene.Tag{Name: g.Name, Role: scene.Spot}
	p.Drawing.Beside = append(p.Drawing.Beside, path.Bounds())
	p.groups = append(p.groups, p.At(geometry.Enclose(g.Members).Centre))
}

// Name sets the name of a group inside the line around it, with an arrow to the
// front at true size, for placing parts on it. If that does not fit, it tries
// without the arrow, which could point at the neighbour, then smaller, upward,
// or close outside the line. It must be called after the spots.
func (p *Plate) Name(g Group) {
	if g.Name == "" || len(g.Members) == 0 {
		return
	}
	path := p.around(geometry.Hull(g.Members), g.Reach)
	outline := path.Flatten()[0]
	c := p.At(geometry.Enclose(g.Members).Centre)
	within := func(b scene.Box) bool {
		corners := b.Grown(groupAir).Corners()
		return !slices.ContainsFunc(corners[:], func(q scene.Point) bool { return !scene.Inside(q, outline) })
	}
	beside := func(b scene.Box) bool {
		return b.Grown(leastBeside).Meets(path.Bounds()) && p.nearestGroup(b.Centre(), c)
	}
	inside := p.groupWords(g.Name, c)
	for _, strictly := range []bool{true, false} {
		for _, word := range inside {
			if p.set(word, alongGroup(g, p), within, strictly) {
				return
			}
		}
		for _, word := range inside[len(inside)-2:] {
			if p.set(word, besideBox(path.Bounds(), c, word.Bounds()), beside, strictly) {
				return
			}
		}
	}
	p.Drawing.NoRoom = append(p.Drawing.NoRoom, g.Name)
}

const (
	groupAir    = 0.4 // between a name and the line around its group
	leastBeside = 2.0 // allowed distance outside that line
)

// groupWords are the ways to set a group's name around a point, best first. The
// last two are the small ones.
func (p *Plate) groupWords(name string, c scene.Point) []tile.Piece {
	var all []tile.Piece
	add := func(em float64, upward, arrow bool) {
		all = append(all, p.groupWord(name, c, em, upward, arrow))
	}
	if p.reduced == 1 {
		add(wordEm, false, true)
		add(SmallEm, false, true)
	}
	add(wordEm, false, false)
	add(wordEm, true, false)
	add(SmallEm, false, false)
	add(SmallEm, true, false)
	return all
}

func (p *Plate) groupWord(name string, c scene.Point, em float64, upward, arrow bool) tile.Piece {
	const length, half, air = 3.2, 1.6, 1.2
	high := em * font.CapHeight
	t := scene.Text{At: scene.Point{X: c.X, Y: c.Y + high/2}, Size: em, Anchor: scene.Middle, Ink: scene.Black, Upward: upward, Content: name, Tag: scene.Tag{Name: name, Role: scene.Label}}
	if upward {
		t.At = scene.Point{X: c.X + high/2, Y: c.Y}
	}
	word := font.Set(t)
	piece := tile.Piece{Name: name, Items: []scene.Item{word}}
	if way, known := diagram.FrontWays[p.joint.Front]; known && arrow {
		// Beside the word; one that points right comes after it.
		base := scene.Point{X: c.X - word.Width/2 - air, Y: c.Y}
		switch {
		case way.X > 0:
			base.X = c.X + word.Width/2 + air
		case way.Y != 0:
			base = scene.Point{X: base.X - half, Y: c.Y - way.Y*length/2}
		}
		tip := scene.Point{X: base.X + way.X*length, Y: base.Y + way.Y*length}
		piece.Items = append(piece.Items, diagram.Arrowhead(base, tip, half, scene.Black))
	}
	// Centre word and arrow together.
	return piece.Moved(scene.Point{X: scene.Rounded(c.X - piece.Bounds().Centre().X)})
}

// alongGroup are steps from the middle of a group to positions for its name
// inside: along the line between its outermost members, the shortest first.
func alongGroup(g Group, p *Plate) []scene.Point {
	a, b := p.At(g.Members[0]), p.At(g.Members[len(g.Members)-1])
	steps := []scene.Point{{}}
	for k := 1; k <= 20; k++ {
		part := float64(k) / 40
		for _, side := range []float64{part, -part} {
			steps = append(steps, scene.Point{X: (b.X - a.X) * side, Y: (b.Y - a.Y) * side})
		}
	}
	return steps
}

// besideBox are steps from the middle c to just outside a box on each side.
func besideBox(b scene.Box, c scene.Point, word scene.Box) []scene.Point {
	var steps []scene.Point
	for _, off := range []float64{0.8, 1.6} {
		w, h := b.Width()/2+word.Width()/2+off, b.Height()/2+word.Height()/2+off
		for k := range 9 {
			for _, slide := range []float64{float64(k) / 16, -float64(k) / 16} {
				x, y := slide*b.Width(), slide*b.Height()
				steps = append(steps, scene.Point{X: x, Y: -h}, scene.Point{X: x, Y: h}, scene.Point{X: w, Y: y}, scene.Point{X: -w, Y: y})
			}
		}
	}
	return steps
}

// nearestGroup reports whether the group around c is clearly the nearest, so
// that a name is not taken for the neighbour's.
func (p *Plate) nearestGroup(name, c scene.Point) bool {
	const nearer = 1.3
	own := name.Distance(c)
	return !slices.ContainsFunc(p.groups, func(other scene.Point) bool {
		return other != c && name.Distance(other) < nearer*own
	})
}
