package card

import (
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

const (
	checksHead   = 8.0 // from the top to the list
	troubleGap   = 3.0 // between the list and the box below it
	tickIndent   = 6.0
	boxPadding   = 3.0
	numberedStep = 5.0 // from the number of a step to its text
)

// checkList is the list of checks before the work, each line with a box to
// tick, and the troubleshooting box beside it. Both are wrapped to their
// columns.
type checkList struct {
	list, second span
	stacked      bool // too narrow for two columns: the box is below the list

	line        float64      // between baselines
	lines       sheet.Broken // wrapped to the first column
	linesBeside sheet.Broken // the same wrapped to the second
	balanced    bool         // the lines are divided over both columns to save height

	box   troubleBox
	boxed bool // the box is drawn here
}

// checkList wraps the list to a column, once: pages are tried with the same
// columns many times.
func (c *card) checkList(in span) checkList {
	l, known := c.lists[in]
	if !known {
		l = c.newCheckList(in)
		c.lists[in] = l
	}
	return l
}

func (c *card) newCheckList(in span) checkList {
	l := checkList{list: in, second: in, line: c.paper.Line, stacked: in.width < 116, boxed: true}
	if !l.stacked {
		right := min(86, (in.width-columnGap)*0.48)
		l.list, l.second = span{in.left, in.width - columnGap - right}, span{in.right() - right, right}
	}
	l.lines, l.linesBeside = c.paper.BreakAll(c.before, l.list.width-tickIndent), c.paper.BreakAll(c.before, l.second.width-tickIndent)
	l.box = c.troubleBox(l.second)
	return l
}

// unboxed is the list without the box, in two columns if they are wide enough.
func (l checkList) unboxed() checkList {
	l.boxed, l.balanced = false, true
	return l
}

// before is the list up to line n; after is the rest, once the box is drawn.
func (l checkList) before(n int) checkList {
	l.lines, l.linesBeside = l.lines[:n], l.linesBeside[:n]
	return l
}

func (l checkList) after(n int) checkList {
	l.boxed, l.lines, l.linesBeside = false, l.lines[n:], l.linesBeside[n:]
	return l
}

func (l checkList) height() float64 { return l.heightParted(l.partedAt()) + 2 }

func (l checkList) heightParted(n int) float64 {
	left, right := checksHead+l.lines[:n].Height(l.line), l.boxHeight()
	if l.stacked && l.boxed {
		return left + troubleGap + right
	}
	if n < len(l.lines) {
		right += checksHead + l.linesBeside[n:].Height(l.line)
	}
	return max(left, right)
}

// boxHeight is the height of the box; 0 if it is elsewhere.
func (l checkList) boxHeight() float64 {
	if !l.boxed {
		return 0
	}
	return l.box.height()
}

// partedAt is the number of lines in the first column: all, or, to save height,
// as many as make both columns about equally high.
func (l checkList) partedAt() int {
	best := len(l.lines)
	if !l.balanced || l.stacked {
		return best
	}
	least := l.heightParted(best)
	for n := best - 1; n > 0; n-- {
		if height := l.heightParted(n); height < least {
			best, least = n, height
		}
	}
	return best
}

func (l checkList) draw(p *sheet.Pen, y float64) {
	p.Head(l.list.left, y+4, p.Words.Card.Before)
	n := l.partedAt()
	drawTicks(p, l.lines[:n], l.list, y)
	switch {
	case l.stacked:
		y += checksHead + l.lines.Height(l.line) + troubleGap
	case n < len(l.lines):
		drawTicks(p, l.linesBeside[n:], l.second, y)
		y += checksHead + l.linesBeside[n:].Height(l.line)
	}
	if l.boxed {
		l.box.draw(p, y)
	}
}

func drawTicks(p *sheet.Pen, lines sheet.Broken, in span, y float64) {
	at := y + checksHead + 2
	for _, broken := range lines {
		p.TickBox(in.left, at-3, 3.4)
		at = p.Lines(in.left+tickIndent, at, broken) + 1
	}
}

// troubleBox is the troubleshooting box: numbered steps, and a line to write
// on.
type troubleBox struct {
	in    span
	line  float64 // between baselines
	title []string
	steps sheet.Broken
}

func (c *card) troubleBox(in span) troubleBox {
	says := c.words.Card.TighteningTrouble
	if c.loosening {
		says = c.words.Card.LooseningTrouble
	}
	inside := in.width - 2*boxPadding
	return troubleBox{
		in: in, line: c.paper.Line,
		title: font.Break(says.Title, scene.Bold, c.paper.HeadEm, inside),
		steps: c.paper.BreakAll(says.Steps, inside-numberedStep),
	}
}

func (b troubleBox) height() float64 {
	return 3 + float64(len(b.title))*5 + b.steps.Height(b.line) + 8
}

func (b troubleBox) draw(p *sheet.Pen, y float64) {
	x, width := b.in.left, b.in.width
	p.Panel(x+0.3, y+0.3, width-0.6, b.height()-0.6, 1.5, scene.White, 0.6)
	at := y + 6
	for _, words := range b.title {
		p.Head(x+boxPadding, at, words)
		at += 5
	}
	at++
	for k, lines := range b.steps {
		p.Write(x+boxPadding, at, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, strconv.Itoa(k+1))
		at = p.Lines(x+boxPadding+numberedStep, at, lines) + 1
	}
	p.Rule(x+boxPadding+numberedStep, at+2, x+width-boxPadding, at+2, 0.25)
}
