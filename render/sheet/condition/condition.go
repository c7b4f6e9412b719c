// Package condition lays out the sheet on which the state of every fastener is
// noted as it comes out: seized, stretched, damaged, broken, replaced. It may
// import plans, diagrams, scenes, type, words and what sheets share.
package condition

import (
	"fmt"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Document lays out a plan's condition sheet over as many pages as it needs,
// counted. The notes tell what found no room.
func Document(p plan.Plan, ask sheet.Request) (scene.Document, []string) {
	pages, notes := Pages(p, ask)
	return sheet.Document(p, ask, pages), notes
}

// Pages lays out the sheet; the pages lack their count.
func Pages(p plan.Plan, ask sheet.Request) (pages []scene.Page, notes []string) {
	f := &form{plan: p, words: ask.Words, missing: ask.Missing}
	f.once = slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Reuse == plan.ReuseOnce })
	w := ask.Words.Sheet
	f.run = sheet.NewRun(ask.Paper, ask.Words, f.heading(), ask.Foot(w.DoneBy, w.Date, w.CheckedBy))
	notes = f.top()
	f.ticks()
	end := f.newEnd()
	f.table(&end)
	end.draw(f.run)
	return f.run.Pages("condition"), notes
}

// form is the sheet while it fills.
type form struct {
	plan    plan.Plan
	words   *words.Catalogue
	missing *sheet.Missing
	run     *sheet.Run
	once    bool    // some fasteners are used once
	row     float64 // height of a row
}

func (f *form) heading() sheet.Heading {
	return sheet.PlanHeading(f.plan, f.words, f.words.Condition.Badge, func(k plan.Kind) string {
		name := k.Name
		if k.Thread != nil {
			name += " " + f.words.Figure(k.Thread.Name)
		}
		if k.Class != "" {
			name += ", " + k.Class
		}
		return name
	})
}

const (
	leastDrawing  = 42.0 // height of the small drawing beside the boxes
	aloneDrawing  = 52.0 // above them
	drawingShare  = 0.44 // of the width, where the boxes stand beside it
	betweenThings = 3.0
)

// top draws the small drawing of the part, how to read the table, and the boxes
// for when it goes wrong: side by side, or one under the other on narrow paper.
func (f *form) top() (notes []string) {
	run := f.run
	p := run.Pen
	width, left := p.Paper.Content(), p.Left()
	if p.Paper.Narrow() {
		reading := f.reading(width)
		height := aloneDrawing + reading.Height(p.Paper.Line)
		notes = f.drawing(scene.Box{Left: left, Top: run.Y, Right: p.Right(), Bottom: run.Y + height}, reading)
		run.Y += height + betweenThings
		b := f.boxes(width)
		for _, box := range b.parts {
			run.Room(box.height)
			box.draw(run.Pen, left, run.Y, width)
			run.Y += box.height + boxGap
		}
		run.Room(float64(len(b.common)) * f.run.Pen.Paper.Line)
		b.drawCommon(run.Pen, left, run.Y)
		run.Y += float64(len(b.common))*f.run.Pen.Paper.Line + betweenThings
		return notes
	}
	share := width * drawingShare
	reading := f.reading(share)
	b := f.boxes(width - share - betweenThings)
	height := max(b.height, leastDrawing+reading.Height(p.Paper.Line))
	notes = f.drawing(scene.Box{Left: left, Top: run.Y, Right: left + share, Bottom: run.Y + height}, reading)
	b.draw(p, left+share+betweenThings, run.Y)
	run.Y += height + betweenThings
	return notes
}

func (f *form) ticks() {
	lines := f.run.Pen.Paper.BreakText(f.words.Condition.TicksMean, f.run.Pen.Paper.Content())
	f.run.Room(float64(len(lines)) * f.run.Pen.Paper.Line)
	f.run.Pen.Lines(f.run.Pen.Left(), f.run.Y+2.4, lines)
	f.run.Y += float64(len(lines))*f.run.Pen.Paper.Line + 1
}

func (f *form) reading(width float64) sheet.Broken {
	w := f.words.Condition
	lines := []string{w.SmallDrawing, w.Measure}
	if f.once {
		lines = append(lines, w.NewMeans)
	}
	return f.run.Pen.Paper.BreakAll(lines, width)
}

func (f *form) drawing(box scene.Box, reading sheet.Broken) (notes []string) {
	p := f.run.Pen
	numbers := f.plan.Loosen.Numbers()
	texts := make([]string, len(numbers))
	for i, n := range numbers {
		texts[i] = strconv.Itoa(n)
	}
	box.Bottom -= reading.Height(p.Paper.Line) + 1
	d := diagram.Draw(diagram.Part{Plan: f.plan, Show: diagram.Words, Words: texts, Front: f.words.Sheet.Front, Box: box, SmallEm: p.Paper.TextEm})
	p.Add(d.Items...)
	f.missing.Note(len(d.Unplaced), len(numbers))
	if n := len(d.Unplaced); n > 0 {
		notes = append(notes, f.words.Say(finding.Warned(sheet.NumbersNoRoom, finding.Values{"where": "condition", "left": n, "of": len(numbers), "paper": p.Paper.Name})))
	}
	for _, word := range d.Dropped {
		notes = append(notes, f.words.Say(finding.Warned(sheet.LabelNoRoom, finding.Values{"where": "condition", "label": word, "paper": p.Paper.Name})))
	}
	y := box.Bottom + 1
	for _, lines := range reading {
		y = p.Lines(box.Left, y+3, lines) - 2
	}
	return notes
}

// writingLine is the distance of two lines to write on.
const writingLine = 7.0

type end struct {
	where, all []string
	line       float64 // between baselines
	lines      int     // to write on
}

func (f *form) newEnd() end {
	w, width := f.words.Condition, f.run.Pen.Paper.Content()
	return end{
		line:  f.run.Pen.Paper.Line,
		lines: 2,
		where: f.run.Pen.Paper.BreakText(w.Where, width),
		all:   f.run.Pen.Paper.BreakText(fmt.Sprintf(w.AllThere, len(f.plan.Loosen.Order)), width-6),
	}
}

func (e end) height() float64 {
	return float64(len(e.where)+len(e.all))*e.line + float64(e.lines)*writingLine + 4.5
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
		p := part{title: f.run.Pen.Paper.Bold().Lines(t.Title, inner), height: 2 * boxAir}
		p.height += float64(len(p.title)) * f.run.Pen.Paper.Line
		for _, step := range t.Steps {
			lines := f.run.Pen.Paper.BreakText(step, inner-tickBox-1.5)
			p.steps = append(p.steps, lines)
			p.height += float64(len(lines))*f.run.Pen.Paper.Line + stepAir
		}
		b.parts = append(b.parts, p)
		b.height += p.height + boxGap
	}
	b.common = f.run.Pen.Paper.BreakText(w.Common, width)
	b.height += float64(len(b.common)) * f.run.Pen.Paper.Line
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
	at := p.Paper.Bold().Set(p, x+boxAir, y+boxAir+2.4, t.title) + stepAir
	for _, lines := range t.steps {
		p.TickBox(x+boxAir, at-2.6, tickBox)
		at = p.Lines(x+boxAir+tickBox+1.5, at, lines) + stepAir
	}
}

func (b boxes) drawCommon(p *sheet.Pen, x, y float64) {
	p.Paper.Plain().Set(p, x, y+2, b.common)
}
