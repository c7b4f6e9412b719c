package diagram

import (
	"math"

	"drawdown/render/scene"
)

// space knows what is taken on the page, so that nothing is placed on it. It
// looks things up in a coarse grid, which keeps crowded parts fast.
type space struct {
	box   scene.Box
	discs []disc
	boxes []scene.Box
	lines []line
	cell  float64 // side of a cell, in millimetres
	cells map[[2]int][]entry
	seen  []uint32 // the last query that looked at an entry's thing, by entry id
	query uint32
}

type disc struct {
	at     scene.Point
	radius float64
	name   string
}

type line struct {
	from, to scene.Point
	edge     bool // of the part: a leader may cross it, type may not
}

type kind uint8

const (
	discKind kind = iota
	boxKind
	lineKind
)

type entry struct {
	kind  kind
	index int
	id    int
}

// newSpace makes a space for about so many things: the more, the finer its
// cells.
func newSpace(box scene.Box, things int) *space {
	cell := math.Sqrt(box.Width()*box.Height()/float64(max(1, things))) * 1.5
	return &space{box: box, cell: math.Max(1.5, math.Min(8, cell)), cells: map[[2]int][]entry{}}
}

func (p *space) takeDisc(at scene.Point, radius float64, name string) {
	p.discs = append(p.discs, disc{at, radius, name})
	p.file(scene.Box{Left: at.X, Top: at.Y, Right: at.X, Bottom: at.Y}.Grown(radius), discKind, len(p.discs)-1)
}

func (p *space) takeBox(b scene.Box) {
	p.boxes = append(p.boxes, b)
	p.file(b, boxKind, len(p.boxes)-1)
}

func (p *space) takeLine(from, to scene.Point) { p.fileLine(line{from: from, to: to}) }

// takeEdge keeps type off the outlines of a path.
func (p *space) takeEdge(path scene.Path) {
	for _, run := range path.Flatten() {
		for k := 1; k < len(run); k++ {
			p.fileLine(line{run[k-1], run[k], true})
		}
	}
}

func (p *space) fileLine(l line) {
	from, to := l.from, l.to
	p.lines = append(p.lines, l)
	p.file(lineBounds(from, to), lineKind, len(p.lines)-1)
}

func lineBounds(from, to scene.Point) scene.Box {
	return scene.Box{
		Left: math.Min(from.X, to.X), Top: math.Min(from.Y, to.Y),
		Right: math.Max(from.X, to.X), Bottom: math.Max(from.Y, to.Y),
	}
}

func (p *space) file(b scene.Box, k kind, index int) {
	e := entry{k, index, len(p.seen)}
	p.seen = append(p.seen, 0)
	p.cellsOf(b, func(cell [2]int) (goOn bool) {
		p.cells[cell] = append(p.cells[cell], e)
		return true
	})
}

// cellsOf visits the cells that a box touches until f has had enough.
func (p *space) cellsOf(b scene.Box, f func(cell [2]int) (goOn bool)) {
	for x := int(math.Floor(b.Left / p.cell)); x <= int(math.Floor(b.Right/p.cell)); x++ {
		for y := int(math.Floor(b.Top / p.cell)); y <= int(math.Floor(b.Bottom/p.cell)); y++ {
			if !f([2]int{x, y}) {
				return
			}
		}
	}
}

// any says whether something near the box answers to the test.
func (p *space) any(b scene.Box, test func(entry) bool) bool {
	p.query++
	found := false
	p.cellsOf(b, func(cell [2]int) (goOn bool) {
		for _, e := range p.cells[cell] {
			if p.seen[e.id] == p.query {
				continue
			}
			p.seen[e.id] = p.query
			if found = test(e); found {
				return false
			}
		}
		return true
	})
	return found
}

// freeBox says whether a text box with some air round it meets nothing; own
// is the mark that it may touch.
func (p *space) freeBox(b scene.Box, own string, air float64) bool {
	if !p.box.Holds(b) {
		return false
	}
	b = b.Grown(air)
	return !p.any(b, func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			keep := d.radius
			if own != "" {
				keep += 2 * air // a number lies nearer to its own mark than to any other
			}
			return (d.name != own || own == "") && distanceToBox(d.at, b) < keep
		case boxKind:
			return p.boxes[e.index].Meets(b)
		}
		return b.Cut(p.lines[e.index].from, p.lines[e.index].to)
	})
}

// freeLine says whether a leader line meets no text, no other line and no
// mark but its own.
func (p *space) freeLine(from, to scene.Point, own string) bool {
	return !p.any(lineBounds(from, to).Grown(0.5), func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return d.name != own && distanceToLine(d.at, from, to) < d.radius+0.3
		case boxKind:
			return p.boxes[e.index].Grown(0.3).Cut(from, to)
		}
		l := p.lines[e.index]
		return !l.edge && crossing(from, to, l.from, l.to)
	})
}

func distanceToBox(p scene.Point, b scene.Box) float64 {
	dx := math.Max(0, math.Max(b.Left-p.X, p.X-b.Right))
	dy := math.Max(0, math.Max(b.Top-p.Y, p.Y-b.Bottom))
	return math.Hypot(dx, dy)
}

func distanceToLine(p, a, b scene.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := dx*dx + dy*dy
	t := 0.0
	if length > 0 {
		t = math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length))
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

// crossing says whether two straight lines cross.
func crossing(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
