package tile

import (
	"iter"
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

type tiling struct {
	drawing       Contents
	ask           Sheets
	frame         frame
	bounds        scene.Box // of the drawing, with a margin
	pieces        []scene.Box
	rows, columns int
	seams         Seams     // right and lower edges of all windows but the last
	lefts, tops   []float64 // origins of the windows
	holds         [][]bool  // whether something is on the sheet
}

const (
	air          = 2.0  // around the drawing
	leastOverlap = 12.0 // of two sheets: space for glue or tape
	mostDrawn    = 4    // how often a drawing is redrawn to place its words beside the seams
)

// best uses portrait or landscape sheets, whichever takes fewer.
func best(draw func(Seams) Contents, ask Sheets) (*tiling, error) {
	d := draw(Seams{})
	upright, err := laid(d, draw, ask)
	if ask.Paper.Wide() {
		return upright, err
	}
	aside, asideErr := laid(d, draw, turned(ask))
	if err != nil || asideErr == nil && aside.count() < upright.count() {
		return aside, asideErr
	}
	return upright, nil
}

// laid uses one sheet if that is enough; it needs no joining instructions.
func laid(d Contents, draw func(Seams) Contents, ask Sheets) (*tiling, error) {
	if onOneSheet(d, ask) {
		return newTiling(d, ask, false)
	}
	g, err := newTiling(d, ask, true)
	for range mostDrawn {
		if err != nil || len(g.seams.spoilt(g.drawing)) == 0 && !g.seams.anyWord(g.drawing) {
			break
		}
		d := draw(g.seams)
		if g.covers(d) {
			g = g.with(d)
			break
		}
		g, err = newTiling(d, ask, true)
	}
	return g, err
}

func onOneSheet(d Contents, ask Sheets) bool {
	b, w := d.Bounds().Grown(air), newFrame(ask, false).window
	return b.Width() <= w.Width() && b.Height() <= w.Height()
}

func newTiling(d Contents, ask Sheets, joined bool) (*tiling, error) {
	g := &tiling{ask: ask, frame: newFrame(ask, joined), bounds: d.Bounds().Grown(air)}
	w := g.frame.window
	stopsAcross, stopsDown := d.stops()
	// First check for a part with too many sheets, which nobody would join.
	least := func(low, high, window float64) float64 {
		return axis{low: low, high: high, window: window}.sheets(leastOverlap)
	}
	if n := least(g.bounds.Left, g.bounds.Right, w.Width()) * least(g.bounds.Top, g.bounds.Bottom, w.Height()); n > MostSheets {
		return nil, g.tooMany(n)
	}
	across := newAxis(g.bounds.Left, g.bounds.Right, w.Width(), stopsAcross)
	down := newAxis(g.bounds.Top, g.bounds.Bottom, w.Height(), stopsDown)
	g.seams = Seams{X: across.cuts(), Y: down.cuts()}
	g.lefts, g.tops = across.starts(g.seams.X), down.starts(g.seams.Y)
	g.columns, g.rows = len(g.lefts), len(g.tops)
	if n := g.columns * g.rows; n > MostSheets {
		return nil, g.tooMany(float64(n))
	}
	return g.with(d), nil
}

func (g *tiling) tooMany(sheets float64) error {
	return finding.Failed(sheet.TooManySheets, finding.Values{
		"width": g.bounds.Width() * g.ask.Reduced, "height": g.bounds.Height() * g.ask.Reduced, "sheets": sheets, "paper": g.ask.Paper.Name, "most": MostSheets,
	})
}

func (g *tiling) covers(d Contents) bool {
	return g.window(0, 0).Union(g.window(g.rows-1, g.columns-1)).Holds(d.Bounds())
}

// with returns the same sheets for a drawing that differs only in its words.
func (g *tiling) with(d Contents) *tiling {
	next := *g
	next.drawing, next.pieces = d, nil
	for _, p := range d.Pieces {
		next.pieces = append(next.pieces, p.Bounds())
	}
	next.look()
	return &next
}

func (g *tiling) window(row, column int) scene.Box {
	w := g.frame.window
	left, top := g.lefts[column], g.tops[row]
	return scene.Box{Left: left, Top: top, Right: left + w.Width(), Bottom: top + w.Height()}
}

// cell is the visible part of a sheet once all are laid: its window without
// what the sheets to the left and above cover.
func (g *tiling) cell(row, column int) scene.Box {
	w := g.window(row, column)
	if column > 0 {
		w.Left = g.seams.X[column-1]
	}
	if row > 0 {
		w.Top = g.seams.Y[row-1]
	}
	return w
}

func (g *tiling) look() {
	g.holds = make([][]bool, g.rows)
	for row := range g.rows {
		g.holds[row] = make([]bool, g.columns)
		for column := range g.columns {
			w := g.cell(row, column)
			g.holds[row][column] = slices.ContainsFunc(g.pieces, w.Meets) ||
				slices.ContainsFunc(g.drawing.Lines, func(s scene.Shape) bool { return len(cut(s.Path, w)) > 0 }) ||
				slices.ContainsFunc(g.drawing.Words, func(p Piece) bool { return w.Meets(p.Bounds()) })
		}
	}
}

func (g *tiling) sheets() iter.Seq2[int, int] {
	return func(yield func(row, column int) bool) {
		for row := range g.rows {
			for column := range g.columns {
				if g.holds[row][column] && !yield(row, column) {
					return
				}
			}
		}
	}
}

func (g *tiling) count() int {
	n := 0
	for range g.sheets() {
		n++
	}
	return n
}

func (g *tiling) printed(row, column int) bool {
	return row >= 0 && row < g.rows && column >= 0 && column < g.columns && g.holds[row][column]
}

// whole reports whether a box is whole in the window of a printed sheet, or in
// its cell.
func (g *tiling) whole(b scene.Box, in func(row, column int) scene.Box) bool {
	for row, column := range g.sheets() {
		if within(in(row, column), b) {
			return true
		}
	}
	return false
}

// within allows for rounded coordinates.
func within(w, b scene.Box) bool { return w.Grown(0.005).Holds(b) }

// say words what did not fit.
func (g *tiling) say(code finding.Code, values finding.Values) string {
	values["paper"] = g.ask.Paper.Name
	return g.ask.Words.Say(finding.Warned(code, values))
}

func (g *tiling) broken() []string {
	var notes []string
	for i, b := range g.pieces {
		if !g.whole(b, g.window) {
			notes = append(notes, g.say(sheet.PieceTooLarge, finding.Values{"name": g.drawing.Pieces[i].Name}))
		}
	}
	for _, name := range g.seams.spoilt(g.drawing) {
		notes = append(notes, g.say(sheet.WordsCut, finding.Values{"name": name}))
	}
	return notes
}

// settleWords moves the words that a seam would cut onto the nearest sheet with
// space, and reports those that do not fit.
func (g *tiling) settleWords() []string {
	var notes []string
	words := g.drawing.Words
	g.drawing.Words = append([]Piece(nil), words...)
	for k := 0; k < len(g.drawing.Words); {
		word := g.drawing.Words[k]
		if b := word.Bounds(); !g.whole(b, g.cell) {
			by, ok := g.shift(b)
			if !ok {
				notes = append(notes, g.say(sheet.WordsNoRoom, finding.Values{"words": word.Name}))
				g.drawing.Words = append(g.drawing.Words[:k], g.drawing.Words[k+1:]...)
				continue
			}
			g.drawing.Words[k] = word.Moved(by)
		}
		k++
	}
	return notes
}

// shift returns the shortest move after which a box is whole on a sheet, clear
// of pieces and other words.
func (g *tiling) shift(b scene.Box) (by scene.Point, ok bool) {
	shortest := math.Inf(1)
	for row, column := range g.sheets() {
		c := g.cell(row, column).Grown(-seamAir)
		if c.Width() < b.Width() || c.Height() < b.Height() {
			continue
		}
		near := scene.Point{
			X: scene.Rounded(math.Max(0, c.Left-b.Left) - math.Max(0, b.Right-c.Right)),
			Y: scene.Rounded(math.Max(0, c.Top-b.Top) - math.Max(0, b.Bottom-c.Bottom)),
		}
		for _, step := range asides {
			p := scene.Point{X: near.X + step.X, Y: near.Y + step.Y}
			far := math.Hypot(p.X, p.Y)
			if there := b.Moved(p); far < shortest && c.Grown(0.005).Holds(there) && g.free(there, b) {
				by, ok, shortest = p, true, far
			}
		}
	}
	return by, ok
}

// asides are further moves for a word whose place on a sheet is not free.
var asides = func() []scene.Point {
	var all []scene.Point
	for y := -40.0; y <= 40; y += 4 {
		for x := -40.0; x <= 40; x += 4 {
			all = append(all, scene.Point{X: x, Y: y})
		}
	}
	return all
}()

func (g *tiling) free(b, self scene.Box) bool {
	return !slices.ContainsFunc(g.pieces, b.Meets) && !slices.ContainsFunc(g.drawing.Words, func(p Piece) bool {
		other := p.Bounds()
		return other != self && b.Meets(other)
	})
}
