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
	grid  grid
	cells [][]entry
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
	cell := math.Sqrt(box.Width()*box.Height()/float64(max(1, things))) * 0.8
	p := &space{box: box, grid: newGrid(box, math.Max(2, math.Min(8, cell)))}
	p.cells = make([][]entry, p.grid.size())
	return p
}

func (p *space) takeDisc(at scene.Point, radius float64, name string) {
	p.discs = append(p.discs, disc{at, radius, name})
	p.grid.inBox(boxAbout(at, radius), p.filer(discKind, len(p.discs)-1))
}

func (p *space) takeBox(b scene.Box) {
	p.boxes = append(p.boxes, b)
	p.grid.inBox(b, p.filer(boxKind, len(p.boxes)-1))
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
	p.lines = append(p.lines, l)
	p.grid.onLine(l.from, l.to, 0, p.filer(lineKind, len(p.lines)-1))
}

func boxAbout(at scene.Point, radius float64) scene.Box {
	return scene.Box{Left: at.X - radius, Top: at.Y - radius, Right: at.X + radius, Bottom: at.Y + radius}
}

// filer enters a thing into the cells that it visits.
func (p *space) filer(k kind, index int) func(cell int) bool {
	e := entry{k, index, len(p.seen)}
	p.seen = append(p.seen, 0)
	return func(cell int) bool {
		p.cells[cell] = append(p.cells[cell], e)
		return true
	}
}

// clear makes a visitor of cells that stops at the first thing which the test
// finds in the way. Nothing is tested twice in one query.
func (p *space) clear(hit func(entry) bool) func(cell int) bool {
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

// freeBox says whether a text box with some air round it meets nothing.
func (p *space) freeBox(b scene.Box, air float64) bool {
	return p.freeOf(b, air, func(l line) bool { return touches(b.Grown(air), l.from, l.to) })
}

// freeOfMarks says the same of what may lie under a line, such as a ring.
func (p *space) freeOfMarks(b scene.Box, air float64) bool {
	return p.freeOf(b, air, func(line) bool { return false })
}

func (p *space) freeOf(b scene.Box, air float64, crosses func(line) bool) bool {
	if !p.box.Holds(b) {
		return false
	}
	b = b.Grown(air)
	return p.grid.inBox(b, p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return squareToBox(d.at, b) < d.radius*d.radius
		case boxKind:
			return p.boxes[e.index].Meets(b)
		}
		return crosses(p.lines[e.index])
	}))
}

// freeNumber is freeBox for the number of a mark: it may stand nearer to its
// own mark than the air, but must keep a distance from every other.
func (p *space) freeNumber(b scene.Box, own string, air, fromOthers float64) bool {
	if !p.box.Holds(b) {
		return false
	}
	return p.grid.inBox(b.Grown(math.Max(air, fromOthers)), p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return d.name != own && squareToBox(d.at, b) < (d.radius+fromOthers)*(d.radius+fromOthers)
		case boxKind:
			return p.boxes[e.index].Meets(b.Grown(air))
		}
		return touches(b.Grown(air), p.lines[e.index].from, p.lines[e.index].to)
	}))
}

// freeLine says whether a leader line keeps off every text, every other leader
// or arrow, and every mark but its own.
func (p *space) freeLine(from, to scene.Point, own string, air float64) bool {
	return p.grid.onLine(from, to, air, p.clear(func(e entry) bool {
		switch e.kind {
		case discKind:
			d := p.discs[e.index]
			return d.name != own && squareToLine(d.at, from, to) < (d.radius+air)*(d.radius+air)
		case boxKind:
			return touches(p.boxes[e.index].Grown(air), from, to)
		}
		l := p.lines[e.index]
		return !l.edge && linesNear(from, to, l.from, l.to, air)
	}))
}

// squareToBox is the square of the distance from a place to a box: a search
// compares very many of them.
func squareToBox(p scene.Point, b scene.Box) float64 {
	dx := max(0, b.Left-p.X, p.X-b.Right)
	dy := max(0, b.Top-p.Y, p.Y-b.Bottom)
	return dx*dx + dy*dy
}

func distanceToLine(p, a, b scene.Point) float64 { return math.Sqrt(squareToLine(p, a, b)) }

func squareToLine(p, a, b scene.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := dx*dx + dy*dy
	t := 0.0
	if length > 0 {
		t = max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length))
	}
	x, y := p.X-a.X-t*dx, p.Y-a.Y-t*dy
	return x*x + y*y
}

// touches says whether a straight line touches a box. It turns most of them
// down at once.
func touches(b scene.Box, from, to scene.Point) bool {
	if max(from.X, to.X) < b.Left || min(from.X, to.X) > b.Right || max(from.Y, to.Y) < b.Top || min(from.Y, to.Y) > b.Bottom {
		return false
	}
	return b.Cut(from, to)
}

// crossing says whether two straight lines cross.
func crossing(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// linesNear says whether two straight lines come nearer than some air.
func linesNear(a, b, c, d scene.Point, air float64) bool {
	if max(a.X, b.X)+air < min(c.X, d.X) || max(c.X, d.X)+air < min(a.X, b.X) ||
		max(a.Y, b.Y)+air < min(c.Y, d.Y) || max(c.Y, d.Y)+air < min(a.Y, b.Y) {
		return false
	}
	near := air * air
	return crossing(a, b, c, d) ||
		squareToLine(a, c, d) < near || squareToLine(b, c, d) < near ||
		squareToLine(c, a, b) < near || squareToLine(d, a, b) < near
}
