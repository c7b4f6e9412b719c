package card

import (
	"fmt"
	"slices"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

const (
	tickColumn = 6.8 // least width of a fastener's column
	tickSide   = 4.0 // of the box
	stripGap   = 3.0
	gridHead   = 7.0 // the height of the grid's heading
	usualRow   = 7.0 // the height of a row
	closeRow   = 6.0 // of rows with less white
)

// strip is one strip of the tick grid: some fasteners in working order, and the
// stages with a box for each.
type strip struct {
	fasteners []int
	rows      []*plan.Stage
	columns   int     // columns of the strip; some may be empty
	second    bool    // a row shows the second numbers
	row       float64 // height of a row
}

func (b strip) height() float64 {
	rows := 1 + len(b.rows)
	if b.second {
		rows++
	}
	return b.row * float64(rows)
}

// tickGrid is the grid of boxes to tick in a column of the page.
type tickGrid struct {
	in     span
	label  float64 // width of the column that names the stages
	strips []strip
}

// tickGrid divides the grid into strips that fit the width. Stages in the order
// of the card share strips. A stage with its own order has its own strips, so
// that all boxes are in working order.
func (c *card) tickGrid(in span, from, to int) tickGrid {
	g := tickGrid{in: in, label: c.labelWidth(in)}
	stages := c.side.Stages[from:to]
	for end := 0; end < len(stages); {
		begin := end
		for end < len(stages) && c.inCardOrder(&stages[end]) {
			end++
		}
		fasteners := c.covered(stages[begin:end])
		if end == begin {
			fasteners = stages[begin].Fasteners
			end++
		}
		g.strips = append(g.strips, c.strips(g, fasteners, stages[begin:end])...)
	}
	return g
}

// close is the grid with less white space.
func (g tickGrid) close() tickGrid {
	g.strips = slices.Clone(g.strips)
	for k := range g.strips {
		g.strips[k].row = closeRow
	}
	return g
}

func (c *card) inCardOrder(s *plan.Stage) bool {
	return slices.IsSortedFunc(s.Fasteners, func(a, b int) int { return c.numbers[a] - c.numbers[b] })
}

func (c *card) covered(stages []plan.Stage) []int {
	return slices.DeleteFunc(slices.Clone(c.side.Order), func(i int) bool {
		return !slices.ContainsFunc(stages, func(s plan.Stage) bool { return slices.Contains(s.Fasteners, i) })
	})
}

func (c *card) strips(g tickGrid, fasteners []int, stages []plan.Stage) []strip {
	if len(fasteners) == 0 {
		return nil
	}
	widest := font.Width(strconv.Itoa(slices.Max(c.called)), scene.Bold, c.paper.HeadEm)
	most := max(1, int((g.in.width-g.label)/max(tickColumn, widest+1.6)))
	count := (len(fasteners) + most - 1) / most
	columns := (len(fasteners) + count - 1) / count
	row := usualRow
	if c.paper.Low() { // so that two strips fit
		row = closeRow
	}
	var strips []strip
	for part := range slices.Chunk(fasteners, columns) {
		b := strip{fasteners: part, columns: columns, second: c.crowded && c.second != nil, row: row}
		for i := range stages {
			if slices.ContainsFunc(part, func(f int) bool { return slices.Contains(stages[i].Fasteners, f) }) {
				b.rows = append(b.rows, &stages[i])
			}
		}
		strips = append(strips, b)
	}
	return strips
}

// labelWidth is the width of the column that names the stages. In a narrow grid
// it is no wider than its words.
func (c *card) labelWidth(in span) float64 {
	usual := 9 * c.paper.TextEm
	if in.width >= 150 {
		return usual
	}
	need := font.Width(c.words.Card.Order, scene.Regular, c.paper.TextEm) + 3
	if c.crowded && c.second != nil {
		need = max(need, font.Width(c.smallMeans(), scene.Regular, c.paper.TextEm)+3)
	}
	for i := range c.side.Stages {
		need = max(need, font.Width(c.shortFigure(&c.side.Stages[i]), scene.Regular, c.paper.TextEm)+7.5)
	}
	return min(need+0.1, usual)
}

func (c *card) drawStrip(p *sheet.Pen, g tickGrid, b strip, y float64) {
	left, from := g.in.left, g.in.left+g.label
	width := (g.in.width - g.label) / float64(b.columns)
	p.Panel(left, y, g.label+width*float64(len(b.fasteners)), b.row, 0, scene.Black, 0)
	p.Write(left+2, y+b.row/2+1.2, p.Paper.TextEm, scene.Regular, scene.Start, scene.White, c.words.Card.Order)
	for k, i := range b.fasteners {
		p.Write(from+width*(float64(k)+0.5), y+b.row/2+1.5, p.Paper.HeadEm, scene.Bold, scene.Middle, scene.White, strconv.Itoa(c.called[i]))
	}
	y += b.row
	if b.second {
		c.drawSecond(p, g, b, y, width)
		y += b.row
	}
	for _, s := range b.rows {
		c.drawTickRow(p, g, b, s, y, width)
		y += b.row
	}
}

// drawSecond draws the second number of each fastener, if the drawing of the
// part has no space for it.
func (c *card) drawSecond(p *sheet.Pen, g tickGrid, b strip, y, width float64) {
	left := g.in.left
	p.Panel(left, y, g.label, b.row, 0, scene.White, 0.25)
	p.Text(left+2, y+b.row/2+1.2, font.Fit(c.smallMeans(), scene.Regular, p.Paper.TextEm, g.label-3))
	for k, i := range b.fasteners {
		x := left + g.label + width*float64(k)
		p.Panel(x, y, width, b.row, 0, scene.White, 0.25)
		p.Write(x+width/2, y+b.row/2+1.2, p.Paper.TextEm, scene.Regular, scene.Middle, scene.Black, c.second[i])
	}
}

func (c *card) drawTickRow(p *sheet.Pen, g tickGrid, b strip, s *plan.Stage, y, width float64) {
	left := g.in.left
	p.Panel(left, y, g.label, b.row, 0, scene.White, 0.25)
	p.Write(left+2, y+b.row/2+1.2, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, strconv.Itoa(s.Number))
	p.Text(left+6.5, y+b.row/2+1.2, font.Fit(c.shortFigure(s), scene.Regular, p.Paper.TextEm, g.label-7.5))
	for k, i := range b.fasteners {
		x := left + g.label + width*float64(k)
		if !slices.Contains(s.Fasteners, i) {
			p.Panel(x, y, width, b.row, 0, scene.Shade, 0.25)
			continue
		}
		p.Panel(x, y, width, b.row, 0, scene.White, 0.25)
		p.TickBox(x+(width-tickSide)/2, y+(b.row-tickSide)/2, tickSide)
	}
}

func (c *card) shortFigure(s *plan.Stage) string {
	if s.Do == plan.Tighten {
		return c.figureWords(s) + " " + s.Torque.Unit.String()
	}
	return c.figureWords(s)
}

func (g tickGrid) height() float64 {
	if len(g.strips) == 0 {
		return 0
	}
	h := gridHead
	for _, b := range g.strips {
		h += b.height() + stripGap
	}
	return h
}

// parted divides a strip that is higher than a page: the stages that fit, and
// the rest.
func (b strip) parted(height float64) []strip {
	head := b
	head.rows = nil
	n := max(1, int((height-head.height())/b.row))
	if n >= len(b.rows) {
		return []strip{b}
	}
	head.rows, b.rows = b.rows[:n], b.rows[n:]
	return []strip{head, b}
}

func fitting(strips []strip, height float64) int {
	n := 0
	for n < len(strips) && height >= strips[n].height() {
		height -= strips[n].height() + stripGap
		n++
	}
	return n
}

func (c *card) drawGrid(p *sheet.Pen, g tickGrid, y float64) {
	c.drawGridHead(p, g.in, y+4)
	y += gridHead
	for _, b := range g.strips {
		c.drawStrip(p, g, b, y)
		y += b.height() + stripGap
	}
}

// drawGridHead draws the heading over the boxes. If the order follows the cast
// numbers, it says so, with an arrow along the list.
func (c *card) drawGridHead(p *sheet.Pen, in span, y float64) {
	head, along := c.words.Card.TickAsYouGo, c.cast.Along()
	if along == "" || !c.allInCardOrder() {
		p.Head(in.left, y, head)
		return
	}
	if both := fmt.Sprintf(c.words.Sheet.Named, head, along); font.Width(both, scene.Bold, p.Paper.HeadEm) <= in.width {
		head = both
	} else {
		head = along // boxes to tick need no explanation
	}
	p.Head(in.left, y, head)
	from, middle := in.left+font.Width(head, scene.Bold, p.Paper.HeadEm)+3, y-p.Paper.HeadEm*font.CapHeight/2
	if to := in.right() - arrowHead; to-from >= leastArrow {
		p.Rule(from, middle, to, middle, 0.5)
		p.Add(diagram.Arrowhead(scene.Point{X: to, Y: middle}, scene.Point{X: in.right(), Y: middle}, arrowHead/2, scene.Black))
	}
}

// Arrow along the list of ticks.
const (
	arrowHead  = 3.2
	leastArrow = 8.0
)

func (c *card) allInCardOrder() bool {
	return !slices.ContainsFunc(c.side.Stages, func(s plan.Stage) bool { return !c.inCardOrder(&s) })
}
