// Package space records which areas of a page are taken, and checks whether a
// text or a line fits. It may import scene only.
package space

import (
	"math"

	"drawdown/render/scene"
)

// Space records what is taken on the page, so that nothing is placed on top of
// it. A coarse grid keeps look-ups fast on crowded parts.
type Space struct {
	box   scene.Box
	discs []disc
	boxes []scene.Box
	lines []line
	grid  Cells
	cells [][]entry
	seen  []uint32 // the last query that looked at each entry, by entry id
	query uint32
}

type disc struct {
	at     scene.Point
	radius float64
	name   string
}

type line struct {
	from, to scene.Point
	edge     bool // of the part: a leader may cross it, text may not
}

type thing uint8

const (
	discKind thing = iota
	boxKind
	lineKind
)

type entry struct {
	kind  thing
	index int
	id    int
}

// New makes a space for about that many things: the more, the finer its cells.
func New(box scene.Box, things int) *Space {
	cell := math.Sqrt(box.Width()*box.Height()/float64(max(1, things))) * 0.8
	p := &Space{box: box, grid: NewCells(box, math.Max(2, math.Min(8, cell)))}
	p.cells = make([][]entry, p.grid.Count())
	return p
}

// TakeDisc takes the area of a mark.
func (p *Space) TakeDisc(at scene.Point, radius float64, name string) {
	p.discs = append(p.discs, disc{at, radius, name})
	p.grid.InBox(scene.BoxAbout(at, 2*radius, 2*radius), p.filer(discKind, len(p.discs)-1))
}

// TakeBox takes the area of a text or another solid thing.
func (p *Space) TakeBox(b scene.Box) {
	p.boxes = append(p.boxes, b)
	p.grid.InBox(b, p.filer(boxKind, len(p.boxes)-1))
}

// TakeLine takes a leader or an arrow.
func (p *Space) TakeLine(from, to scene.Point) { p.fileLine(line{from: from, to: to}) }

// TakeEdge keeps text off the outlines of a path.
func (p *Space) TakeEdge(path scene.Path) {
	for _, run := range path.Flatten() {
		for k := 1; k < len(run); k++ {
			p.fileLine(line{run[k-1], run[k], true})
		}
	}
}

func (p *Space) fileLine(l line) {
	p.lines = append(p.lines, l)
	p.grid.OnLine(l.from, l.to, 0, p.filer(lineKind, len(p.lines)-1))
}

func (p *Space) filer(k thing, index int) func(cell int) bool {
	e := entry{k, index, len(p.seen)}
	p.seen = append(p.seen, 0)
	return func(cell int) bool {
		p.cells[cell] = append(p.cells[cell], e)
		return true
	}
}

// clear returns a cell visitor that stops at the first thing in the way. No
// thing is tested twice in one query.
func (p *Space) clear(hit func(entry) bool) func(cell int) bool {
	p.query++
	return func(cell int) bool {
		for _, e := range p.cells[cell] {
			if p.seen[e.id] == p.query {
				continue
			}
			p.seen[e.id] = p.query
			if hit(e) {
				return false
			}
		}
		return true
	}
}

// ClearOfBoxes reports whether a polyline keeps a clearance from every text and
// arrowhead.
func (p *Space) ClearOfBoxes(run []scene.Point, air float64) bool {
	for _, b := range p.boxes {
		for k := 1; k < len(run); k++ {
			if b.Grown(air).Cut(run[k-1], run[k]) {
				return false
			}
		}
	}
	return true
}

// FreeBox reports whether a text box with a clearance around it is free.
func (p *Space) FreeBox(b scene.Box, air float64) bool {
	return p.freeOf(b, air, func(l line) bool { return b.Grown(air).Cut(l.from, l.to) })
}

// FreeOfMarks does the same for a thing that may be under a line, such as a
// ring.
func (p *Space) FreeOfMarks(b scene.Box, air float64) bool {
	return p.freeOf(b, air, func(line) bool { return false })
}

func (p *Space) freeOf(b scene.Box, air float64, crosses func(line) bool) bool {
	if !p.box.Holds(b) {
		return false
	}
	b = b.Grown(air)
	return p.grid.InBox(b, p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return scene.SquareToBox(d.at, b) < d.radius*d.radius
		case boxKind:
			return p.boxes[e.index].Meets(b)
		}
		return crosses(p.lines[e.index])
	}))
}

// FreeNumber is FreeBox for the number of a mark. The number may be closer to
// its own mark than air, but must keep fromOthers from every other mark.
func (p *Space) FreeNumber(b scene.Box, own string, air, fromOthers float64) bool {
	if !p.box.Holds(b) {
		return false
	}
	return p.grid.InBox(b.Grown(math.Max(air, fromOthers)), p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return d.name != own && scene.SquareToBox(d.at, b) < (d.radius+fromOthers)*(d.radius+fromOthers)
		case boxKind:
			return p.boxes[e.index].Meets(b.Grown(air))
		}
		return b.Grown(air).Cut(p.lines[e.index].from, p.lines[e.index].to)
	}))
}

// FreeLine reports whether a leader line clears every text, every other leader
// or arrow, and every mark but its own.
func (p *Space) FreeLine(from, to scene.Point, own string, air float64) bool {
	return p.grid.OnLine(from, to, air, p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return d.name != own && scene.SquareToLine(d.at, from, to) < (d.radius+air)*(d.radius+air)
		case boxKind:
			return p.boxes[e.index].Grown(air).Cut(from, to)
		}
		l := p.lines[e.index]
		return !l.edge && scene.LinesNear(from, to, l.from, l.to, air)
	}))
}
