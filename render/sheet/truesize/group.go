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
	Reach   float64 // of the line round them, in millimetres of the part
}

// Outline draws a line round a group. It comes before the spots, so that words
// keep clear of it.
func (p *Plate) Outline(g Group) {
	if len(g.Members) > 0 {
		path := p.around(geometry.Hull(g.Members), g.Reach)
		p.line(path, scene.Black, 0.2, 0)
		p.Drawing.Beside = append(p.Drawing.Beside, path.Bounds())
		p.groups = append(p.groups, p.At(geometry.Enclose(g.Members).Centre))
	}
}

// Name sets the name of a group in its middle or nearby, with an arrow to the
// front. It comes after the spots.
func (p *Plate) Name(g Group) {
	if g.Name == "" || len(g.Members) == 0 {
		return
	}
	const length, half, air = 3.2, 1.6, 1.2
	const high = wordEm * font.CapHeight
	c := p.At(geometry.Enclose(g.Members).Centre)
	word := font.Set(scene.Text{At: scene.Point{X: c.X, Y: c.Y + high/2}, Size: wordEm, Anchor: scene.Middle, Ink: scene.Black, Content: g.Name})
	piece := tile.Piece{Name: g.Name, Items: []scene.Item{word}}
	if way, known := diagram.FrontWays[p.joint.Front]; known {
		// Beside the word; one that points right stands behind it.
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
	// Word and arrow together stand in the middle.
	piece = piece.Moved(scene.Point{X: scene.Rounded(c.X - piece.Bounds().Centre().X)})
	p.place(piece, func(there scene.Box) bool { return p.nearestGroup(there.Centre(), c) })
}

// nearestGroup says whether of all groups the one round c is clearly the nearest,
// so that a name is not taken for the neighbour's.
func (p *Plate) nearestGroup(name, c scene.Point) bool {
	const nearer = 1.3
	own := name.Distance(c)
	return !slices.ContainsFunc(p.groups, func(other scene.Point) bool {
		return other != c && name.Distance(other) < nearer*own
	})
}
