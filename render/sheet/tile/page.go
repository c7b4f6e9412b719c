package tile

import (
	"math"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

func (g *tiling) page(row, column int) scene.Page {
	pen := &sheet.Pen{Paper: g.ask.Paper, Words: g.ask.Words}
	label := name(row, column)
	page := scene.Page{Name: g.ask.Name + "-" + strings.ToLower(label)}
	if g.rows*g.columns == 1 {
		label, page.Name = "", g.ask.Name
	}
	g.show(pen, row, column)
	g.frame.draw(pen, label, g.count() < g.rows*g.columns)
	if label != "" {
		g.marks(pen, row, column)
		g.keyPlan(pen, row, column)
	}
	page.Width, page.Height, page.Margin, page.Items = pen.Paper.Width, pen.Paper.Height, pen.Paper.Margin, pen.Items
	return page
}

func (g *tiling) show(p *sheet.Pen, row, column int) {
	w := g.window(row, column)
	by := scene.Point{X: scene.Rounded(g.frame.window.Left - w.Left), Y: scene.Rounded(g.frame.window.Top - w.Top)}
	line := func(s scene.Shape) {
		if s.Path = cut(s.Path, w); len(s.Path) > 0 {
			s.Path = s.Path.Moved(by)
			p.Add(s)
		}
	}
	for _, s := range g.drawing.Lines {
		line(s)
	}
	for i, piece := range g.drawing.Pieces {
		if !within(w, g.pieces[i]) {
			if g.cell(row, column).Meets(g.pieces[i]) {
				line(piece.Edge)
				p.Add(scene.Moved(inside(piece.Items, w), by)...)
			} else {
				line(scene.Shape{Path: piece.Edge.Path, Stroke: scene.Grey, Width: 0.15})
			}
			continue
		}
		if len(piece.Edge.Path) > 0 {
			piece.Edge.Path = piece.Edge.Path.Moved(by)
			p.Add(piece.Edge)
		}
		p.Add(scene.Moved(piece.Items, by)...)
	}
	for _, word := range g.drawing.Words {
		if within(w, word.Bounds()) {
			p.Add(scene.Moved(word.Items, by)...)
		}
	}
}

// inside returns the words that are whole in a window. They belong to a spot
// that is whole on another sheet, so here they are not numbers that need their
// mark.
func inside(items []scene.Item, w scene.Box) []scene.Item {
	var out []scene.Item
	for _, it := range items {
		if t, ok := it.(scene.Text); ok && within(w, t.Box()) {
			t.Tag.Role = scene.Furniture
			out = append(out, t)
		}
	}
	return out
}

// Widths of the marks around the window, in millimetres.
const (
	cropWidth  = 0.3
	jointWidth = 0.2
	markNear   = 1.0 // from the window to a mark
	markFar    = 4.5
)

// marks draws the crop marks at the corners of the window, and short dashed
// lines for the cut edges of the sheets to the left and above.
func (g *tiling) marks(p *sheet.Pen, row, column int) {
	w := g.frame.window
	var crops, joints scene.Path
	upright := func(path *scene.Path, x float64) {
		path.Stroke(x, w.Top-markFar, x, w.Top-markNear)
		path.Stroke(x, w.Bottom+markNear, x, w.Bottom+markFar)
	}
	flat := func(path *scene.Path, y float64) {
		path.Stroke(w.Left-3, y, w.Left-markNear, y)
		path.Stroke(w.Right+markNear, y, w.Right+markFar, y)
	}
	upright(&crops, w.Left)
	upright(&crops, w.Right)
	flat(&crops, w.Top)
	flat(&crops, w.Bottom)
	if g.printed(row, column-1) {
		upright(&joints, scene.Rounded(w.Left+g.seams.X[column-1]-g.lefts[column]))
	}
	if g.printed(row-1, column) {
		flat(&joints, scene.Rounded(w.Top+g.seams.Y[row-1]-g.tops[row]))
	}
	p.Add(scene.Shape{Path: crops, Stroke: scene.Black, Width: cropWidth})
	if len(joints) > 0 {
		p.Add(scene.Shape{Path: joints, Stroke: scene.Black, Width: jointWidth, Dash: 0.8})
	}
	g.neighbours(p, row, column)
}

func (g *tiling) neighbours(p *sheet.Pen, row, column int) {
	w := g.frame.window
	c := w.Centre()
	em, capMm := p.Paper.TextEm, p.Paper.TextEm*font.CapHeight
	write := func(row, column int, x, y float64) {
		if g.printed(row, column) {
			p.Write(x, y, em, scene.Regular, scene.Middle, scene.Black, name(row, column))
		}
	}
	write(row-1, column, c.X, w.Top-1.6)
	write(row+1, column, c.X, w.Bottom+1.6+capMm)
	aside := func(row, column int, x float64) {
		if g.printed(row, column) {
			p.Add(font.Set(scene.Text{At: scene.Point{X: x, Y: w.Top + 12}, Size: em, Anchor: scene.Middle, Ink: scene.Black, Upward: true, Content: name(row, column)}))
		}
	}
	aside(row, column-1, w.Left-1.6)
	aside(row, column+1, w.Right+1.6+capMm)
}

func (g *tiling) keyPlan(p *sheet.Pen, row, column int) {
	top := g.frame.window.Bottom + gap
	room := scene.Box{Left: p.Right() - keyWidth, Top: top, Right: p.Right(), Bottom: top + keyHeight}
	all := g.window(0, 0).Union(g.window(g.rows-1, g.columns-1))
	scale := math.Min(room.Width()/all.Width(), room.Height()/all.Height())
	to := func(q scene.Point) scene.Point {
		return scene.Point{X: room.Right - (all.Right-q.X)*scale, Y: room.Top + (q.Y-all.Top)*scale}
	}
	small := func(row, column int) scene.Box {
		corners := g.cell(row, column).Corners()
		return scene.BoxOf(to(corners[0]), to(corners[2]))
	}
	here := small(row, column).Path()
	p.Add(scene.Shape{Path: here, Fill: scene.Shade})
	g.miniature(p, room, to, scale)
	var cells, crosses scene.Path
	for r := range g.rows {
		for c := range g.columns {
			box := small(r, c)
			cells = append(cells, box.Path()...)
			if !g.holds[r][c] {
				crosses.Stroke(box.Left, box.Top, box.Right, box.Bottom)
				crosses.Stroke(box.Left, box.Bottom, box.Right, box.Top)
			}
		}
	}
	p.Add(scene.Shape{Path: cells, Stroke: scene.Black, Width: 0.2})
	if len(crosses) > 0 {
		p.Add(scene.Shape{Path: crosses, Stroke: scene.Grey, Width: 0.15})
	}
	p.Add(scene.Shape{Path: here, Stroke: scene.Black, Width: 0.6})
}

func (g *tiling) miniature(p *sheet.Pen, room scene.Box, to func(scene.Point) scene.Point, scale float64) {
	var lines scene.Path
	for _, s := range g.drawing.Lines {
		lines = append(lines, s.Path.Mapped(to)...)
	}
	if len(lines) > 0 {
		p.Add(scene.Shape{Path: lines, Stroke: scene.Grey, Width: 0.12})
	}
	var dots scene.Path
	for _, b := range g.pieces {
		radius := math.Max(0.3, math.Min(b.Width(), b.Height())*scale/4)
		c := room.Grown(-radius).Nearest(to(b.Centre())) // a part of many sheets is small here
		dots = append(dots, scene.Circle(c.X, c.Y, radius)...)
	}
	if len(dots) > 0 {
		p.Add(scene.Shape{Path: dots, Fill: scene.Black})
	}
}
