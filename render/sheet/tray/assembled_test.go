package tray_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/sheet/tray"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// laidSheet is a printed sheet, cut at its crop marks and laid on the others.
type laidSheet struct {
	row, column int
	window      scene.Box   // between its crop marks, on the page
	by          scene.Point // from the page to its final position
	page        scene.Page
}

func (s laidSheet) lying() scene.Box {
	return scene.Box{Left: s.window.Left + s.by.X, Top: s.window.Top + s.by.Y, Right: s.window.Right + s.by.X, Bottom: s.window.Bottom + s.by.Y}
}

// assemble follows the instructions on the sheets: each is cut at its right and
// lower crop marks if a sheet follows, and the cut is laid on the dashed marks
// of that sheet. It reads only the marks and the names of the pages.
func assemble(t *testing.T, pages []scene.Page) []laidSheet {
	t.Helper()
	var sheets []laidSheet
	if len(pages) == 1 {
		p := pages[0]
		return []laidSheet{{window: scene.Box{Right: p.Width, Bottom: p.Height}, page: p}}
	}
	var joints []marks
	for _, page := range pages {
		name := strings.TrimPrefix(page.Name, "tray-")
		s := laidSheet{row: int(name[0] - 'a'), page: page}
		s.column, _ = strconv.Atoi(name[1:])
		crops := sheetMarks(page, 0.3, 0)
		s.window = scene.Box{Left: crops.upright[0], Right: crops.upright[len(crops.upright)-1], Top: crops.flat[0], Bottom: crops.flat[len(crops.flat)-1]}
		sheets, joints = append(sheets, s), append(joints, sheetMarks(page, 0.2, 0.8))
	}
	// Sheets of a column are below one another, those of a row beside one
	// another, so that one mark is enough for all of them.
	byX, byY := map[int]float64{}, map[int]float64{}
	for n := range mostInARow {
		for k, s := range sheets {
			if len(joints[k].upright) > 0 && s.column == n {
				byX[n] = s.window.Right + byX[n-1] - joints[k].upright[0]
			}
			if len(joints[k].flat) > 0 && s.row == n {
				byY[n] = s.window.Bottom + byY[n-1] - joints[k].flat[0]
			}
		}
	}
	for k := range sheets {
		sheets[k].by = scene.Point{X: byX[sheets[k].column], Y: byY[sheets[k].row]}
	}
	return sheets
}

// mostInARow is more sheets than any of these trays has in a row or a column.
const mostInARow = 60

func sheetMarks(page scene.Page, width, dash float64) marks {
	var p printed
	for _, it := range page.Items {
		if s, ok := it.(scene.Shape); ok && (s.Tag.Name == "" || s.Tag.Role == scene.Spot) && s.Stroke == scene.Black {
			var points []scene.Point
			for _, seg := range s.Path {
				points = append(points, seg.P[0])
			}
			p.paths = append(p.paths, path{s.Width, s.Dash, points})
		}
	}
	return p.marks(width, dash)
}

// over returns the sheet visible at a point: those to the left and above are on
// top.
func over(sheets []laidSheet, at scene.Point) *laidSheet {
	for k := range sheets { // in page order: by rows, then by columns
		// A point exactly at the cut is not covered: positions are whole
		// hundredths.
		if sheets[k].lying().Grown(-0.01).Contains(at) {
			return &sheets[k]
		}
	}
	return nil
}

// seenWhole reports whether a box is completely visible on that sheet.
func (s laidSheet) seenWhole(sheets []laidSheet, b scene.Box) bool {
	if !s.lying().Grown(0.01).Holds(b) {
		return false
	}
	for k := range sheets {
		if sheets[k].page.Name == s.page.Name {
			return true
		}
		if sheets[k].lying().Meets(b) {
			return false
		}
	}
	return false
}

// readable lists the words that are completely visible once the sheets are
// laid, by the thing they belong to; words on the part belong to none.
func readable(sheets []laidSheet) map[string][]string {
	found := map[string][]string{}
	for _, s := range sheets {
		for _, it := range s.page.Items {
			text, ok := it.(scene.Text)
			if !ok || !s.window.Holds(text.Box()) {
				continue
			}
			b := text.Box()
			b = scene.Box{Left: b.Left + s.by.X, Top: b.Top + s.by.Y, Right: b.Right + s.by.X, Bottom: b.Bottom + s.by.Y}
			if s.seenWhole(sheets, b) {
				of := text.Tag.Name
				if text.Tag.Role == scene.Label { // the name of a cap is on the part
					of = ""
				}
				found[of] = append(found[of], text.Content)
			}
		}
	}
	return found
}

// checkAssembled assembles the sheets of a tray, and checks that nothing needed
// is covered or cut: numbers, ids, labels, and the edges of the spots. Words
// listed in the notes may be missing.
func checkAssembled(t *testing.T, p plan.Plan, style tray.Style, ask sheet.Request, labels []string) {
	t.Helper()
	document, notes, err := tray.Document(p, style, ask)
	if err != nil {
		t.Fatal(err)
	}
	where := fmt.Sprintf("%s on %s, %g wide", p.Title, ask.Paper.Name, ask.Paper.Width)
	sheets := assemble(t, document.Pages)
	told := strings.Join(notes, "\n")
	missing := func(name, content string) {
		if !strings.Contains(told, content) {
			t.Errorf("%s: %q of %s is covered, cut or missing; notes %q", where, content, name, notes)
		}
	}
	found := readable(sheets)
	loosen, tighten := p.Called(p.Loosen), p.Tighten.Numbers()
	for i, f := range p.Joint.Fasteners {
		for _, want := range []string{strconv.Itoa(loosen[i]), fmt.Sprintf("%s (%d)", f.ID, tighten[i])} {
			if !slices.ContainsFunc(found[f.ID], func(s string) bool { return strings.HasSuffix(s, want) }) {
				missing(f.ID, want)
			}
		}
	}
	for _, s := range p.Joint.Stations {
		if want := s.Label; want != "" && !slices.Contains(found["station "+s.ID], want) {
			missing(s.ID, want)
		}
	}
	for _, want := range labels {
		if !slices.Contains(found[""], want) {
			missing("the part", want)
		}
	}
	checkEdges(t, where, sheets)
}

// checkEdges follows the edge of every spot over the laid sheets: the sheet on
// top must show it.
func checkEdges(t *testing.T, where string, sheets []laidSheet) {
	t.Helper()
	on := make(map[string]map[string][][]scene.Point) // by sheet, by spot
	whole := map[string][]scene.Point{}
	for _, s := range sheets {
		on[s.page.Name] = map[string][][]scene.Point{}
		for _, it := range s.page.Items {
			shape, ok := it.(scene.Shape)
			if !ok || shape.Tag.Role != scene.Mark {
				continue
			}
			runs := shape.Path.Flatten()
			for _, run := range runs {
				for k := range run {
					run[k].X, run[k].Y = run[k].X+s.by.X, run[k].Y+s.by.Y
				}
			}
			on[s.page.Name][shape.Tag.Name] = runs
			// A spot that is whole is the longest of those with its name.
			if points := along(runs); len(points) > len(whole[shape.Tag.Name]) {
				whole[shape.Tag.Name] = points
			}
		}
	}
	for name, points := range whole {
		for _, q := range points {
			top := over(sheets, q)
			if top == nil {
				t.Errorf("%s: the spot %s reaches beyond the sheets", where, name)
				break
			}
			if far := nearestLine(on[top.page.Name][name], q); far > 0.1 {
				t.Errorf("%s: sheet %s covers the edge of %s at %.1f, %.2f away from its own; it lies on %.1f", where, top.page.Name, name, q, far, top.lying())
				break
			}
		}
	}
}

// along returns points every millimetre along some lines.
func along(runs [][]scene.Point) []scene.Point {
	var points []scene.Point
	for _, run := range runs {
		for k := 1; k < len(run); k++ {
			a, b := run[k-1], run[k]
			n := max(1, math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)))
			for i := range int(n) {
				f := (float64(i) + 0.5) / n
				points = append(points, scene.Point{X: a.X + f*(b.X-a.X), Y: a.Y + f*(b.Y-a.Y)})
			}
		}
	}
	return points
}

func nearestLine(runs [][]scene.Point, q scene.Point) float64 {
	least := math.Inf(1)
	for _, run := range runs {
		for k := 1; k < len(run); k++ {
			a, b := run[k-1], run[k]
			dx, dy := b.X-a.X, b.Y-a.Y
			f := 0.0
			if l := dx*dx + dy*dy; l > 0 {
				f = max(0, min(1, ((q.X-a.X)*dx+(q.Y-a.Y)*dy)/l))
			}
			least = math.Min(least, math.Hypot(q.X-a.X-f*dx, q.Y-a.Y-f*dy))
		}
	}
	return least
}

func labelsOf(p plan.Plan, w *words.Catalogue) []string {
	labels := []string{w.Sheet.Front}
	if p.Joint.Front == "" {
		labels[0] = w.Tile.Top
	}
	for _, b := range p.Joint.Bores {
		if b.Label != "" {
			labels = append(labels, b.Label)
		}
	}
	for _, l := range p.Joint.Labels {
		labels = append(labels, l.Text)
	}
	for _, c := range p.Joint.Clusters {
		labels = append(labels, c.Name)
	}
	return labels
}

// Every built-in pattern on every paper, in portrait and landscape, from above
// and from below: once the sheets are cut and laid as instructed, everything is
// visible at its place (first principles: what is on top covers what is below).
func TestNothingIsCovered(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, upright := range sheet.Papers {
			for _, paper := range []sheet.Paper{upright, upright.Landscape()} {
				for _, underside := range []bool{false, true} {
					checkAssembled(t, p, tray.Style{Underside: underside}, sheet.Request{Paper: paper, Words: words.English()}, labelsOf(p, words.English()))
				}
			}
		}
	}
}

// The same for generated patterns.
func TestNothingIsCoveredOfGenerated(t *testing.T) {
	t.Parallel()
	for seed := range testkit.Samples(16, 120) {
		p := planOf(t, patterntest.Generated(uint64(seed)))
		for _, paper := range papersFor(seed) {
			checkAssembled(t, p, tray.Style{}, sheettest.English(paper), labelsOf(p, words.English()))
		}
	}
}
