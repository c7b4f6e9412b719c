package tray_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/sheet/tray"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// checkTray lays out a tray, reports every layout fault, and checks that every
// spot is whole on a sheet.
func checkTray(t *testing.T, p plan.Plan, style tray.Style, ask sheet.Request) []string {
	t.Helper()
	document, notes, err := tray.Document(p, style, ask)
	if err != nil {
		t.Errorf("%s on %s: %v", p.Title, ask.Paper.Name, err)
		return nil
	}
	whole := map[string]bool{}
	for _, page := range document.Pages {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("%s on %s: %s", p.Title, ask.Paper.Name, fault)
		}
		for _, it := range page.Items {
			if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
				whole[s.Tag.Name] = true
			}
		}
	}
	if n := len(p.Joint.Fasteners) + len(p.Joint.Stations); len(whole) != n {
		t.Errorf("%s on %s: %d of %d spots are whole", p.Title, ask.Paper.Name, len(whole), n)
	}
	return notes
}

// Every built-in pattern on every paper, in every language, from above, from
// below and reduced to one page: no fault, and every word fits.
func TestBuiltinLayouts(t *testing.T) {
	t.Parallel()
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, ask := range sheettest.Requests(n) {
			if ask.Paper.Width > ask.Paper.Height {
				continue // a tray is always portrait
			}
			for _, style := range []tray.Style{{}, {Underside: true}, {OnePage: true}} {
				for _, note := range checkTray(t, p, style, ask) {
					if !strings.Contains(note, "holds nothing") {
						t.Errorf("%s on %s in %s: %s", name, ask.Paper.Name, ask.Words.Language, note)
					}
				}
			}
		}
	}
}

// The same for generated patterns.
func TestGeneratedLayouts(t *testing.T) {
	t.Parallel()
	for seed := range testkit.Samples(16, 120) {
		p := planOf(t, patterntest.Generated(uint64(seed)))
		for _, paper := range papersFor(seed) {
			checkTray(t, p, tray.Style{}, sheettest.English(paper))
			if seed%4 == 0 { // slow: many drawings each, to find the scale
				checkTray(t, p, tray.Style{OnePage: true}, sheettest.English(paper))
			}
		}
	}
}

// papersFor are all papers or, in a plain run, one in turn.
func papersFor(turn int) []sheet.Paper {
	if testkit.Full() {
		return sheet.Papers
	}
	k := turn / 4 % len(sheet.Papers)
	return sheet.Papers[k : k+1]
}

// Each number and id is at its spot, and stations have theirs.
func TestEverySpotHasItsNumbers(t *testing.T) {
	t.Parallel()
	p := planOf(t, "p4-cam-caps")
	document, _, err := tray.Document(p, tray.Style{}, sheet.Request{Paper: sheet.Papers[0], Words: words.English()})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]map[string]bool{}
	for _, page := range document.Pages {
		for _, it := range page.Items {
			if text, ok := it.(scene.Text); ok && text.Tag.Name != "" && text.Tag.Role != scene.Label {
				if got[text.Tag.Name] == nil {
					got[text.Tag.Name] = map[string]bool{}
				}
				got[text.Tag.Name][text.Content] = true
			}
		}
	}
	want := map[string]map[string]bool{}
	tighten := p.Tighten.Numbers()
	for i, f := range p.Joint.Fasteners {
		// Loosening is the exact reverse of tightening.
		want[f.ID] = map[string]bool{
			strconv.Itoa(len(tighten) + 1 - tighten[i]): true,
			fmt.Sprintf("%s (%d)", f.ID, tighten[i]):    true,
		}
	}
	for _, s := range p.Joint.Stations {
		want["station "+s.ID] = map[string]bool{s.Label: true}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Seen from below, left and right are swapped, numbers included; up stays up.
func TestUnderside(t *testing.T) {
	t.Parallel()
	p := planOf(t, "p4-head")
	at := func(underside bool) map[string]scene.Point {
		document, _, err := tray.Document(p, tray.Style{Underside: underside, OnePage: true}, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
		if err != nil {
			t.Fatal(err)
		}
		places := map[string]scene.Point{}
		said := false
		for _, it := range document.Pages[0].Items {
			switch it := it.(type) {
			case scene.Shape:
				if it.Tag.Role == scene.Mark {
					places[it.Tag.Name] = it.Path.Bounds().Centre()
				}
			case scene.Text:
				said = said || strings.Contains(it.Content, "underside")
			}
		}
		if said != underside {
			t.Errorf("underside %v, said %v", underside, said)
		}
		return places
	}
	above, below := at(false), at(true)
	for i := range p.Joint.Fasteners {
		for k := range p.Joint.Fasteners {
			a, b := p.Joint.Fasteners[i].ID, p.Joint.Fasteners[k].ID
			if off := above[a].X - above[b].X + below[a].X - below[b].X; off > 0.03 || off < -0.03 {
				t.Fatalf("%s and %s are %.2f apart from above and %.2f from below", a, b, above[a].X-above[b].X, below[a].X-below[b].X)
			}
			if off := above[a].Y - above[b].Y - below[a].Y + below[b].Y; off > 0.03 || off < -0.03 {
				t.Fatalf("%s and %s are at other heights from below", a, b)
			}
		}
	}
}

// No letter is under 2 mm high, and no large number under 3 mm.
func TestHeightsOfLetters(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		for _, onePage := range []bool{false, true} {
			document, _, err := tray.Document(planOf(t, name), tray.Style{OnePage: onePage}, sheet.Request{Paper: sheet.Papers[2], Words: words.English()})
			if err != nil {
				t.Fatal(err)
			}
			for _, page := range document.Pages {
				for _, it := range page.Items {
					text, ok := it.(scene.Text)
					if !ok {
						continue
					}
					capMm := text.Size * font.CapHeight
					if capMm < 2 || text.Tag.Role == scene.Number && capMm < 2.97 { // sizes are rounded down to 1/20 mm
						t.Errorf("%s: %q is %.2f mm high", name, text.Content, capMm)
					}
				}
			}
		}
	}
}

// A part with too many sheets to join is rejected, with advice how to print it.
func TestTooManySheets(t *testing.T) {
	t.Parallel()
	p := planOf(t, "drawdown: 1\ntitle: Ship\nfasteners:\n  - {id: A, at: [0, 0]}\n  - {id: B, at: [9000, 9000]}\n")
	_, _, err := tray.Document(p, tray.Style{}, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	if err == nil || !strings.Contains(words.English().Error(err), "allowed: up to 200") {
		t.Errorf("the error is %v", err)
	}
	document, _, err := tray.Document(p, tray.Style{OnePage: true}, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	if err != nil || len(document.Pages) != 1 {
		t.Errorf("on one page: %d pages, %v", len(document.Pages), err)
	}
}

// The golden scene is our own output, inspected by eye.
func TestGoldenScene(t *testing.T) {
	t.Parallel()
	document, _, err := tray.Document(planOf(t, "p4-head"), tray.Style{}, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
	if err != nil {
		t.Fatal(err)
	}
	scenetest.Golden(t, filepath.Join("testdata", "p4-head.scene"), document)
}

// The spot of a single-use fastener is marked, and the legend says what to do
// with the old ones; others are not marked.
func TestUsedOnce(t *testing.T) {
	t.Parallel()
	w := words.English()
	for _, onePage := range []bool{false, true} {
		p := planOf(t, "p4-head")
		document, _, err := tray.Document(p, tray.Style{OnePage: onePage}, sheet.Request{Paper: sheet.Papers[1], Words: w})
		if err != nil {
			t.Fatal(err)
		}
		marked, legend := map[string]bool{}, false
		for _, page := range document.Pages {
			for _, it := range page.Items {
				if text, ok := it.(scene.Text); ok {
					legend = legend || strings.HasPrefix(text.Content, "NEW: single use")
					if text.Tag.Name != "" && strings.HasPrefix(text.Content, w.Condition.New) {
						marked[text.Tag.Name] = true
						if text.Ink != scene.Black || text.Weight != scene.Bold {
							t.Errorf("the mark of %s is not black and bold", text.Tag.Name)
						}
					}
				}
			}
		}
		for i, f := range p.Joint.Fasteners {
			if once := p.KindOf(i).Reuse == plan.ReuseOnce; marked[f.ID] != once {
				t.Errorf("%s is used once: %v; marked: %v", f.ID, once, marked[f.ID])
			}
		}
		if !legend {
			t.Errorf("on one page %v: the legend does not explain NEW", onePage)
		}
	}
}

// No line of a foot has a single word left over from a sentence.
func TestNoWordAloneInTheFoot(t *testing.T) {
	t.Parallel()
	for _, paper := range sheet.Papers {
		for _, tag := range words.Languages() {
			language, err := words.Find(tag)
			if err != nil {
				t.Fatal(err)
			}
			last := language.Tile.Join[strings.LastIndexAny(language.Tile.Join, " \u00a0")+1:]
			document, _, err := tray.Document(planOf(t, "p4-pump-flange"), tray.Style{}, sheet.Request{Paper: paper, Words: language})
			if err != nil {
				t.Fatal(err)
			}
			for _, page := range document.Pages {
				for _, it := range page.Items {
					if text, ok := it.(scene.Text); ok && text.Content == last {
						t.Errorf("%s in %s: %q stands alone", paper.Name, tag, last)
					}
				}
			}
		}
	}
}

// First principles: a number with a line through it can be misread. On a tray
// reduced to one page, a line is interrupted behind the words on it, and each
// cap has its name once.
func TestNoWordIsStruckThrough(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"p4-cam-caps", "p4-rod-caps", "p4-main-caps", "p4-head"} {
		p := planOf(t, name)
		for _, paper := range []sheet.Paper{sheet.Papers[1], sheet.Papers[2]} {
			pages, _, err := tray.Pages(p, tray.Style{OnePage: true}, sheet.Request{Paper: paper, Words: words.English()})
			if err != nil {
				t.Fatal(err)
			}
			names := map[string]int{}
			items := pages[0].Items
			for k, it := range items {
				text, ok := it.(scene.Text)
				if !ok {
					continue
				}
				names[text.Content]++
				if text.Tag.Name != "" && struckThrough(items[:k], text) {
					t.Errorf("%s on %s: a line runs through %q", name, paper.Name, text.Content)
				}
			}
			for _, c := range p.Joint.Clusters {
				if names[c.Name] != 1 {
					t.Errorf("%s on %s: %q stands %d times", name, paper.Name, c.Name, names[c.Name])
				}
			}
		}
	}
}

// struckThrough reports whether a line painted before a text shows through it.
func struckThrough(before []scene.Item, text scene.Text) bool {
	box, struck := text.Box().Grown(-0.02), false
	for _, it := range before {
		s, ok := it.(scene.Shape)
		if !ok {
			continue
		}
		if s.Fill == scene.White && s.Stroke == 0 && s.Path.Bounds().Holds(box) {
			struck = false
		}
		for _, run := range s.Path.Flatten() {
			for k := 1; k < len(run) && s.Width > 0; k++ {
				struck = struck || box.Cut(run[k-1], run[k])
			}
		}
	}
	return struck
}

// On a reduced sheet the words beside a spot interrupt the line around a cap
// rather than the arc of a bore, where they would be read as its name.
func TestIDsKeepOffBores(t *testing.T) {
	for _, name := range []string{"p4-main-caps", "p4-rod-caps"} {
		document, _, err := tray.Document(planOf(t, name), tray.Style{OnePage: true}, sheettest.English(sheettest.Paper(t, "a5")))
		if err != nil {
			t.Fatal(err)
		}
		bores, ids := 0, 0
		for _, it := range document.Pages[0].Items {
			s, ok := it.(scene.Shape)
			if !ok {
				continue
			}
			if b := s.Path.Bounds(); s.Stroke != scene.Grey || b.Width() < 8 || math.Abs(b.Width()-b.Height()) > 0.05 || len(s.Path) < 5 {
				continue
			}
			bores++
			for _, text := range scenetest.Texts(document.Pages[0]) {
				if !strings.Contains(text.Content, " (") {
					continue
				}
				ids++
				if scene.RunsToBox(s.Path.Flatten(), text.Box()) == 0 {
					t.Errorf("%s: %q stands on the edge of a bore", name, text.Content)
				}
			}
		}
		if bores < 4 || ids < 4*8 {
			t.Errorf("%s: only %d bores and %d ids were compared", name, bores, ids)
		}
	}
}

// First principles: a name across the outline of a part hides its shape. The
// names of caps keep off it on every paper.
func TestNamesStandOffTheOutline(t *testing.T) {
	t.Parallel()
	for _, paper := range sheet.Papers {
		for _, name := range []string{"p4-cam-caps", "p4-main-caps", "p4-rod-caps"} {
			document, _, err := tray.Document(planOf(t, name), tray.Style{OnePage: true}, sheettest.English(paper))
			if err != nil {
				t.Fatal(err)
			}
			outline := slices.IndexFunc(document.Pages[0].Items, func(it scene.Item) bool {
				line, ok := it.(scene.Shape)
				return ok && line.Stroke == scene.Black && line.Width == 0.3 && line.Fill == scene.None && line.Tag.Name == ""
			})
			part := document.Pages[0].Items[outline].(scene.Shape).Path.Bounds()
			for _, text := range scenetest.Texts(document.Pages[0]) {
				if text.Tag.Role == scene.Label && part.Meets(text.Box()) && !part.Holds(text.Box()) {
					t.Errorf("%s on %s: %s breaks the outline", name, paper.Name, text.Content)
				}
			}
		}
	}
}
