// Package truesize draws a part in millimetres on paper, at true size or
// reduced, for sheets on which a part or its fasteners are placed: its lines, a
// spot for each fastener, and words where they fit. It prints them over as many
// sheets as needed. It may import geometry, diagram, tile, scene, font, words
// and what sheets share; it knows no plan.
package truesize

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/words"
)

// Plate is a drawing under construction. Spots must be known before words are
// set.
type Plate struct {
	Drawing tile.Contents

	joint   geometry.Joint
	reduced float64
	seams   tile.Seams
	words   *words.Catalogue
	lines   []segment
	groups  []scene.Point     // middles of the groups
	spots   []scene.Box       // the space of each
	edges   [][][]scene.Point // their lines
	texts   []scene.Box
}

type segment struct {
	a, b scene.Point
	box  scene.Box
}

// New draws the lines of the part: edge, bores, dowels. reduced is the number
// of millimetres of the part per millimetre on paper. No word is set across a
// seam.
func New(j geometry.Joint, reduced float64, w *words.Catalogue, seams tile.Seams) *Plate {
	p := &Plate{joint: j, reduced: reduced, words: w, seams: seams}
	p.edge()
	for _, b := range j.Bores {
		p.bore(b)
	}
	for _, d := range j.Dowels {
		p.dowel(d)
	}
	return p
}

// At is the position on paper of a place on the part.
func (p *Plate) At(q geometry.Point) scene.Point {
	return scene.Point{X: q.X / p.reduced, Y: -q.Y / p.reduced}
}

// Length is the length on paper of a length on the part.
func (p *Plate) Length(mm float64) float64 { return mm / p.reduced }

func (p *Plate) line(path scene.Path, ink scene.Ink, width, dash float64) {
	p.Drawing.Lines = append(p.Drawing.Lines, scene.Shape{Path: path, Stroke: ink, Width: width, Dash: dash})
	for _, run := range path.Flatten() {
		for k := 1; k < len(run); k++ {
			a, b := run[k-1], run[k]
			p.lines = append(p.lines, segment{a, b, scene.BoxOf(a, b).Grown(0.01)})
		}
	}
}

// edge draws the outline, or without one a dashed line around the fasteners.
func (p *Plate) edge() {
	for _, path := range p.joint.Outline {
		p.line(scene.Traced(path, p.At), scene.Black, 0.3, 0)
	}
	if len(p.joint.Outline) > 0 {
		return
	}
	const distance = 20.0 // enough for any head
	if rim, round := geometry.RoundPart(p.joint.Points()); round {
		c := p.At(rim.Centre)
		p.line(scene.Circle(c.X, c.Y, p.Length(rim.Radius+distance)), scene.Grey, 0.2, 2)
		return
	}
	p.line(p.around(geometry.Hull(p.joint.Points()), distance), scene.Grey, 0.2, 2)
}

func (p *Plate) around(hull []geometry.Point, distance float64) scene.Path {
	var points []geometry.Point
	const step = math.Pi / 24
	n := len(hull)
	for k, here := range hull {
		before, next := hull[(k+n-1)%n], hull[(k+1)%n]
		from, to := 0.0, 2*math.Pi
		if n > 1 {
			in, out := here.Sub(before), next.Sub(here)
			from = math.Atan2(in.Y, in.X) - math.Pi/2
			to = math.Atan2(out.Y, out.X) - math.Pi/2
			for to < from {
				to += 2 * math.Pi
			}
		}
		steps := max(1, int(math.Ceil((to-from)/step)))
		for i := range steps + 1 {
			s, c := math.Sincos(from + (to-from)*float64(i)/float64(steps))
			points = append(points, geometry.Point{X: here.X + distance*c, Y: here.Y + distance*s})
		}
	}
	return scene.Traced(points, p.At)
}

func (p *Plate) bore(b geometry.Bore) {
	c, r := p.At(b.Centre), p.Length(b.Diameter/2)
	p.line(scene.Circle(c.X, c.Y, r), scene.Grey, 0.25, 0)
	tick := math.Min(4, r/3)
	var lines scene.Path
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		lines.Stroke(c.X+d[0]*(r-tick), c.Y+d[1]*(r-tick), c.X+d[0]*(r+tick/2), c.Y+d[1]*(r+tick/2))
	}
	p.line(lines, scene.Grey, 0.2, 0)
}

func (p *Plate) dowel(d geometry.Dowel) {
	c, r := p.At(d.Centre), p.Length(d.Diameter/2)
	p.line(append(scene.Circle(c.X, c.Y, r), scene.Cross(c.X, c.Y, r+1.5)...), scene.Grey, 0.25, 0)
}

// Print lays out a drawing over sheets. legend is called with the number of
// words that did not fit.
func Print(draw func(tile.Seams) *Plate, ask tile.Sheets, legend func(noRoom int) []string) (pages []scene.Page, notes []string, err error) {
	ask.Legend = legend(0)
	again := func(s tile.Seams) tile.Contents { return draw(s).Drawing }
	pages, notes, d, err := tile.Join(again, ask)
	if n := len(d.NoRoom); n > 0 {
		ask.Legend = legend(n)
		pages, notes, d, err = tile.Join(again, ask)
	}
	if note := ask.Missing.Note; ask.Reduced > 1 {
		note(d.Nameless, len(d.Pieces))
	} else {
		ask.Missing.NoteFixed(d.Nameless, len(d.Pieces))
	}
	return pages, append(Notes(d.NoRoom, ask.Words), notes...), err
}

// Notes say which words did not fit.
func Notes(noRoom []string, c *words.Catalogue) []string {
	if len(noRoom) == 0 {
		return nil
	}
	return []string{c.Say(finding.Warned(sheet.TheseNoRoom, finding.Values{"left": len(noRoom), "words": noRoom}))}
}
