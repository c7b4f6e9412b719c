package clampload

import (
	"math"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// bar is one figure with its range, beside what is needed and the most that is
// allowed; 0 is unknown.
type bar struct {
	name                             string
	low, nominal, high, needed, most float64
}

// bars draws a chart of lying bars on one scale. Each is filled up to the low
// end and outlined up to the high end, with a tick at the middle; a thick line
// crosses it where the need is, and one ends it at the limit.
func (l *layout) bars(title string, bars []bar) {
	if len(bars) == 0 {
		return
	}
	paper := l.Paper
	row := 1.5 * paper.Line
	l.run.Y += gap
	l.run.Room(paper.HeadEm + 2 + float64(len(bars))*row)
	l.run.Set(paper.Strong(), title)
	l.run.Y += 1
	names, figures, top := 0.0, 0.0, 0.0
	for _, b := range bars {
		names = max(names, font.Width(b.name, scene.Regular, paper.TextEm))
		figures = max(figures, font.Width(l.span(b), scene.Regular, paper.TextEm))
		top = max(top, b.high, b.needed, b.most)
	}
	p := l.run.Pen
	left, right := p.Left()+names+3, p.Right()-figures-3
	at := func(figure float64) float64 { return left + (right-left)*figure/max(top, math.SmallestNonzeroFloat64) }
	for _, b := range bars {
		y, thick := l.run.Y, row*0.55
		p.Text(p.Left(), y+row*0.62, b.name)
		p.Write(p.Right(), y+row*0.62, paper.TextEm, scene.Regular, scene.End, scene.Black, l.span(b))
		p.Panel(left, y+row*0.2, at(b.low)-left, thick, 0, scene.Accent, 0)
		if b.high > b.low {
			p.Panel(at(b.low), y+row*0.2, at(b.high)-at(b.low), thick, 0, scene.White, 0.25)
			p.Rule(at(b.nominal), y+row*0.1, at(b.nominal), y+row*0.85, 0.4)
		}
		for _, limit := range []float64{b.needed, b.most} {
			if limit > 0 {
				p.Rule(at(limit), y, at(limit), y+row*0.95, 0.9)
			}
		}
		l.run.Y += row
	}
}

// span is the range of a bar in figures, with what is needed.
func (l *layout) span(b bar) string {
	low, high := l.Words.Value(b.low, "~"), l.Words.Value(b.high, "~")
	span := low + "–" + high
	if low == high {
		span = high
	}
	if b.needed > 0 {
		span += " ≥ " + l.Words.Value(b.needed, "~")
	}
	return span
}
