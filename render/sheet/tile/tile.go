// Package tile prints a drawing that is larger than the paper at true size:
// over several sheets with an overlap, crop marks, check bars and a key plan.
// It knows nothing of bolts: a drawing is lines, which are cut at the edge of a
// sheet, and pieces, which are whole on at least one sheet. It may import
// scenes, type, words and what sheets share.
package tile

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// Contents is what to print, in millimetres of paper, y downwards. Where it lies
// does not matter.
type Contents struct {
	Lines  []scene.Shape // without a fill; cut where a sheet ends
	Pieces []Piece
	Words  []Piece  // moved a little where a joint of the sheets would cut them
	NoRoom []string // what found no room in it
	// Nameless counts the pieces whose own number, or name, is among that.
	Nameless int
	// Beside lists what the sheets are rather not cut through, though it loses
	// nothing by it.
	Beside []scene.Box
}

// Piece belongs together: a spot with its words. The sheets are cut beside it
// where that can be. Where not, the sheet below shows it whole and the sheet
// above all of it that lies on that side of the cut. A sheet that holds a part
// of it under another sheet shows the edge alone, thin, as a help to join them.
type Piece struct {
	Name  string
	Edge  scene.Shape // none for a word
	Items []scene.Item
}

// Bounds is the room that the piece takes.
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

// Sheets says on what sheets to print, and what stands on each of them. Paper is
// laid on its side where that takes fewer sheets; it stays so where it lies so.
type Sheets struct {
	sheet.Request
	Name     string // of the pages, in file names
	Title    string
	Kind     string   // names the sheet: its title and this stand in the bookmark
	Subtitle string   // what the sheet is, and which print of it
	Legend   []string // how to read it
	// Reduced is how many millimetres of the part are one of the paper; 1 for
	// the true size.
	Reduced float64
}

const (
	MostSheets = 200  // more than anyone joins
	flatness   = 0.01 // how far a cut curve may lie from the true one, in millimetres: a tenth of what a sheet promises
)

// Join prints a drawing; the pages lack their count. It is drawn first without
// seams, and again where the joints of the sheets would run through its words,
// which then stand beside them. The notes tell which sheets are left out because
// nothing is on them, and what is whole on none.
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

// Fit returns how many millimetres of a part must be one of the paper so that
// its drawing goes on one sheet: 1 where it fits as it is, else in tenths. The
// drawing is made anew for every reduction, since words do not shrink.
func Fit(draw func(reduced float64) Contents, ask Sheets) float64 {
	ask.Reduced = 1
	d := draw(1)
	if onOne(d, ask) {
		return 1
	}
	// Words do not shrink, so that this is never too much.
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

// name names a sheet as a map does: the row by a letter, the column by a number.
func name(row, column int) string {
	letters := ""
	for n := row + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, column+1)
}

// cut returns the part of a path's line that lies in the box. A path that lies
// in it altogether stays as it is, curves and all; of others the curves become
// runs of straight lines that leave them by no more than flatness.
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

// Moved returns the piece at another place.
func (p Piece) Moved(by scene.Point) Piece {
	p.Edge.Path, p.Items = p.Edge.Path.Moved(by), scene.Moved(p.Items, by)
	return p
}
