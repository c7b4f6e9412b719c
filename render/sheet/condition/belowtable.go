package condition

import (
	"fmt"

	"drawdown/render/sheet"
)

// writingLine is the distance of two lines to write on.
const writingLine = 7.0

type end struct {
	where, all []string
	lines      int // to write on
}

func (f *form) newEnd() end {
	w, width := f.words.Condition, f.run.Pen.Paper.Content()
	return end{
		lines: 2,
		where: sheet.BreakText(w.Where, width),
		all:   sheet.BreakText(fmt.Sprintf(w.AllThere, len(f.plan.Loosen.Order)), width-6),
	}
}

func (e end) height() float64 {
	return float64(len(e.where)+len(e.all))*sheet.Line + float64(e.lines)*writingLine + 4.5
}

func (e end) draw(run *sheet.Run) {
	run.Room(e.height())
	p := run.Pen
	run.Y += 2
	run.Y = p.Lines(p.Left(), run.Y+3, e.where) - 3
	for range e.lines {
		run.Y += writingLine
		p.Rule(p.Left(), run.Y, p.Right(), run.Y, 0.2)
	}
	run.Y += 2
	p.TickBox(p.Left(), run.Y+0.2, 3.4)
	run.Y = p.Lines(p.Left()+5.5, run.Y+3, e.all) - 3
}
