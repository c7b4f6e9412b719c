package card

import (
	"math"
	"strconv"
	"strings"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

const (
	stageGap      = 3.0
	leastBoxWidth = 28.0
	boxAir        = 5.0 // space beside the figure in a box
	stagesHead    = 8.0 // the height of the heading over the boxes
)

// stageBoxes is the grid of stage boxes in a column, with the wrapped text
// under each figure.
type stageBoxes struct {
	in           span
	of           []plan.Stage
	across, rows int
	width, tall  float64 // of a box
	below        [][]string
	line         float64  // between baselines
	none         []string // text instead of boxes if the file gives no stages
}

func (c *card) stageBoxes(in span, from, to int) stageBoxes {
	b := stageBoxes{in: in, line: c.paper.Line, of: c.side.Stages[from:to]}
	n := len(b.of)
	if n == 0 {
		b.none = c.paper.BreakText(c.words.Card.Stage.None, in.width)
		return b
	}
	most := max(1, int((in.width+stageGap)/(c.leastBox()+stageGap)))
	b.rows = (n + most - 1) / most
	b.across = (n + b.rows - 1) / b.rows
	b.width = (in.width - stageGap*float64(b.across-1)) / float64(b.across)
	lines := 1
	for i := range b.of {
		below := c.below(&b.of[i], b.width-3)
		b.below, lines = append(b.below, below), max(lines, len(below))
	}
	b.tall = 18 + float64(lines)*c.paper.Line
	return b
}

func (c *card) leastBox() float64 {
	least := leastBoxWidth
	for i := range c.side.Stages {
		s := &c.side.Stages[i]
		wide := font.Width(c.figureWords(s), scene.Bold, c.figureEm(s))
		if s.Do == plan.Tighten {
			wide += unitGap + font.Width(s.Torque.Unit.String(), scene.Bold, c.paper.HeadEm)
		} else {
			wide += 2*iconRadius + iconGap
		}
		least = max(least, wide+boxAir)
	}
	return least
}

// figureEm is the size of a stage's figure. A word can be smaller than a
// figure: a word that is long in its language is set smaller, so that it takes
// no space from the drawing.
func (c *card) figureEm(s *plan.Stage) float64 {
	if s.Do != plan.Remove {
		return sheet.FigureEm
	}
	const room = leastBoxWidth - boxAir - 2*iconRadius - iconGap
	return math.Min(sheet.FigureEm, sheet.FigureEm*room/font.Width(c.figureWords(s), scene.Bold, sheet.FigureEm))
}

func (b stageBoxes) height() float64 {
	if b.rows == 0 {
		return stagesHead + float64(len(b.none))*b.line
	}
	return b.rowsHeight(b.rows)
}

func (b stageBoxes) rowsHeight(rows int) float64 {
	return stagesHead + float64(rows)*(b.tall+stageGap)
}

func (c *card) drawStages(p *sheet.Pen, b stageBoxes, y float64, from, to int) {
	p.Head(b.in.left, y+4, c.words.Card.Stages)
	p.Lines(b.in.left, y+10, b.none)
	for i := from * b.across; i < min(to*b.across, len(b.of)); i++ {
		x := b.in.left + float64(i%b.across)*(b.width+stageGap)
		c.stageBox(p, b, i, x, y+7+float64(i/b.across-from)*(b.tall+stageGap))
	}
}

func (c *card) stageBox(p *sheet.Pen, b stageBoxes, i int, x, y float64) {
	s := &b.of[i]
	p.Panel(x, y, b.width, b.tall, 1.5, scene.White, 0.5)
	number := strconv.Itoa(s.Number)
	p.Head(x+2.2, y+5.6, number)
	from := x + 4 + font.Width(number, scene.Bold, p.Paper.HeadEm)
	c.cover(p, s, from, x+b.width-2.2, y+5.6)
	c.figure(p, s, x, y, b.width)
	for k, words := range b.below[i] {
		p.Write(x+b.width/2, y+19.6+float64(k)*p.Paper.Line, p.Paper.TextEm, scene.Regular, scene.Middle, scene.Black, words)
	}
}

// cover draws which fasteners a stage is for, up to a right edge: all, all
// main, side 11–14. If the names of the kinds are too long, it draws the shapes
// of their marks, because shortened names may look the same.
func (c *card) cover(p *sheet.Pen, s *plan.Stage, left, right, y float64) {
	words, numbers := c.coverWords(s)
	write := func(words string) {
		p.Write(right, y, p.Paper.TextEm, scene.Regular, scene.End, scene.Black, words)
	}
	if font.Width(words, scene.Regular, p.Paper.TextEm) <= right-left {
		write(words)
		return
	}
	shapes := c.kindsOf(s)
	room := right - left - font.Width(numbers, scene.Regular, p.Paper.TextEm) - coverSample*float64(len(shapes))
	if numbers == "" || room < 0 {
		write(strings.TrimSpace(font.Fit(words, scene.Regular, p.Paper.TextEm, right-left)))
		return
	}
	write(numbers)
	for k, kind := range shapes {
		x := right - font.Width(numbers, scene.Regular, p.Paper.TextEm) - coverSample*float64(len(shapes)-k)
		p.Add(diagram.Sample(kind, scene.Point{X: x + 2, Y: y - 1.1}, 1.7))
	}
}

// coverSample is the width of a kind's shape in a stage box. Without a name it
// is larger.
const coverSample = 5.0

func (c *card) figure(p *sheet.Pen, s *plan.Stage, x, y, w float64) {
	mid, words := y+14.6, c.figureWords(s)
	switch s.Do {
	case plan.Tighten:
		c.bigFigure(p, x+w/2, mid, words, s.Torque.Unit.String())
	case plan.Advance:
		c.beside(p, x, mid, w, wedgeIcon(float64(s.Angle), true), words, sheet.FigureEm)
	case plan.Lengthen:
		c.beside(p, x, mid, w, stretchIcon, words, sheet.FigureEm)
	case plan.BackOff, plan.TurnBack:
		c.beside(p, x, mid, w, wedgeIcon(-float64(s.Angle), false), words, sheet.FigureEm)
	case plan.Wait:
		c.beside(p, x, mid, w, clockIcon, words, sheet.FigureEm)
	case plan.Remove:
		c.beside(p, x, mid, w, outIcon, words, c.figureEm(s))
	}
}

func (c *card) bigFigure(p *sheet.Pen, x, y float64, figure, unitSign string) {
	const gap = unitGap
	wide := font.Width(figure, scene.Bold, sheet.FigureEm)
	behind := font.Width(unitSign, scene.Bold, p.Paper.HeadEm)
	start := x - (wide+gap+behind)/2
	p.Write(start, y, sheet.FigureEm, scene.Bold, scene.Start, scene.Black, figure)
	p.Write(start+wide+gap, y, p.Paper.HeadEm, scene.Bold, scene.Start, scene.Black, unitSign)
}

const (
	iconRadius = 3.6 // of the icon beside a figure
	iconGap    = 1.6 // between the two
	unitGap    = 1.2 // between a torque and its unit
)

func (c *card) beside(p *sheet.Pen, x, y, w float64, icon func(p *sheet.Pen, x, y float64), figure string, em float64) {
	const gap = iconGap
	wide := font.Width(figure, scene.Bold, em)
	start := x + (w-2*iconRadius-gap-wide)/2
	icon(p, start+iconRadius, y-sheet.FigureEm*font.CapHeight/2)
	p.Write(start+2*iconRadius+gap, y, em, scene.Bold, scene.Start, scene.Black, figure)
}
