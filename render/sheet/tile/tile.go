// Package tile prints a drawing that is larger than the paper at true size,
// over several sheets with an overlap, crop marks, check bars and a key plan.
// It knows nothing of bolts. A drawing consists of lines, which are cut at the
// edge of a sheet, and pieces, which are whole on at least one sheet. It may
// import scene, font, words and what sheets share.
package tile

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// Contents is what to print, in millimetres on paper, y downwards. Its origin
// does not matter.
type Contents struct {
	Lines  []scene.Shape // without a fill; cut at the end of a sheet
	Pieces []Piece
	Words  []Piece  // moved slightly if a seam would cut them
	NoRoom []string // what did not fit
	// Nameless counts the pieces in NoRoom whose own number or name is missing.
	Nameless int
	// Beside lists boxes that cuts should avoid if possible.
	Beside []scene.Box
}

// Piece is a unit: a spot with its words. Cuts go beside it if possible.
// Otherwise the sheet below shows it whole, and the sheet above the part of it
// on its side of the cut. A sheet on which it is covered by another shows only
// a thin edge, as a help for joining.
type Piece struct {
	Name  string
	Edge  scene.Shape // empty for a word
	Items []scene.Item
}

// Bounds is the bounding box of the piece.
func (p Piece) Bounds() scene.Box {
	return scene.Bounds(p.Items).Union(p.Edge.Path.Bounds())
}

// Bounds is the extent of the drawing.
func (d Contents) Bounds() scene.Box {
	b := scene.NoBox
	for _, s := range d.Lines {
		b = b.Union(s.Path.Bounds())
	}
	for _, p := range slices.Concat(d.Pieces, d.Words) {
		b = b.Union(p.Bounds())
	}
	return b
}

// Sheets describes the sheets to print on, and what is on each of them.
// Portrait paper is turned to landscape if that takes fewer sheets; landscape
// paper is not turned.
type Sheets struct {
	sheet.Request
	Name     string // of the pages, in file names
	Title    string
	Kind     string   // name of the sheet, which follows its title in the bookmark
	Subtitle string   // kind of sheet, and which print
	Legend   []string // how to read it
	// Reduced is the number of millimetres of the part per millimetre on paper;
	// 1 for true size.
	Reduced float64
}

const (
	MostSheets = 200  // more than anyone would join
	flatness   = 0.01 // largest deviation of a cut curve from the exact one, in millimetres: a tenth of the accuracy of a sheet
)

// Join prints a drawing. The pages do not have their count yet. The drawing is
// made first without seams, and again if seams would run through its words,
// which are then placed beside them. The notes say which sheets are left out
// because they are empty, and what is whole on none.
func Join(draw func(Seams) Contents, ask Sheets) (pages []scene.Page, notes []string, printed Contents, err error) {
	g, err := best(draw, ask)
	if err != nil {
		return nil, nil, Contents{}, err
	}
	notes = g.settleWords()
	for row := range g.rows {
		for column := range g.columns {
			if !g.holds[row][column] {
				notes = append(notes, g.say(sheet.EmptySheet, finding.Values{"name": name(row, column)}))
				continue
			}
			pages = append(pages, g.page(row, column))
		}
	}
	if len(pages) > 0 {
		pages[0].Bookmarks = []scene.Bookmark{{Title: fmt.Sprintf(ask.Words.Sheet.Named, ask.Title, ask.Kind)}}
	}
	return pages, append(notes, g.broken()...), g.drawing, nil
}

// Fit returns the reduction at which the drawing of a part fits on one sheet,
// in millimetres of the part per millimetre on paper: 1 if it fits, otherwise
// in tenths. The drawing is made again for each reduction, because words do not
// shrink.
func Fit(draw func(reduced float64) Contents, ask Sheets) float64 {
	ask.Reduced = 1
	d := draw(1)
	if onOne(d, ask) {
		return 1
	}
	// Words do not shrink, so this is never too much.
	reduced := math.Min(over(d, ask), over(d, turned(ask)))
	for ask.Reduced < 1e6 {
		ask.Reduced = math.Floor(reduced*10) / 10
		if ask.Reduced > 1 && onOne(draw(ask.Reduced), ask) {
			break
		}
		reduced = math.Max(reduced*1.03, reduced+0.1)
	}
	return ask.Reduced
}

func onOne(d Contents, ask Sheets) bool {
	return onOneSheet(d, ask) || !ask.Paper.Wide() && onOneSheet(d, turned(ask))
}

func over(d Contents, ask Sheets) float64 {
	b, w := d.Bounds(), newFrame(ask, false).window
	return math.Max(b.Width()/w.Width(), b.Height()/w.Height())
}

func turned(ask Sheets) Sheets {
	ask.Paper = ask.Paper.Landscape()
	return ask
}

// name names a sheet as on a map: a letter for the row, a number for the
// column.
func name(row, column int) string {
	letters := ""
	for n := row + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, column+1)
}

// cut returns the part of a path inside the box. A path completely inside is
// not changed. In others, curves are replaced by straight lines that deviate by
// at most flatness.
func cut(path scene.Path, box scene.Box) scene.Path {
	around := path.Bounds()
	switch {
	case box.Holds(around):
		return path
	case !box.Grown(0.001).Meets(around.Grown(0.001)):
		return nil
	}
	var out scene.Path
	for _, run := range path.FlattenTo(flatness) {
		var last scene.Point
		open := false
		for k := 1; k < len(run); k++ {
			a, b, ok := box.Clipped(run[k-1], run[k])
			if !ok {
				open = false
				continue
			}
			if !open || a != last {
				out.MoveTo(a.X, a.Y)
			}
			out.LineTo(b.X, b.Y)
			last, open = b, true
		}
	}
	return out
}

// Moved returns the piece at another position.
func (p Piece) Moved(by scene.Point) Piece {
	p.Edge.Path, p.Items = p.Edge.Path.Moved(by), scene.Moved(p.Items, by)
	return p
}
