package condition_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/condition"
	"drawdown/render/sheet/lettered"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// documentOf lays out the sheet of a plan with nothing seen yet.
func documentOf(p plan.Plan, ask sheet.Request) (scene.Document, []string) {
	return condition.Document(p, nil, time.UTC, ask)
}

// sheets lays out the sheet on every paper, in portrait and landscape, in every
// language, and reports every layout fault. A plain run uses some in turn.
func sheets(t *testing.T, p plan.Plan, turn int, use func(scene.Document, []string, sheet.Paper, *words.Catalogue)) {
	t.Helper()
	for _, ask := range sheettest.Requests(turn) {
		document, notes := documentOf(p, ask)
		sheettest.Check(t, p.Title, ask, document.Pages)
		use(document, notes, ask.Paper, ask.Words)
	}
}

// Every built-in pattern: no fault, no note, nothing under 2 mm, and the pages
// end with rows or tables above the fields to sign.
func TestBuiltinLayouts(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		sheets(t, p, n, func(document scene.Document, notes []string, paper sheet.Paper, language *words.Catalogue) {
			if len(notes) > 0 {
				t.Errorf("%s on %s: %q", name, paper.Name, notes)
			}
			for _, text := range scenetest.Texts(document.Pages...) {
				if text.Size*font.CapHeight < 2 {
					t.Errorf("%s: %q is %.2f mm high", name, text.Content, text.Size*font.CapHeight)
				}
			}
			for _, page := range document.Pages[1:] {
				if boxes(page.Items) == 0 && !strings.Contains(scenetest.Said(page), language.Condition.Measured) {
					t.Errorf("%s on %s in %s: page %s has no row", name, paper.Name, language.Language, page.Name)
				}
			}
		})
	}
}

// boxes counts the boxes of the table: 4.5 mm, less where the rows are low.
func boxes(items []scene.Item) int {
	n := 0
	for _, it := range items {
		if s, ok := it.(scene.Shape); ok && s.Width == 0.3 && len(s.Path) <= 5 { // not a round mark of the drawing
			if b := s.Path.Bounds(); near(b.Width(), b.Height()) && b.Width() > 3.8 && b.Width() < 4.6 {
				n++
			}
		}
	}
	return n
}

func near(a, b float64) bool { return a-b < 0.011 && b-a < 0.011 }

// Every number of fasteners from 2 to 60, so that the last rows are at every
// position on a page. A plain run uses one paper for each number, in turn.
func TestEveryCount(t *testing.T) {
	for n := 2; n <= 60; n++ {
		p := planOf(t, fmt.Sprintf(`drawdown: 1
title: Plate
kinds: {a kind with a long name: {thread: 1/2-13 UNC, length: 2.5 in, reuse: once}}
fasteners: [{row: {count: %d, pitch: 60, from: [0, 0], angle: 0°, id: S, kind: a kind with a long name}}]
`, n))
		for k, paper := range sheettest.Papers() {
			if !testkit.Full() && k != n%8 {
				continue
			}
			ask := sheettest.English(paper)
			document, _ := documentOf(p, ask)
			sheettest.Check(t, fmt.Sprint(n), ask, document.Pages)
			total := 0
			for _, page := range document.Pages {
				total += boxes(page.Items)
			}
			if total != 7*n {
				t.Errorf("%d on %s: %d boxes, want seven a row", n, paper.Name, total)
			}
		}
	}
}

// The rows are in loosening order, each with its id; the ids of a page run from
// top to bottom.
func TestRowsInOrderOfLoosening(t *testing.T) {
	p := planOf(t, "p4-head")
	want := p.IDs(p.Loosen.Order)
	sheets(t, p, 0, func(document scene.Document, _ []string, paper sheet.Paper, _ *words.Catalogue) {
		var got []string
		for _, page := range document.Pages {
			var ids []scene.Text
			for _, text := range scenetest.Texts(page) {
				if slices.Contains(want, text.Content) {
					ids = append(ids, text)
				}
			}
			slices.SortStableFunc(ids, func(a, b scene.Text) int { return int(100 * (a.At.Y - b.At.Y)) })
			for _, text := range ids {
				got = append(got, text.Content)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", paper.Name, diff)
		}
	})
}

// Single-use fasteners are marked, and no others; the file's lengths are in
// their rows.
func TestMarksAndLengths(t *testing.T) {
	p := planOf(t, "p4-head")
	document, _ := documentOf(p, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	count := map[string]int{}
	for _, text := range scenetest.Texts(document.Pages...) {
		count[text.Content]++
	}
	// Ten main bolts, 120 mm, single-use; four side bolts, 45 mm: as in the
	// file.
	got := []int{count["NEW"], count["120 mm"], count["45 mm"]}
	if diff := cmp.Diff([]int{10, 10, 4}, got); diff != "" {
		t.Errorf("marks and lengths: %s", diff)
	}
	document, _ = documentOf(planOf(t, "p4-pump-flange"), sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	for _, text := range scenetest.Texts(document.Pages...) {
		if strings.HasPrefix(text.Content, "NEW") {
			t.Errorf("the flange has no bolts that are used once, but the sheet says %q", text.Content)
		}
	}
}

// Up to 14 fasteners, as on a usual head, fit on one page of A4: a few rows on
// a second page get lost (the number is our own choice).
func TestFourteenOnOnePage(t *testing.T) {
	p := planOf(t, `drawdown: 1
title: Plate
kinds: {bolt: {thread: M10, length: 80 mm, reuse: once}}
fasteners: [{circle: {count: 14, diameter: 240, id: S, kind: bolt}}]
`)
	document, _ := documentOf(p, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	if n := len(document.Pages); n != 1 {
		t.Errorf("%d pages", n)
	}
}

// The file's length and the measured one have separate columns, so that a
// printed figure is never taken for a measurement. Both numberings are in a
// row; each tick box is explained.
func TestColumns(t *testing.T) {
	p := planOf(t, "p4-head")
	w := words.English().Condition
	document, _ := documentOf(p, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	at := map[string]scene.Text{}
	said := ""
	for _, text := range scenetest.Texts(document.Pages[0]) { // the table of the fasteners
		at[text.Content] = text
		said += text.Content + " "
	}
	for _, text := range scenetest.Texts(document.Pages...) {
		if text.Content == "120 mm" && (text.At.X < at[w.Nominal].At.X-1 || text.At.X+text.Width > at[w.Measured].At.X-1) {
			t.Errorf("a length of the file stands at %.1f, its column begins at %.1f and the measured one at %.1f", text.At.X, at[w.Nominal].At.X, at[w.Measured].At.X)
		}
	}
	loosen, tighten := p.Loosen.Numbers(), p.Tighten.Numbers()
	for i, f := range p.Joint.Fasteners {
		row := map[string]bool{}
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.At.X < at[f.ID].At.X && math.Abs(text.At.Y-at[f.ID].At.Y) < 1 {
				row[text.Content] = true
			}
		}
		if want := map[string]bool{strconv.Itoa(loosen[i]): true, strconv.Itoa(tighten[i]): true}; !cmp.Equal(row, want) {
			t.Errorf("before %s stands %v, want %v", f.ID, row, want)
		}
	}
	for _, tick := range w.Ticks {
		if !strings.Contains(strings.ToLower(said), tick+":") {
			t.Errorf("%q is not explained", tick)
		}
	}
	if !strings.Contains(said, "Limit: manual") {
		t.Error("the sheet does not say whose the limit is")
	}
}

// Numbers that do not fit in the drawing are reported.
func TestCrowdedDrawing(t *testing.T) {
	p := planOf(t, "drawdown: 1\ntitle: Crowded\nfasteners: [{grid: {columns: 20, rows: 20, pitch: [60, 55], id: M}}]\n")
	document, notes := documentOf(p, sheet.Request{Paper: sheet.Papers[2], Words: words.English()})
	rows := map[string]bool{}
	for _, text := range scenetest.Texts(document.Pages...) {
		if text.Size == sheet.Papers[2].HeadEm {
			rows[text.Content] = true
		}
	}
	for n := 1; n <= 400; n++ {
		if !rows[strconv.Itoa(n)] {
			t.Errorf("row %d is missing", n)
		}
	}
	if len(notes) != 1 || !strings.Contains(notes[0], "of 400 numbers do not fit") {
		t.Errorf("notes %q", notes)
	}
}

// The golden scene is our own output, inspected by eye.
func TestGoldenScene(t *testing.T) {
	document, _ := documentOf(planOf(t, "p4-head"), sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	scenetest.Golden(t, filepath.Join("testdata", "p4-head.scene"), document)
}

// First principles: every number and word is on the sheet, or the sheet says
// which are missing. A drawing that is too small beside the boxes gets the full
// width.
func TestDrawingIsWholeOrSaysWhatIsNot(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		names := map[string]bool{}
		for _, s := range p.Joint.Stations {
			names[s.Label] = true
		}
		sheets(t, p, n, func(document scene.Document, notes []string, paper sheet.Paper, language *words.Catalogue) {
			said := scenetest.Said(document.Pages...)
			begin, _, _ := strings.Cut(language.Sheet.NoRoomFor, "%s")
			if got := strings.Contains(said, strings.TrimSpace(begin)); got != (len(notes) > 0) {
				t.Errorf("%s on %s in %s: notes %q, but the paper says so: %v", name, paper.Name, language.Language, notes, got)
			}
			for label := range names {
				if len(notes) == 0 && strings.Count(said, " "+label+" ") < 2 {
					t.Errorf("%s on %s in %s: %q does not stand on the drawing and in the list", name, paper.Name, language.Language, label)
				}
			}
		})
	}
}

// A part that goes back to its place has a row for its measurement.
func TestStationsHaveRows(t *testing.T) {
	p := planOf(t, "p4-cam-caps")
	document, _ := documentOf(p, sheettest.English(sheet.Papers[1]))
	count := map[string]int{}
	for _, text := range scenetest.Texts(document.Pages...) {
		count[text.Content]++
	}
	for _, s := range p.Joint.Stations {
		if count[s.ID] != 1 {
			t.Errorf("%d rows for %s", count[s.ID], s.ID)
		}
	}
	// Eight places with three boxes each, ten bolts with seven: as in the file.
	total := 0
	for _, page := range document.Pages {
		total += boxes(page.Items)
	}
	if total != 8*3+10*7 {
		t.Errorf("%d boxes to tick, want %d", total, 8*3+10*7)
	}
}

// Limits of the file are beside each of their places, and only there: 4 inlet
// and 4 outlet valves, as in the file. The end float is of the whole part and
// has its own row. A value at the bolts has its limits in their rows.
func TestValuesHaveRows(t *testing.T) {
	for name, want := range map[string]map[string]int{
		"p4-cam-caps":  {"0.15–0.25 mm": 4, "0.25–0.35 mm": 4, "0.05–0.20 mm": 1, "camshaft end float": 1, "valve clearance": 0},
		"p4-main-caps": {"89.0–90.5 mm": 10, "0.020–0.070 mm": 5, "0.08–0.25 mm": 1, "main bearing clearance": 5},
		"p4-head":      {"≤ 0.05 mm": 1, "≤ 5 %": 4},
	} {
		document, _ := documentOf(planOf(t, name), sheettest.English(sheet.Papers[1]))
		count := map[string]int{}
		for _, text := range scenetest.Texts(document.Pages...) {
			count[text.Content]++
		}
		for text, n := range want {
			if count[text] != n {
				t.Errorf("%s: %q stands there %d times, want %d", name, text, count[text], n)
			}
		}
	}
}

// The shim table has the result of the formula (see the tests of measure): 0.20
// mm wanted in steps of 0.05 mm, 0.15 to 0.25 mm right.
func TestShimTable(t *testing.T) {
	document, _ := documentOf(planOf(t, "p4-cam-caps"), sheettest.English(sheet.Papers[1]))
	texts := scenetest.Texts(document.Pages...)
	for span, want := range map[string]string{"0.00–0.02": "−0.20", "0.15–0.25": "keep", "0.26–0.27": "+0.05", "0.33–0.37": "+0.15"} {
		i := slices.IndexFunc(texts, func(text scene.Text) bool { return text.Content == span })
		if i < 0 || texts[i+1].Content != want {
			t.Errorf("%s asks for no %s", span, want)
		}
	}
}

// Bolts that are inspected before reuse have a limit in their row; others have
// none.
func TestLimits(t *testing.T) {
	for name, want := range map[string]int{"p4-cam-caps": 10, "p4-head": 0} {
		document, _ := documentOf(planOf(t, name), sheettest.English(sheet.Papers[1]))
		got := 0
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Content == words.English().Condition.Manual {
				got++
			}
		}
		if got != want {
			t.Errorf("%s: %d limits, want %d", name, got, want)
		}
	}
}

// A limit of the file is in the rows instead of a reference to the manual.
func TestLimitOfTheFile(t *testing.T) {
	p := planOf(t, "p4-cam-caps")
	p.Kinds = slices.Clone(p.Kinds)
	p.Kinds[0].ReusedTo = 51.5
	document, _ := documentOf(p, sheet.Request{Paper: sheet.Papers[1], Words: sheettest.Language(t, "de")})
	limits, manual := 0, 0
	for _, text := range scenetest.Texts(document.Pages...) {
		switch text.Content {
		case "51,5\u00a0mm":
			limits++
		case sheettest.Language(t, "de").Condition.Manual:
			manual++
		}
	}
	if said := scenetest.Said(document.Pages...); !strings.Contains(said, "Länge, die wieder eingebaut wird") {
		t.Errorf("nothing says what the limit is: %s", said)
	}
	if limits != 10 || manual != 0 {
		t.Errorf("%d limits and %d times the manual, want 10 and 0", limits, manual)
	}
}

// If all numbers are cast, drawing and rows show the cast numbers.
func TestCastNumbersInRows(t *testing.T) {
	p := planOf(t, "p4-cover")
	sheets(t, p, 0, func(document scene.Document, _ []string, paper sheet.Paper, language *words.Catalogue) {
		marks := map[string]string{}
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Tag.Role == scene.Number {
				marks[text.Tag.Name] = text.Content
			}
		}
		for _, f := range p.Joint.Fasteners {
			if marks[f.ID] != strconv.Itoa(f.Cast) {
				t.Errorf("%s in %s: %s shows %q, cast is %d", paper.Name, language.Language, f.ID, marks[f.ID], f.Cast)
			}
		}
		if want := fmt.Sprintf(language.Card.Part.Down, 14, 1); !strings.Contains(scenetest.Said(document.Pages...), want) {
			t.Errorf("%s in %s: it does not say %q", paper.Name, language.Language, want)
		}
	})
}

// First principles: a word far from its place seems to belong to what is beside
// it. Words on the part are near their places, or reported as left out.
func TestWordsStandNearTheirPlaces(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		sheets(t, p, n, func(document scene.Document, _ []string, paper sheet.Paper, _ *words.Catalogue) {
			large := paper.Width * paper.Height / (210 * 297) // A3 is A4 enlarged
			for _, page := range document.Pages {
				at := map[string]scene.Point{}
				for _, it := range page.Items {
					if shape, ok := it.(scene.Shape); ok && shape.Tag.Core {
						at[shape.Tag.Name] = shape.Path.Bounds().Centre()
					}
				}
				for _, text := range scenetest.Texts(page) {
					for _, l := range p.Joint.Labels {
						if len(at) == 0 || l.Text != text.Content {
							continue
						}
						if off := text.Box().Centre().Distance(placeOf(l.At, p.Joint, at)); off > 21*math.Sqrt(max(1, large)) {
							t.Errorf("%s on %s: %s stands %.0f mm from its place", name, paper.Name, l.Text, off)
						}
					}
				}
			}
		})
	}
}

// placeOf is the position on the drawing of a place on the part, given the
// positions of its fasteners.
func placeOf(place geometry.Point, joint geometry.Joint, at map[string]scene.Point) scene.Point {
	left, right := joint.Fasteners[0], joint.Fasteners[0]
	for _, f := range joint.Fasteners {
		if f.At.X < left.At.X {
			left = f
		}
		if f.At.X > right.At.X {
			right = f
		}
	}
	scale := (at[right.ID].X - at[left.ID].X) / (right.At.X - left.At.X)
	off := place.Sub(left.At).Scale(scale)
	return scene.Point{X: at[left.ID].X + off.X, Y: at[left.ID].Y - off.Y}
}

// What was found until now stands at its place in a drawing, and in a list. From first
// principles.
func TestFindings(t *testing.T) {
	t.Parallel()
	at := time.Date(2026, 11, 30, 15, 20, 0, 0, time.UTC)
	p := planOf(t, "p4-head")
	for _, ask := range sheettest.Requests(1) {
		seen := lettered.Of([]run.Entry{
			{Act: run.Find, Found: run.Crack, Place: &run.Place{At: &[2]float64{-95, 0}}, Who: "RA", Time: at},
			{Act: run.Report, Trouble: run.Broken, Place: &run.Place{Fastener: "M3"}, Who: "MK", Time: at},
		}, ask.Words)
		document, notes := condition.Document(p, seen, time.UTC, ask)
		sheettest.Check(t, p.Title, ask, document.Pages)
		said := scenetest.Said(document.Pages...)
		for _, want := range []string{"▲A", "▲B", "MK"} {
			if !strings.Contains(said, want) {
				t.Errorf("on %s: %q is not there", ask.Paper.Name, want)
			}
		}
		if len(notes) > 0 {
			t.Errorf("on %s: %q", ask.Paper.Name, notes)
		}
	}
}
