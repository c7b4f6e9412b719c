package card

import (
	"slices"
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

const (
	tickLabel  = 27.0 // width of the column that names the stage
	tickColumn = 6.8  // least width of a fastener's column
	tickRow    = 7.0
	tickSide   = 4.0 // of the box
	bandGap    = 3.0
)

// band is one strip of the tick grid: some fasteners, in working order, and
// the stages that have a box for them.
type band struct {
	fasteners []int
	rows      []*plan.Stage
	columns   int  // that the band is divided into; some may stay empty
	second    bool // a row gives the second numbers
}

func (b band) height() float64 {
	rows := 1 + len(b.rows)
	if b.second {
		rows++
	}
	return tickRow * float64(rows)
}

// bands parts the grid so that each strip fits the width. Stages that go in
// the order of the card share strips; a stage with an order of its own has its
// own, so that every box stands in working order.
func (c *card) bands() []band {
	var bands []band
	stages := c.side.Stages
	for begin := 0; begin < len(stages); {
		end := begin + 1
		if !c.inCardOrder(&stages[begin]) {
			bands = append(bands, c.strips(stages[begin].Fasteners, stages[begin:end])...)
			begin = end
			continue
		}
		for end < len(stages) && c.inCardOrder(&stages[end]) {
			end++
		}
		bands = append(bands, c.strips(c.covered(stages[begin:end]), stages[begin:end])...)
		begin = end
	}
	return bands
}

// inCardOrder says whether the stage goes through its fasteners in the order
// of the numbers on the card.
func (c *card) inCardOrder(s *plan.Stage) bool {
	return slices.IsSortedFunc(s.Fasteners, func(a, b int) int { return c.numbers[a] - c.numbers[b] })
}

// covered lists, in the order of the card, the fasteners of some stages.
func (c *card) covered(stages []plan.Stage) []int {
	in := map[int]bool{}
	for _, s := range stages {
		for _, i := range s.Fasteners {
			in[i] = true
		}
	}
	var all []int
	for _, i := range c.side.Order {
		if in[i] {
			all = append(all, i)
		}
	}
	return all
}

// strips cuts a run of fasteners into strips of even length.
func (c *card) strips(fasteners []int, stages []plan.Stage) []band {
	if len(fasteners) == 0 {
		return nil
	}
	most := int((c.paper.Content() - tickLabel) / c.columnWidth())
	count := (len(fasteners) + most - 1) / most
	columns := (len(fasteners) + count - 1) / count
	var bands []band
	for part := range slices.Chunk(fasteners, columns) {
		b := band{fasteners: part, columns: columns, second: c.crowded && c.second != nil}
		for i := range stages {
			if slices.ContainsFunc(part, func(f int) bool { return c.has(&stages[i], f) }) {
				b.rows = append(b.rows, &stages[i])
			}
		}
		bands = append(bands, b)
	}
	return bands
}

// columnWidth leaves room for the widest number.
func (c *card) columnWidth() float64 {
	widest := font.Width(strconv.Itoa(len(c.side.Order)), scene.Bold, sheet.HeadEm)
	return max(tickColumn, widest+1.6)
}

// has says whether a stage covers a fastener.
func (c *card) has(s *plan.Stage, fastener int) bool {
	covered, known := c.covers[s.Number]
	if !known {
		covered = make([]bool, len(c.plan.Joint.Fasteners))
		for _, i := range s.Fasteners {
			covered[i] = true
		}
		c.covers[s.Number] = covered
	}
	return covered[fastener]
}

// drawBand draws one strip with its top at y.
func (c *card) drawBand(p *sheet.Pen, b band, y float64) {
	width := min((p.Paper.Content()-tickLabel)/float64(b.columns), 16)
	right := p.Left() + tickLabel + width*float64(len(b.fasteners))
	p.Panel(p.Left(), y, right-p.Left(), tickRow, 0, scene.Black, 0)
	p.Write(p.Left()+2, y+4.7, sheet.TextEm, scene.Regular, scene.Start, scene.White, c.words.Card.Order)
	for k, i := range b.fasteners {
		p.Write(p.Left()+tickLabel+width*(float64(k)+0.5), y+5, sheet.HeadEm, scene.Bold, scene.Middle, scene.White, strconv.Itoa(c.numbers[i]))
	}
	y += tickRow
	if b.second {
		c.drawSecond(p, b, y, width)
		y += tickRow
	}
	for _, s := range b.rows {
		c.drawTickRow(p, b, s, y, width)
		y += tickRow
	}
}

// drawSecond gives the second number of each fastener, where the drawing of
// the part has no room for it.
func (c *card) drawSecond(p *sheet.Pen, b band, y, width float64) {
	p.Panel(p.Left(), y, tickLabel, tickRow, 0, scene.White, 0.25)
	p.Text(p.Left()+2, y+4.7, font.Fit(c.smallMeans(), scene.Regular, sheet.TextEm, tickLabel-3))
	for k, i := range b.fasteners {
		x := p.Left() + tickLabel + width*float64(k)
		p.Panel(x, y, width, tickRow, 0, scene.White, 0.25)
		p.Write(x+width/2, y+4.7, sheet.TextEm, scene.Regular, scene.Middle, scene.Black, c.second[i])
	}
}

func (c *card) drawTickRow(p *sheet.Pen, b band, s *plan.Stage, y, width float64) {
	p.Panel(p.Left(), y, tickLabel, tickRow, 0, scene.White, 0.25)
	p.Write(p.Left()+2, y+4.7, sheet.TextEm, scene.Bold, scene.Start, scene.Black, strconv.Itoa(s.Number))
	p.Write(p.Left()+6.5, y+4.7, sheet.TextEm, scene.Regular, scene.Start, scene.Black, font.Fit(c.shortFigure(s), scene.Regular, sheet.TextEm, tickLabel-7.5))
	for k, i := range b.fasteners {
		x := p.Left() + tickLabel + width*float64(k)
		if c.has(s, i) {
			p.Panel(x, y, width, tickRow, 0, scene.White, 0.25)
			p.TickBox(x+(width-tickSide)/2, y+(tickRow-tickSide)/2, tickSide)
		} else {
			p.Panel(x, y, width, tickRow, 0, scene.Shade, 0.25)
		}
	}
}

// shortFigure names a stage in the grid.
func (c *card) shortFigure(s *plan.Stage) string {
	if s.Do == plan.Tighten {
		return c.figureWords(s) + " " + s.Torque.Unit.String()
	}
	return c.figureWords(s)
}

// gridHead is the height of the grid's heading.
const gridHead = 7.0

func gridHeight(bands []band) float64 {
	if len(bands) == 0 {
		return 0
	}
	h := gridHead
	for _, b := range bands {
		h += b.height() + bandGap
	}
	return h
}

// fitting counts the bands that fit into a height.
func fitting(bands []band, height float64) int {
	n := 0
	for n < len(bands) && height >= bands[n].height() {
		height -= bands[n].height() + bandGap
		n++
	}
	return n
}

func (c *card) grid(p *sheet.Pen, y float64, bands []band) {
	if len(bands) == 0 {
		return
	}
	p.Head(p.Left(), y+4, c.words.Card.TickAsYouGo)
	y += gridHead
	for _, b := range bands {
		c.drawBand(p, b, y)
		y += b.height() + bandGap
	}
}
