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
}

// Row is one row of a table: the words of its cells.
type Row struct {
	Words []string
	Bold  bool // the whole row
}

const (
	cellAir  = 1.4 // beside and above the words of a cell
	tickCell = 3.4 // side of the box in a cell
)

// Draw draws the table at the present place of the run.
func (t Table) Draw(r *Run) {
	widths := t.widths(r.Pen.Paper.Content())
	heads := t.headCells(widths)
	r.Room(heads.height() + 2*Line + 4*cellAir)
	t.drawHead(r, heads, widths)
	for _, row := range t.Rows {
		cells := t.cells(row, widths)
		if r.Bottom-r.Y < cells.height() {
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
		longest = max(longest, font.LongestWord(row.Words[column], c.weight(row), TextEm))
	}
	return longest
}

// brokenRow is the broken words of each cell.
type brokenRow [][]string

func (r brokenRow) height() float64 {
	most := 1
	for _, lines := range r {
		most = max(most, len(lines))
	}
	return float64(most)*Line + 2*cellAir - 0.4
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
			cells[i] = font.Break(r.Words[i], c.weight(r), TextEm, widths[i]-2*cellAir)
		}
	}
	return cells
}

func (c Column) weight(r Row) scene.Weight {
	if c.Bold || r.Bold {
		return scene.Bold
	}
	return scene.Regular
}

func (t Table) drawHead(r *Run, heads brokenRow, widths []float64) {
	p, height := r.Pen, heads.height()
	p.Panel(p.Left(), r.Y, p.Paper.Content(), height, 0, scene.Black, 0)
	x := p.Left()
	for i, lines := range heads {
		t.words(p, x, r.Y, lines, scene.Bold, scene.White)
		x += widths[i]
	}
	r.Y += height
}

func (t Table) drawRow(r *Run, row Row, cells brokenRow, widths []float64) {
	p, height := r.Pen, cells.height()
	x := p.Left()
	for i, lines := range cells {
		if t.Columns[i].Tick {
			p.TickBox(x+cellAir, r.Y+cellAir-0.1, tickCell)
		}
		t.words(p, x, r.Y, lines, t.Columns[i].weight(row), scene.Black)
		x += widths[i]
	}
	r.Y += height
	p.Rule(p.Left(), r.Y, p.Right(), r.Y, 0.2)
}

func (t Table) words(p *Pen, x, y float64, lines []string, w scene.Weight, ink scene.Ink) {
	for k, words := range lines {
		p.Write(x+cellAir, y+cellAir+2.6+float64(k)*Line, TextEm, w, scene.Start, ink, words)
	}
}
