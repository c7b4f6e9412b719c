package sheet

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Share float64 // of the width, relative to the shares of the other columns
	Bold  bool
	Tick  bool // a tick box; the cells stay empty
}

// Table is a table of words that continues over pages, with repeated headings.
type Table struct {
	Columns []Column
	Rows    []Row
	Large   bool // rows in the size of headings, readable while working
	Ruled   bool // lines between the columns, and higher rows, for writing by hand
}

// Row is one row of a table: the words of its cells.
type Row struct {
	Words []string
	Bold  bool // the whole row
	Warns bool // a bar at its left and a tint, so that it is not overlooked
	// Caution puts a sign in place of a tick box: the row is a caution, with
	// nothing to do.
	Caution bool
}

const (
	cellAir  = 1.4 // beside and above the words of a cell
	closeAir = 0.8 // above them if the rows are close
	tickCell = 3.4 // side of the box in a cell
	warnBar  = 1.2 // width of the bar before a warning row
	ruledRow = 8.0 // least height of a row for writing by hand
)

// Draw draws the table at the current position of the run.
func (t Table) Draw(r *Run) {
	widths := t.widths(r.Pen.Paper)
	heads := t.heads(r.Pen.Paper, widths)
	r.Room(t.Lead(r))
	t.drawHead(r, heads, widths)
	for _, row := range t.Rows {
		cells := t.cells(row, widths, r.Pen.Paper.Type)
		if r.Bottom-r.Y < t.height(r, cells) {
			r.Turn()
			t.drawHead(r, heads, widths)
		}
		t.drawRow(r, row, cells, widths)
	}
	r.Y += 3
}

// Lead is the height of the head with the first row: less of a table does not stand at
// the foot of a page.
func (t Table) Lead(r *Run) float64 {
	widths := t.widths(r.Pen.Paper)
	head, least := r.rowHeight(t.heads(r.Pen.Paper, widths), r.Pen.Paper.Line), 2*r.Pen.Paper.Line+4*cellAir
	if len(t.Rows) > 0 {
		return head + max(least, t.height(r, t.cells(t.Rows[0], widths, r.Pen.Paper.Type)))
	}
	return head + least
}

func (t Table) heads(p Paper, widths []float64) Broken {
	heads := make(Broken, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = p.Bold().Lines(c.Head, widths[i]-2*cellAir)
	}
	return heads
}

func (t Table) widths(paper Paper) []float64 {
	total := 0.0
	for _, c := range t.Columns {
		total += c.Share
	}
	widths := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = paper.Content() * c.Share / total
	}
	return t.widened(widths, paper.Type)
}

// widened gives a column the width of its longest word, at the expense of
// columns with spare width: words broken inside are hard to read.
func (t Table) widened(widths []float64, y Type) []float64 {
	lack, spare := 0.0, 0.0
	need := make([]float64, len(widths))
	for i := range widths {
		need[i] = t.longestWord(i, y) + 2*cellAir + 0.01 // rounding must not break the word
		lack += max(0, need[i]-widths[i])
		spare += max(0, widths[i]-need[i])
	}
	if lack == 0 || spare < lack {
		return widths
	}
	for i := range widths {
		if more := widths[i] - need[i]; more > 0 {
			widths[i] -= more * lack / spare
		} else {
			widths[i] = need[i]
		}
	}
	return widths
}

func (t Table) longestWord(column int, y Type) float64 {
	c := t.Columns[column]
	longest := font.LongestWord(c.Head, scene.Bold, y.TextEm)
	if c.Tick {
		return longest
	}
	for _, row := range t.Rows {
		longest = max(longest, font.LongestWord(row.Words[column], c.weight(row), t.em(y)))
	}
	return longest
}

func (r *Run) rowHeight(cells Broken, line float64) float64 {
	return float64(cells.Most())*line + 2*r.air() - 0.4
}

// air is the white space above and below the words of a row.
func (r *Run) air() float64 {
	if r.Close {
		return closeAir
	}
	return cellAir
}

// em is the size of the rows, line the distance between their baselines.
func (t Table) em(y Type) float64 {
	if t.Large {
		return y.HeadEm
	}
	return y.TextEm
}

func (t Table) line(y Type) float64 { return y.Line * t.em(y) / y.TextEm }

func (t Table) height(r *Run, cells Broken) float64 {
	height := r.rowHeight(cells, t.line(r.Pen.Paper.Type))
	if t.Ruled {
		return max(height, ruledRow)
	}
	return height
}

func (t Table) cells(r Row, widths []float64, y Type) Broken {
	cells := make(Broken, len(t.Columns))
	for i, c := range t.Columns {
		if !c.Tick {
			cells[i] = font.Break(r.Words[i], c.weight(r), t.em(y), widths[i]-2*cellAir-r.indent(i))
		}
	}
	return cells
}

// indent keeps the words of the first cell clear of the bar.
func (r Row) indent(column int) float64 {
	if r.Warns && column == 0 {
		return 2 * warnBar
	}
	return 0
}

func (c Column) weight(r Row) scene.Weight {
	if c.Bold || r.Bold || r.Warns {
		return scene.Bold
	}
	return scene.Regular
}

func (t Table) drawHead(r *Run, heads Broken, widths []float64) {
	p, height := r.Pen, r.rowHeight(heads, r.Pen.Paper.Line)
	p.Panel(p.Left(), r.Y, p.Paper.Content(), height, 0, scene.Black, 0)
	x := p.Left()
	for i, lines := range heads {
		setCell(p, x, r.Y+r.air(), lines, Style{p.Paper.TextEm, p.Paper.Line, scene.Bold, scene.White})
		x += widths[i]
	}
	r.Y += height
}

func (t Table) drawRow(r *Run, row Row, cells Broken, widths []float64) {
	p, height, y := r.Pen, t.height(r, cells), r.Pen.Paper.Type
	x := p.Left()
	if row.Warns {
		p.Panel(x, r.Y, p.Paper.Content(), height, 0, scene.Tint, 0)
		p.Panel(x, r.Y, warnBar, height, 0, scene.Black, 0)
		p.Rule(x, r.Y, p.Right(), r.Y, 0.2)
	}
	for i, lines := range cells {
		if t.Columns[i].Tick {
			left, top := x+cellAir+warnBar, r.Y+r.air()-0.1+0.72*(t.em(y)-y.TextEm)/2
			if row.Caution {
				p.cautionSign(left, top, tickCell)
			} else {
				p.TickBox(left, top, tickCell)
			}
		}
		if t.Ruled && i > 0 {
			p.Rule(x, r.Y, x, r.Y+height, 0.2)
		}
		setCell(p, x+row.indent(i), r.Y+r.air(), lines, Style{t.em(y), t.line(y), t.Columns[i].weight(row), scene.Black})
		x += widths[i]
	}
	r.Y += height
	p.Rule(p.Left(), r.Y, p.Right(), r.Y, 0.2)
}

// setCell sets the words of a cell relative to its top left corner.
func setCell(p *Pen, x, y float64, lines []string, s Style) { s.Set(p, x+cellAir, y+s.Em-0.4, lines) }

// cautionSign draws a solid triangle as wide as a tick box.
func (p *Pen) cautionSign(x, y, side float64) {
	corners := []scene.Point{{X: x, Y: y + side}, {X: x + side, Y: y + side}, {X: x + side/2, Y: y}}
	p.Add(scene.Shape{Path: scene.Polyline(corners, true), Fill: scene.Black})
}
