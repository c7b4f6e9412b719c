package condition

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

const (
	rowHeight   = 7.0 // for writing by hand
	leastRow    = 5.1 // if that keeps all rows on one page
	tickSide    = 4.5
	tickAir     = 0.6  // between a box and the lines of its row
	leastRemark = 10.0 // least width of a column for handwritten remarks
)

type column struct {
	head    string
	upright bool // the heading reads from bottom to top
	x, w    float64
	fill    func(p *sheet.Pen, c column, y float64, row int) // nil: left empty for writing
}

// columns share the width: columns to read get what they need, the remark gets
// the rest.
func (f *form) columns() []column {
	w, p := f.words.Condition, f.run.Pen
	narrow := p.Paper.Narrow()
	tick, measured, kind := 8.5, 24.0, 24.0
	if narrow {
		tick, measured, kind = 6.5, 19.0, 15.0
	}
	called := f.plan.Called(f.plan.Loosen)
	digits := strconv.Itoa(slices.Max(called))
	head, second, numbers := f.numbers()
	columns := []column{
		{head: head, w: font.Width(digits, scene.Bold, f.run.Pen.Paper.HeadEm) + 3, upright: true, fill: func(p *sheet.Pen, c column, y float64, i int) {
			p.Write(c.x+c.w/2, y+f.row/2+1.5, f.run.Pen.Paper.HeadEm, scene.Bold, scene.Middle, scene.Black, strconv.Itoa(called[i]))
		}},
		{head: second, w: max(font.Width(digits, scene.Regular, f.run.Pen.Paper.TextEm)+2.5, 5), upright: true, fill: func(p *sheet.Pen, c column, y float64, i int) {
			p.Write(c.x+c.w/2, y+f.row/2+1.1, f.run.Pen.Paper.TextEm, scene.Regular, scene.Middle, scene.Black, strconv.Itoa(numbers[i]))
		}},
		{head: w.ID, w: f.idWidth(narrow), upright: narrow, fill: func(p *sheet.Pen, c column, y float64, i int) {
			f.text(p, c, y, f.plan.Joint.Fasteners[i].ID)
		}},
		{head: w.Kind, w: min(kind, f.kindWidth()), fill: func(p *sheet.Pen, c column, y float64, i int) {
			f.text(p, c, y, f.plan.Joint.Fasteners[i].Kind)
		}},
	}
	if f.once {
		columns = append(columns, column{head: "", w: font.Width(w.New, scene.Bold, f.run.Pen.Paper.TextEm) + 4, fill: f.mark})
	}
	for _, head := range w.Ticks {
		columns = append(columns, f.tick(head, tick))
	}
	columns = append(columns,
		column{head: w.Nominal, w: f.nominalWidth(), upright: narrow, fill: func(p *sheet.Pen, c column, y float64, i int) {
			f.text(p, c, y, f.length(f.plan.KindOf(i)))
		}},
		column{head: w.Measured, w: measured})
	if f.inspect || f.inRows != nil {
		columns = append(columns, column{head: w.Limit, w: f.limitWidth(), upright: narrow, fill: func(p *sheet.Pen, c column, y float64, i int) {
			f.text(p, c, y, f.limit(i))
		}})
	}
	return f.placed(append(columns, column{head: w.Remark}))
}

func (f *form) tick(head string, width float64) column {
	return column{head: head, upright: true, w: width, fill: func(p *sheet.Pen, c column, y float64, _ int) {
		side := min(tickSide, f.row-2*tickAir)
		p.TickBox(c.x+(c.w-side)/2, y+(f.row-side)/2, side)
	}}
}

// numbers returns the headings of the two columns of numbers, and the content
// of the second: the tightening order, or the loosening order if cast numbers
// are large and the order does not follow them.
func (f *form) numbers() (first, second string, numbers []int) {
	w := f.words.Condition
	switch {
	case f.cast.Across():
		return f.words.Card.Part.Cast, w.Order, f.plan.Loosen.Numbers()
	case f.cast.There():
		return f.words.Card.Part.Cast, w.Tighten, f.plan.Tighten.Numbers()
	}
	return w.Order, w.Tighten, f.plan.Tighten.Numbers()
}

// measure says what the columns of lengths are, and where the limit is from.
func (f *form) measure() string {
	if f.inRows != nil {
		return fmt.Sprintf(f.words.Condition.MeasuredHere, f.inRows.What)
	}
	if slices.ContainsFunc(f.plan.Kinds, func(k plan.Kind) bool { return k.ReusedTo > 0 }) {
		return f.words.Condition.MeasureTo
	}
	return f.words.Condition.Measure
}

// limit is that of the value measured at a fastener, otherwise the longest
// length for reuse: from the file, or a reference to the manual.
func (f *form) limit(fastener int) string {
	k := f.plan.KindOf(fastener)
	switch {
	case f.inRows != nil && f.inRows.Has(measure.Place{Fastener: f.plan.Joint.Fasteners[fastener].ID}):
		return f.words.Figure(f.inRows.Limits())
	case k.Reuse != plan.ReuseInspect:
		return ""
	case k.ReusedTo > 0:
		return f.words.Figure(k.Labelled(k.ReusedTo))
	}
	return f.words.Condition.Manual
}

func (f *form) limitWidth() float64 {
	w, em := f.words.Condition, f.run.Pen.Paper.TextEm
	widest := 0.0
	for i := range f.plan.Joint.Fasteners {
		widest = max(widest, font.Width(f.limit(i), scene.Regular, em))
	}
	if !f.run.Pen.Paper.Narrow() {
		widest = max(widest, font.Width(w.Limit, scene.Regular, em))
	}
	return widest + 3.5
}

// placed puts the columns side by side. The last one gets the remaining width.
// If that is too little for a remark, the column is dropped and the name of the
// kind gets the width.
func (f *form) placed(columns []column) []column {
	p, last := f.run.Pen, len(columns)-1
	rest := left(p, columns)
	if rest < leastRemark {
		const kind = 3
		more := min(rest, f.kindWidth()-columns[kind].w)
		columns[kind].w += more
		columns = columns[:last]
	}
	return sideBySide(p, columns)
}

// left is the width that columns leave over.
func left(p *sheet.Pen, columns []column) float64 {
	rest := p.Paper.Content()
	for _, c := range columns {
		rest -= c.w
	}
	return rest
}

// sideBySide puts columns side by side; the last one gets the remaining width.
func sideBySide(p *sheet.Pen, columns []column) []column {
	columns[len(columns)-1].w += left(p, columns)
	x := p.Left()
	for k := range columns {
		columns[k].x = x
		x += columns[k].w
	}
	return columns
}

func (f *form) text(p *sheet.Pen, c column, y float64, words string) {
	p.Write(c.x+1.5, y+f.row/2+1.1, p.Paper.TextEm, scene.Regular, scene.Start, scene.Black, font.Fit(words, scene.Regular, p.Paper.TextEm, c.w-2.5))
}

func (f *form) mark(p *sheet.Pen, c column, y float64, fastener int) {
	if f.plan.KindOf(fastener).Reuse != plan.ReuseOnce {
		return
	}
	const height = 4.0
	p.Panel(c.x+0.8, y+(f.row-height)/2, c.w-1.6, height, 0.8, scene.Black, 0)
	p.Write(c.x+c.w/2, y+f.row/2+1.1, p.Paper.TextEm, scene.Bold, scene.Middle, scene.White, f.words.Condition.New)
}

func (f *form) idWidth(narrow bool) float64 {
	widest := 0.0
	for _, one := range f.plan.Joint.Fasteners {
		widest = max(widest, font.Width(one.ID, scene.Regular, f.run.Pen.Paper.TextEm))
	}
	if !narrow {
		widest = max(widest, font.Width(f.words.Condition.ID, scene.Regular, f.run.Pen.Paper.TextEm))
	}
	return min(max(widest, 4)+3.5, 22)
}

func (f *form) nominalWidth() float64 {
	widest := 0.0
	if !f.run.Pen.Paper.Narrow() {
		widest = font.Width(f.words.Condition.Nominal, scene.Regular, f.run.Pen.Paper.TextEm)
	}
	for _, k := range f.plan.Kinds {
		widest = max(widest, font.Width(f.length(k), scene.Regular, f.run.Pen.Paper.TextEm))
	}
	return max(widest+3.5, 6)
}

func (f *form) kindWidth() float64 {
	widest := font.Width(f.words.Condition.Kind, scene.Regular, f.run.Pen.Paper.TextEm)
	for _, k := range f.plan.Kinds {
		widest = max(widest, font.Width(k.Name, scene.Regular, f.run.Pen.Paper.TextEm))
	}
	return widest + 3.5
}

func headHeight(columns []column, y sheet.Type) float64 {
	h := rowHeight
	for _, c := range columns {
		if c.upright {
			h = max(h, font.Width(c.head, scene.Regular, y.TextEm)+3)
		}
	}
	return h
}

// lastRows are kept on the last page with what ends the sheet, so that no page
// has only that.
const lastRows = 3

// fit reduces the heights of rows and end if that keeps everything on one page.
func (f *form) fit(head float64, e *end) {
	n := float64(len(f.plan.Loosen.Order))
	room := f.run.Bottom - f.run.Y - head - f.stationsHeight()
	f.row = rowHeight
	if n*rowHeight+e.height() <= room {
		return
	}
	low := *e
	low.lines = 1
	if row := math.Floor((room-low.height())/n*10) / 10; row >= leastRow {
		f.row, *e = min(row, rowHeight), low
	}
}

func (f *form) table(e *end) {
	run, columns := f.run, f.columns()
	head := headHeight(columns, f.run.Pen.Paper.Type)
	f.fit(head, e)
	endHeight := e.height()
	if len(f.plan.Joint.Stations) > 0 { // they come between
		endHeight = 0
	}
	run.Room(head + lastRows*f.row)
	f.head(columns, head)
	f.rows(columns, head, f.plan.Loosen.Order, endHeight)
}

// rows draws rows over as many pages as needed, with the last ones next to what
// ends the sheet.
func (f *form) rows(columns []column, head float64, rows []int, end float64) {
	for k, i := range rows {
		least := f.row
		if left := len(rows) - k; left == min(lastRows, len(rows)) {
			least = float64(left)*f.row + end
		}
		if f.run.Bottom-f.run.Y < least {
			f.run.Turn()
			f.head(columns, head)
		}
		f.line(columns, i)
	}
}

func (f *form) head(columns []column, height float64) {
	p, y := f.run.Pen, f.run.Y
	p.Panel(p.Left(), y, p.Paper.Content(), height, 0, scene.Tint, 0.3)
	for _, c := range columns {
		if c.upright {
			p.Add(font.Set(scene.Text{At: scene.Point{X: c.x + c.w/2 + 1.1, Y: y + height - 1.5}, Size: f.run.Pen.Paper.TextEm, Ink: scene.Black, Upward: true, Content: c.head}))
		} else if c.head != "" {
			p.Text(c.x+1.5, y+height-2, font.Fit(c.head, scene.Regular, f.run.Pen.Paper.TextEm, c.w-2))
		}
	}
	f.run.Y += height
}

func (f *form) line(columns []column, fastener int) {
	p, y := f.run.Pen, f.run.Y
	for _, c := range columns {
		p.Panel(c.x, y, c.w, f.row, 0, scene.White, 0.2)
		if c.fill != nil {
			c.fill(p, c, y, fastener)
		}
	}
	f.run.Y += f.row
}

// length is the file's length of a kind, as on the drawer. A stud stays in its
// hole and is not measured.
func (f *form) length(k plan.Kind) string {
	if k.Stud() {
		return ""
	}
	return f.words.Figure(k.Labelled(k.Length))
}
