package condition

import (
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

type boxes struct {
	width, height float64
	parts         []part
	common        []string
}

type part struct {
	title  []string
	steps  [][]string
	height float64
}

const (
	boxAir  = 2.5 // inside a box, at each side
	tickBox = 3.0
	stepAir = 0.8 // between two steps
	boxGap  = 2.5
)

func (f *form) boxes(width float64) boxes {
	w := f.words.Condition
	b := boxes{width: width}
	inner := width - 2*boxAir
	for _, t := range []words.Trouble{w.Gives, w.Breaks} {
		p := part{title: sheet.Bold.Lines(t.Title, inner), height: 2 * boxAir}
		p.height += float64(len(p.title)) * sheet.Line
		for _, step := range t.Steps {
			lines := sheet.BreakText(step, inner-tickBox-1.5)
			p.steps = append(p.steps, lines)
			p.height += float64(len(lines))*sheet.Line + stepAir
		}
		b.parts = append(b.parts, p)
		b.height += p.height + boxGap
	}
	b.common = sheet.BreakText(w.Common, width)
	b.height += float64(len(b.common)) * sheet.Line
	return b
}

func (b boxes) draw(p *sheet.Pen, x, y float64) {
	for _, part := range b.parts {
		part.draw(p, x, y, b.width)
		y += part.height + boxGap
	}
	b.drawCommon(p, x, y)
}

func (t part) draw(p *sheet.Pen, x, y, width float64) {
	p.Panel(x, y, width, t.height, 1.5, scene.White, 0.5)
	at := sheet.Bold.Set(p, x+boxAir, y+boxAir+2.4, t.title) + stepAir
	for _, lines := range t.steps {
		p.TickBox(x+boxAir, at-2.6, tickBox)
		at = p.Lines(x+boxAir+tickBox+1.5, at, lines) + stepAir
	}
}

func (b boxes) drawCommon(p *sheet.Pen, x, y float64) {
	sheet.Grey.Set(p, x, y+2, b.common)
}
