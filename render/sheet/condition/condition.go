// Package condition lays out the sheet for recording the state of every
// fastener as it comes out: seized, stretched, damaged, broken, replaced. It
// may import plan, diagram, scene, font, words and what sheets share.
package condition

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/lettered"
	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// Document lays out a plan's condition sheet over as many pages as needed, with
// page numbers: what was seen until now at its place, and a list of it. The notes
// say what did not fit.
func Document(p plan.Plan, seen []lettered.Seen, zone *time.Location, ask sheet.Request) (scene.Document, []string) {
	pages, notes := laidOut(p, seen, zone, ask)
	return sheet.Document(p, ask, pages), notes
}

// Pages lays out the sheet. The pages do not have their count yet.
func Pages(p plan.Plan, ask sheet.Request) (pages []scene.Page, notes []string) {
	return laidOut(p, nil, time.UTC, ask)
}

func laidOut(p plan.Plan, seen []lettered.Seen, zone *time.Location, ask sheet.Request) (pages []scene.Page, notes []string) {
	f := &form{plan: p, words: ask.Words, missing: ask.Missing}
	f.once = slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Reuse == plan.ReuseOnce })
	f.inspect = slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Reuse == plan.ReuseInspect })
	f.inRows = first(p.Measures, func(at measure.Place) bool { return at.Fastener != "" })
	f.cast = sheet.CastNumbersOf(p, p.Loosen, ask.Words)
	w := ask.Words.Sheet
	f.run = sheet.NewRun(ask.Paper, ask.Words, f.heading(), ask.Foot(w.DoneBy, w.Date, w.CheckedBy))
	notes = f.top()
	f.ticks()
	end := f.newEnd()
	f.table(&end)
	f.stations(end.height())
	end.draw(f.run)
	f.values()
	if len(seen) > 0 {
		notes = append(notes, lettered.Draw(f.run, ask.Words.Page.Records.Found, p, lettered.Spots(seen), ask)...)
		lettered.List(f.run, "", p.Joint, seen, ask.Words, zone)
	}
	return f.run.Pages("condition"), notes
}

// form is the sheet under construction.
type form struct {
	plan      plan.Plan
	words     *words.Catalogue
	missing   *sheet.Missing
	run       *sheet.Run
	once      bool // some fasteners are single-use
	inspect   bool // some are measured before reuse
	cast      sheet.CastNumbers
	row       float64        // height of a row
	shimsSaid bool           // the instructions for a shim table are printed
	inRows    *measure.Value // measured in the rows of the fasteners; nil for none
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
	leastDrawing  = 42.0 // least height of the small drawing beside the boxes
	lowDrawing    = 20.0 // of a flat part above them, on low paper
	aloneDrawing  = 52.0 // greatest height
	drawingShare  = 0.44 // of the width, if the boxes are beside it
	betweenThings = 3.0
	readingGap    = 2.0 // below the drawing
)

// top draws the small drawing of the part, how to read the table, and the
// troubleshooting boxes. They are side by side if the drawing is complete that
// way; otherwise the drawing has the full width above the boxes, unless that
// does not help.
func (f *form) top() (notes []string) {
	p := f.run.Pen
	below := f.boxesBelow()
	high := min(f.aloneHeight(), f.run.Bottom-f.run.Y-f.belowHeight(below)-betweenThings-f.reading(p.Paper.Content(), nil).Height(p.Paper.Line))
	if p.Paper.Narrow() {
		high = max(leastDrawing, high)
	} else {
		share := p.Paper.Content() * drawingShare
		b := f.boxes(p.Paper.Content() - share - betweenThings)
		d := f.drawn(share, b.height, leastDrawing)
		if d.whole() || high < lowDrawing || !f.drawn(p.Paper.Content(), 0, high).whole() && high < leastDrawing {
			f.place(d)
			b.draw(p, p.Left()+share+betweenThings, f.run.Y)
			f.run.Y += d.height + betweenThings
			return f.left(d)
		}
	}
	d := f.drawn(p.Paper.Content(), 0, high)
	f.place(d)
	f.run.Y += d.height + betweenThings
	f.drawBelow(below)
	return f.left(d)
}

// aloneHeight is the height of a drawing over the full width: that of the part,
// with space for words above and below, up to a limit.
func (f *form) aloneHeight() float64 {
	p := f.run.Pen.Paper
	points := f.plan.Joint.Points()
	for _, path := range f.plan.Joint.Outline {
		points = append(points, path...)
	}
	extent := geometry.Bounds(points)
	return min(p.Content()*extent.Height()/max(extent.Width(), 1)+6*p.Line, aloneDrawing)
}

// boxesBelow are the boxes under the drawing: side by side, or on narrow paper
// one below the other. Boxes in a row have the same height.
func (f *form) boxesBelow() boxes {
	p := f.run.Pen.Paper
	across := f.across()
	b := f.boxes((p.Content() - float64(across-1)*betweenThings) / float64(across))
	for row := range slices.Chunk(b.parts, across) {
		highest := slices.MaxFunc(row, func(a, b part) int { return cmp.Compare(a.height, b.height) }).height
		for k := range row {
			row[k].height = highest
		}
	}
	b.common = p.BreakText(f.words.Condition.Common, p.Content())
	return b
}

func (f *form) across() int {
	if f.run.Pen.Paper.Narrow() {
		return 1
	}
	return 2
}

func (f *form) belowHeight(b boxes) float64 {
	h := float64(len(b.common))*f.run.Pen.Paper.Line + betweenThings
	for row := range slices.Chunk(b.parts, f.across()) {
		h += row[0].height + boxGap
	}
	return h
}

func (f *form) drawBelow(b boxes) {
	run := f.run
	for row := range slices.Chunk(b.parts, f.across()) {
		run.Room(row[0].height)
		for k, box := range row {
			box.draw(run.Pen, run.Pen.Left()+float64(k)*(b.width+betweenThings), run.Y, b.width)
		}
		run.Y += row[0].height + boxGap
	}
	line := run.Pen.Paper.Line
	run.Room(float64(len(b.common)) * line)
	b.drawCommon(run.Pen, run.Pen.Left(), run.Y)
	run.Y += float64(len(b.common))*line + betweenThings
}

func (f *form) ticks() {
	lines := f.run.Pen.Paper.BreakText(f.words.Condition.TicksMean, f.run.Pen.Paper.Content())
	f.run.Room(float64(len(lines)) * f.run.Pen.Paper.Line)
	f.run.Pen.Lines(f.run.Pen.Left(), f.run.Y+2.4, lines)
	f.run.Y += float64(len(lines))*f.run.Pen.Paper.Line + 1
}

// reading explains drawing and table, and lists the words that did not fit.
func (f *form) reading(width float64, leftOut []string) sheet.Broken {
	w := f.words.Condition
	what := w.SmallDrawing
	if f.cast.There() {
		what = words.Text(f.cast.Large(), f.cast.Follow(false))
	}
	lines := []string{words.Text(what, f.words.NoRoomFor(leftOut)), f.measure()}
	if f.once {
		lines = append(lines, w.NewMeans)
	}
	return f.run.Pen.Paper.BreakAll(lines, width)
}

// drawing is the part with its numbers and the text below it.
type drawing struct {
	diagram.Drawing
	reading sheet.Broken
	height  float64 // including the text
}

// whole reports that all numbers are in their marks, that the marks leave the
// part visible, and that no word is left out.
func (d drawing) whole() bool { return !d.Led && !d.Hidden && len(d.Unplaced)+len(d.Dropped) == 0 }

// drawn draws the part below what is on the page. height is for drawing and
// text together, least the minimum for the drawing.
func (f *form) drawn(width, height, least float64) drawing {
	p := f.run.Pen
	d := drawing{reading: f.reading(width, nil)}
	for { // the text about words that do not fit takes space itself
		said := d.reading.Height(p.Paper.Line)
		d.height = max(height, least+said)
		box := scene.Box{Left: p.Left(), Top: f.run.Y, Right: p.Left() + width, Bottom: f.run.Y + d.height - said - 1}
		d.Drawing = diagram.Draw(diagram.Part{
			Plan: f.plan, Order: f.plan.Loosen.Order, Called: f.plan.Called(f.plan.Loosen), NoArrows: true, Modest: true,
			Front: f.words.Sheet.Front, Box: box, SmallEm: p.Paper.TextEm,
		})
		if d.reading = f.reading(width, d.Dropped); d.reading.Height(p.Paper.Line) <= said {
			return d
		}
	}
}

func (f *form) place(d drawing) {
	p := f.run.Pen
	p.Add(d.Items...)
	y := min(scene.Bounds(d.Items).Bottom+readingGap, f.run.Y+d.height-d.reading.Height(p.Paper.Line))
	for _, lines := range d.reading {
		y = p.Lines(p.Left(), y+3, lines) - 2
	}
	f.missing.Note(len(d.Unplaced), len(f.plan.Loosen.Order))
}

// left reports what did not fit.
func (f *form) left(d drawing) (notes []string) {
	name := f.run.Pen.Paper.Name
	if n := len(d.Unplaced); n > 0 {
		notes = append(notes, f.words.Say(finding.Warned(sheet.NumbersNoRoom, finding.Values{"where": "condition", "left": n, "of": len(f.plan.Loosen.Order), "paper": name})))
	}
	for _, word := range d.Dropped {
		notes = append(notes, f.words.Say(finding.Warned(sheet.LabelNoRoom, finding.Values{"where": "condition", "label": word, "paper": name})))
	}
	return notes
}

// writingLine is the distance between two lines to write on.
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
	boxAir  = 2.5 // inside a box, on each side
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
