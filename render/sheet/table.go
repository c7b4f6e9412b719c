package sheet

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

// Column is one column of a table.
type Column struct {
	Head  string
	Share float64 // of the width, beside the other columns' shares
	Bold  bool
	Tick  bool // a box to tick; the cells stay empty
}

// Table is a table of words that runs on over pages, its heads repeated.
type Table struct {
	Columns []Column
	Rows    []Row
	Large   bool // rows in the size of headings, to be read while working
	Ruled   bool // lines between the columns and rows of some height, to be written in
}

// Row is one row of a table: the words of its cells.
type Row struct {
	Words []string
	Bold  bool // the whole row
	Warns bool // a bar at its left and a tint: nobody reads over it
}

const (
	cellAir  = 1.4 // beside and above the words of a cell
	closeAir = 0.8 // above them where the rows are close
	tickCell = 3.4 // side of the box in a cell
	warnBar  = 1.2 // width of the bar before a row that warns
	ruledRow = 8.0 // height of a row that is written in, at the least
)

// Draw draws the table at the present place of the run.
func (t Table) Draw(r *Run) {
	widths := t.widths(r.Pen.Paper.Content())
	heads := t.headCells(widths)
	r.Room(heads.height(r) + 2*Line + 4*cellAir)
	t.drawHead(r, heads, widths)
	for _, row := range t.Rows {
		cells := t.cells(row, widths)
		if r.Bottom-r.Y < t.height(r, cells) {
			r.Turn()
			t.drawHead(r, heads, widths)
		}
		t.drawRow(r, row, cells, widths)
	}
	r.Y += 3
}

func (t Table) widths(room float64) []float64 {
	total := 0.0
	for _, c := range t.Columns {
		total += c.Share
	}
	widths := make([]float64, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = room * c.Share / total
	}
	return t.widened(widths)
}

// widened gives a column whose longest word is wider than its share what that
// word needs, at the cost of the columns that have more than their words need:
// nobody reads a word that is broken inside without stopping.
func (t Table) widened(widths []float64) []float64 {
	lack, spare := 0.0, 0.0
	need := make([]float64, len(widths))
	for i := range widths {
		need[i] = t.longestWord(i) + 2*cellAir + 0.01 // no word stands in its cell by rounding alone
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

// longestWord is the width of the longest word in a column, its head included.
func (t Table) longestWord(column int) float64 {
	c := t.Columns[column]
	longest := font.LongestWord(c.Head, scene.Bold, TextEm)
	if c.Tick {
		return longest
	}
	for _, row := range t.Rows {
		longest = max(longest, font.LongestWord(row.Words[column], c.weight(row), t.em()))
	}
	return longest
}

// brokenRow is the broken words of each cell.
type brokenRow [][]string

func (b brokenRow) lines() float64 {
	most := 1
	for _, lines := range b {
		most = max(most, len(lines))
	}
	return float64(most)
}

func (b brokenRow) height(r *Run) float64 { return b.lines()*Line + 2*r.air() - 0.4 }

// air is the white above and below the words of a row.
func (r *Run) air() float64 {
	if r.Close {
		return closeAir
	}
	return cellAir
}

// em is the size of the rows, line the distance of their baselines.
func (t Table) em() float64 {
	if t.Large {
		return HeadEm
	}
	return TextEm
}

func (t Table) line() float64 { return Line * t.em() / TextEm }

// height is that of a row that is no head.
func (t Table) height(r *Run, cells brokenRow) float64 {
	height := cells.lines()*t.line() + 2*r.air() - 0.4
	if t.Ruled {
		return max(height, ruledRow)
	}
	return height
}

func (t Table) headCells(widths []float64) brokenRow {
	cells := make(brokenRow, len(t.Columns))
	for i, c := range t.Columns {
		cells[i] = font.Break(c.Head, scene.Bold, TextEm, widths[i]-2*cellAir)
	}
	return cells
}

func (t Table) cells(r Row, widths []float64) brokenRow {
	cells := make(brokenRow, len(t.Columns))
	for i, c := range t.Columns {
		if !c.Tick {
			cells[i] = font.Break(r.Words[i], c.weight(r), t.em(), widths[i]-2*cellAir-r.indent(i))
		}
	}
	return cells
}

// indent keeps the words of the first cell off the bar.
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

func (t Table) drawHead(r *Run, heads brokenRow, widths []float64) {
	p, height := r.Pen, heads.height(r)
	p.Panel(p.Left(), r.Y, p.Paper.Content(), height, 0, scene.Black, 0)
	x := p.Left()
	for i, lines := range heads {
		setWords(p, place{x, r.Y + r.air()}, lines, style{TextEm, Line, scene.Bold, scene.White})
		x += widths[i]
	}
	r.Y += height
}

func (t Table) drawRow(r *Run, row Row, cells brokenRow, widths []float64) {
	p, height := r.Pen, t.height(r, cells)
	x := p.Left()
	if row.Warns {
		p.Panel(x, r.Y, p.Paper.Content(), height, 0, scene.Tint, 0)
		p.Panel(x, r.Y, warnBar, height, 0, scene.Black, 0)
		p.Rule(x, r.Y, p.Right(), r.Y, 0.2)
	}
	for i, lines := range cells {
		if t.Columns[i].Tick {
			p.TickBox(x+cellAir+warnBar, r.Y+r.air()-0.1+0.72*(t.em()-TextEm)/2, tickCell)
		}
		if t.Ruled && i > 0 {
			p.Rule(x, r.Y, x, r.Y+height, 0.2)
		}
		setWords(p, place{x + row.indent(i), r.Y + r.air()}, lines, style{t.em(), t.line(), t.Columns[i].weight(row), scene.Black})
		x += widths[i]
	}
	r.Y += height
	p.Rule(p.Left(), r.Y, p.Right(), r.Y, 0.2)
}

// place is the top left corner of the words of a cell.
type place struct{ x, y float64 }

// style is how the words of a cell are set.
type style struct {
	em, line float64
	weight   scene.Weight
	ink      scene.Ink
}

func setWords(p *Pen, at place, lines []string, s style) {
	first := at.y + s.em - 0.4 // the baseline
	for k, line := range lines {
		p.Write(at.x+cellAir, first+float64(k)*s.line, s.em, s.weight, scene.Start, s.ink, line)
	}
}
