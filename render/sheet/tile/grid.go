package tile

import (
	"fmt"
	"math"

	"drawdown/render/scene"
)

// grid is how the sheets lie on the drawing.
type grid struct {
	drawing       Drawing
	ask           Request
	frame         frame
	bounds        scene.Box // of the drawing, with air
	pieces        []scene.Box
	rows, columns int
	stepX, stepY  float64 // from sheet to sheet
	from          scene.Point
	holds         [][]bool // whether something is on the sheet
}

const (
	air          = 2.0  // round the drawing
	leastOverlap = 12.0 // of two sheets: room for glue or tape
)

// best lays the sheets upright or on their sides, whichever takes fewer.
func best(d Drawing, ask Request) (*grid, error) {
	upright, err := laid(d, ask)
	if ask.Paper.Width > ask.Paper.Height {
		return upright, err
	}
	aside, asideErr := laid(d, turned(ask))
	if err != nil || asideErr == nil && aside.count() < upright.count() {
		return aside, asideErr
	}
	return upright, nil
}

// laid takes one sheet where that is enough; it needs no words on joining.
func laid(d Drawing, ask Request) (*grid, error) {
	if g, err := newGrid(d, ask, false); err == nil && g.rows*g.columns == 1 {
		return g, nil
	}
	return newGrid(d, ask, true)
}

func newGrid(d Drawing, ask Request, joined bool) (*grid, error) {
	g := &grid{drawing: d, ask: ask, frame: newFrame(ask, joined), bounds: d.Bounds().Grown(air)}
	wide, high := leastOverlap, leastOverlap
	for _, p := range d.Pieces {
		b := p.Bounds()
		g.pieces = append(g.pieces, b)
		wide, high = math.Max(wide, b.Width()+0.1), math.Max(high, b.Height()+0.1)
	}
	w := g.frame.window
	columns, stepX := spread(g.bounds.Width(), w.Width(), wide)
	rows, stepY := spread(g.bounds.Height(), w.Height(), high)
	if columns*rows > MostSheets {
		return nil, fmt.Errorf("the part of %.0f × %.0f mm takes %.0f sheets of %s at its true size; allowed: up to %d; take larger paper, or reduce it to one page",
			g.bounds.Width()*ask.Reduced, g.bounds.Height()*ask.Reduced, columns*rows, ask.Paper.Name, MostSheets)
	}
	g.columns, g.rows, g.stepX, g.stepY = int(columns), int(rows), stepX, stepY
	// The sheets as a whole lie evenly about the drawing.
	g.from = scene.Point{
		X: scene.Rounded(g.bounds.Centre().X - (w.Width()+stepX*(columns-1))/2),
		Y: scene.Rounded(g.bounds.Centre().Y - (w.Height()+stepY*(rows-1))/2),
	}
	g.look()
	return g, nil
}

// spread tells how many windows cover an extent with at least that overlap, and
// how far one lies from the next.
func spread(extent, window, overlap float64) (count, step float64) {
	overlap = math.Min(overlap, 0.7*window) // a larger piece is whole on no sheet, and named
	if extent <= window {
		return 1, 0
	}
	count = math.Ceil((extent - overlap) / (window - overlap))
	return count, scene.Rounded((extent - window) / (count - 1))
}

// window is what of the drawing the sheet shows.
func (g *grid) window(row, column int) scene.Box {
	w := g.frame.window
	left, top := g.from.X+g.stepX*float64(column), g.from.Y+g.stepY*float64(row)
	return scene.Box{Left: left, Top: top, Right: left + w.Width(), Bottom: top + w.Height()}
}

// look finds out which sheets hold something.
func (g *grid) look() {
	g.holds = make([][]bool, g.rows)
	for row := range g.rows {
		g.holds[row] = make([]bool, g.columns)
		for column := range g.columns {
			g.holds[row][column] = g.something(g.window(row, column))
		}
	}
}

func (g *grid) something(w scene.Box) bool {
	for _, b := range g.pieces {
		if w.Meets(b) {
			return true
		}
	}
	for _, s := range g.drawing.Lines {
		if len(cut(s.Path, w)) > 0 {
			return true
		}
	}
	for _, p := range g.drawing.Words {
		if w.Contains(p.Bounds().Centre()) {
			return true
		}
	}
	return false
}

// count is the number of sheets that are printed.
func (g *grid) count() int {
	n := 0
	for _, row := range g.holds {
		for _, holds := range row {
			if holds {
				n++
			}
		}
	}
	return n
}

// printed says whether there is such a sheet.
func (g *grid) printed(row, column int) bool {
	return row >= 0 && row < g.rows && column >= 0 && column < g.columns && g.holds[row][column]
}

// whole says whether a box is whole on some sheet that is printed.
func (g *grid) whole(b scene.Box) bool {
	for row := range g.rows {
		for column := range g.columns {
			if g.holds[row][column] && within(g.window(row, column), b) {
				return true
			}
		}
	}
	return false
}

// within allows for the rounding of coordinates.
func within(w, b scene.Box) bool { return w.Grown(0.005).Holds(b) }

// broken names the pieces that no sheet holds whole.
func (g *grid) broken() []string {
	var notes []string
	for i, b := range g.pieces {
		if !g.whole(b) {
			notes = append(notes, fmt.Sprintf("%s is larger than a sheet of %s and is whole on none", g.drawing.Pieces[i].Name, g.ask.Paper.Name))
		}
	}
	return notes
}

// settleWords moves the words that a joint of the sheets would cut onto the
// sheet that holds their middle, and names those that find no room there.
func (g *grid) settleWords() []string {
	var notes []string
	var kept []Piece
	for _, word := range g.drawing.Words {
		b := word.Bounds()
		if !g.whole(b) {
			by, ok := g.shift(b)
			if !ok {
				notes = append(notes, fmt.Sprintf("the words %q found no room on a sheet of %s", word.Name, g.ask.Paper.Name))
				continue
			}
			word = moved(word, by)
		}
		kept = append(kept, word)
	}
	g.drawing.Words = kept
	return notes
}

// shift gives the way by which a box comes to lie whole on a sheet, free of
// pieces and other words.
func (g *grid) shift(b scene.Box) (by scene.Point, ok bool) {
	for row := range g.rows {
		for column := range g.columns {
			w := g.window(row, column)
			if !g.holds[row][column] || !w.Contains(b.Centre()) || w.Width() < b.Width() {
				continue
			}
			by := scene.Point{
				X: scene.Rounded(math.Max(0, w.Left+0.05-b.Left) - math.Max(0, b.Right-w.Right+0.05)),
				Y: scene.Rounded(math.Max(0, w.Top+0.05-b.Top) - math.Max(0, b.Bottom-w.Bottom+0.05)),
			}
			if g.free(at(b, by), b) {
				return by, true
			}
		}
	}
	return scene.Point{}, false
}

func (g *grid) free(b, self scene.Box) bool {
	for _, other := range g.pieces {
		if b.Meets(other) {
			return false
		}
	}
	for _, p := range g.drawing.Words {
		if other := p.Bounds(); other != self && b.Meets(other) {
			return false
		}
	}
	return true
}

func at(b scene.Box, by scene.Point) scene.Box {
	return scene.Box{Left: b.Left + by.X, Top: b.Top + by.Y, Right: b.Right + by.X, Bottom: b.Bottom + by.Y}
}
