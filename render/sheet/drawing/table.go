package drawing

import (
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

const (
	rowHeight = 5.0
	tickSide  = 3.0
	headRoom  = 6.0  // the heading of the table
	between   = 6.0  // two columns of the table
	numberMm  = 14.0 // least width of a figure
	mostID    = 22.0
)

// table lists the places of all fasteners in the order of the file, in as many
// columns as fit the paper.
type table struct {
	words    words.Drawing
	castHead string
	cast     float64 // width of the column of the numbers cast on the part
	rows     []row
	holes    bool
	casts    bool
	id       float64 // width of the ids
	columns  int
	width    float64 // of a column
	number   float64 // width of a figure
}

type row struct{ id, x, y, hole, cast string }

func newTable(p plan.Plan, w *words.Catalogue, pen *sheet.Pen) *table {
	t := &table{words: w.Drawing, castHead: w.Card.Part.Cast, cast: max(numberMm, 3+font.Width(w.Card.Part.Cast, scene.Regular, pen.Paper.TextEm)), id: font.Width(w.Drawing.ID, scene.Regular, pen.Paper.TextEm)}
	for i, f := range p.Joint.Fasteners {
		r := row{id: f.ID, x: w.Figure(place(f.At.X)), y: w.Figure(place(f.At.Y))}
		if hole := holeOf(p, i); hole > 0 {
			r.hole, t.holes = w.Figure(place(hole)), true
		}
		if numbered(f) {
			r.cast, t.casts = strconv.Itoa(f.Cast), true
		}
		t.rows = append(t.rows, r)
		t.id = max(t.id, font.Width(f.ID, scene.Bold, pen.Paper.TextEm))
	}
	t.id = min(t.id, mostID)
	t.setWidths(pen.Paper.Content())
	return t
}

// setWidths uses as many columns as fit, up to the right margin: the figures
// take the remaining width.
func (t *table) setWidths(content float64) {
	figures, least := 2.0, tickSide+1.5+t.id
	if t.holes {
		figures++
	}
	if t.casts {
		least += t.cast
	}
	t.columns = max(1, int((content+between)/(least+figures*numberMm+between)))
	room := (content+between)/float64(t.columns) - between - least
	t.number = max(numberMm, room/figures)
	t.width = least + figures*t.number
}

func (t *table) lines(rows int) int { return (rows + t.columns - 1) / t.columns }

func (t *table) height(rows int) float64 {
	return headRoom + rowHeight*float64(t.lines(rows)+1)
}

// draw fills the rest of the current page, and further pages. Columns are read
// one after the other, from top to bottom.
func (t *table) draw(run *sheet.Run) {
	for rest := t.rows; len(rest) > 0; {
		run.Room(t.height(min(len(rest), 3*t.columns)))
		fit := int((run.Bottom-run.Y-headRoom)/rowHeight) - 1
		lines := min(fit, t.lines(len(rest)))
		now := min(len(rest), lines*t.columns)
		t.block(run.Pen, run.Y, rest[:now], lines)
		run.Y += t.height(now)
		rest = rest[now:]
		if len(rest) > 0 {
			run.Turn()
		}
	}
}

func (t *table) block(p *sheet.Pen, y float64, rows []row, lines int) {
	p.Write(p.Left(), y+3.4, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, font.Fit(t.words.Places, scene.Bold, p.Paper.TextEm, p.Paper.Content()))
	y += headRoom
	for column := 0; column*lines < len(rows); column++ {
		x := p.Left() + float64(column)*(t.width+between)
		t.line(p, x, y, row{t.words.ID, "x", "y", t.words.Hole, t.castHead}, scene.Black, scene.Regular)
		p.Rule(x, y+rowHeight-0.6, x+t.width, y+rowHeight-0.6, 0.25)
		at := y + rowHeight
		for _, r := range rows[column*lines : min(len(rows), (column+1)*lines)] {
			p.TickBox(x, at+0.6, tickSide)
			t.line(p, x, at, r, scene.Black, scene.Bold)
			at += rowHeight
		}
	}
}

func (t *table) line(p *sheet.Pen, x, y float64, r row, ink scene.Ink, weight scene.Weight) {
	at := x + tickSide + 1.5
	p.Write(at, y+3.2, p.Paper.TextEm, weight, scene.Start, ink, font.Fit(r.id, weight, p.Paper.TextEm, t.id))
	at += t.id
	figures := []string{r.x, r.y}
	if t.holes {
		figures = append(figures, r.hole)
	}
	for _, figure := range figures {
		at += t.number
		p.Write(at, y+3.2, p.Paper.TextEm, scene.Regular, scene.End, ink, font.Fit(figure, scene.Regular, p.Paper.TextEm, t.number-0.5))
	}
	if t.casts {
		p.Write(at+t.cast, y+3.2, p.Paper.TextEm, scene.Regular, scene.End, ink, r.cast)
	}
}
