package condition

import (
	"fmt"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// writingLine is the distance of two lines to write on.
const writingLine = 7.0

// end is the end of the sheet: lines to write on what broke, and a box that all
// are counted.
type end struct {
	where, all []string
	lines      int // to write on
}

func (f *form) newEnd() end {
	w, width := f.words.Condition, f.run.Pen.Paper.Content()
	return end{
		lines: 2,
		where: font.Break(w.Where, scene.Regular, sheet.TextEm, width),
		all:   font.Break(fmt.Sprintf(w.AllThere, len(f.plan.Loosen.Order)), scene.Regular, sheet.TextEm, width-6),
	}
}

func (e end) height() float64 {
	return float64(len(e.where)+len(e.all))*sheet.Line + float64(e.lines)*writingLine + 4.5
}

func (e end) draw(run *sheet.Run) {
	run.Room(e.height())
	p := run.Pen
	run.Y += 2
	for _, line := range e.where {
		p.Text(p.Left(), run.Y+3, line)
		run.Y += sheet.Line
	}
	for range e.lines {
		run.Y += writingLine
		p.Rule(p.Left(), run.Y, p.Right(), run.Y, 0.2)
	}
	run.Y += 2
	p.TickBox(p.Left(), run.Y+0.2, 3.4)
	for _, line := range e.all {
		p.Text(p.Left()+5.5, run.Y+3, line)
		run.Y += sheet.Line
	}
}
