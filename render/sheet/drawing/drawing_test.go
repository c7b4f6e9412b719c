package drawing_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/drawing"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// lay lays out a drawing and reports every layout fault, and type under 2 mm.
func lay(t *testing.T, p plan.Plan, trueSize bool, ask sheet.Request) (scene.Document, []string) {
	t.Helper()
	document, notes, err := drawing.Document(p, trueSize, ask)
	if err != nil {
		t.Fatalf("%s on %s: %v", p.Title, ask.Paper.Name, err)
	}
	for _, page := range document.Pages {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("%s on %s, actual size %v: %s", p.Title, ask.Paper.Name, trueSize, fault)
		}
		for _, it := range page.Items {
			if text, ok := it.(scene.Text); ok && text.Size*font.CapHeight < 2 {
				t.Errorf("%s: %q is %.2f mm high", p.Title, text.Content, text.Size*font.CapHeight)
			}
		}
	}
	return document, notes
}

// Every built-in pattern on every paper, in every language, reduced and at true
// size: no fault, and every word fits.
func TestBuiltinLayouts(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, ask := range sheettest.Requests(n) {
			for _, actual := range []bool{false, true} {
				_, notes := lay(t, p, actual, ask)
				_, empty, _ := strings.Cut(ask.Words.Findings[string(sheet.EmptySheet)], "{name}")
				for _, note := range notes {
					if !strings.HasSuffix(note, empty) {
						t.Errorf("%s on %s in %s: %s", name, ask.Paper.Name, ask.Words.Language, note)
					}
				}
			}
		}
	}
}

// The same for generated patterns, some with heads that overlap.
func TestGeneratedLayouts(t *testing.T) {
	for seed := range testkit.Samples(16, 120) {
		p := planOf(t, patterntest.Generated(uint64(seed)))
		for k, paper := range sheet.Papers {
			if !testkit.Full() && k != seed/4%len(sheet.Papers) {
				continue
			}
			for _, actual := range []bool{false, true} {
				lay(t, p, actual, sheettest.English(paper))
			}
		}
	}
}

// Every place is in the table, after its id and before its hole.
func TestTableOfPlaces(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p := planOf(t, name)
		document, _ := lay(t, p, false, sheet.Request{Paper: sheet.Papers[2], Words: words.English()})
		type line struct {
			page int
			y    float64
		}
		lines := map[line][]scene.Text{}
		for k, page := range document.Pages {
			for _, it := range page.Items {
				if text, ok := it.(scene.Text); ok && text.Size == sheet.Papers[2].TextEm && text.Tag.Name == "" {
					lines[line{k, text.At.Y}] = append(lines[line{k, text.At.Y}], text)
				}
			}
		}
		var rows []string
		for _, texts := range lines {
			slices.SortFunc(texts, func(a, b scene.Text) int { return int(100 * (a.At.X - b.At.X)) })
			var all []string
			for _, text := range texts {
				all = append(all, text.Content)
			}
			rows = append(rows, strings.Join(all, " ")+" ")
		}
		for i, f := range p.Joint.Fasteners {
			want := fmt.Sprintf("%s %s %s %s ", f.ID, figure(f.At.X), figure(f.At.Y), figure(float64(p.KindOf(i).Hole)))
			if !slices.ContainsFunc(rows, func(row string) bool { return strings.Contains(row, want) }) {
				t.Errorf("%s: no row %q", name, want)
			}
		}
	}
}

// figure formats a figure to a hundredth in another way than the table.
func figure(mm float64) string {
	return strings.ReplaceAll(strconv.FormatFloat(math.Round(mm*100)/100+0, 'f', -1, 64), "-", "−")
}

// At true size each cross is at the place in the file, and each circle is as
// wide as the hole; the tray's test follows them across seams.
func TestActualSizeIsExact(t *testing.T) {
	p := planOf(t, "p4-head")
	for _, paper := range sheet.Papers {
		document, _ := lay(t, p, true, sheet.Request{Paper: paper, Words: words.English()})
		pairs := 0
		for _, page := range document.Pages {
			at := map[string]scene.Point{}
			for _, it := range page.Items {
				s, ok := it.(scene.Shape)
				if !ok || s.Tag.Role != scene.Mark {
					continue
				}
				at[s.Tag.Name] = s.Path.Bounds().Centre()
				i := slices.IndexFunc(p.IDs(p.Tighten.Order), func(id string) bool { return id == s.Tag.Name })
				hole := float64(p.KindOf(p.Tighten.Order[i]).Hole)
				circle := s.Path[4:].Bounds() // after the two lines of the cross
				if math.Abs(circle.Width()-hole) > 0.02 {
					t.Errorf("the hole of %s is %.2f mm wide, want %g", s.Tag.Name, circle.Width(), hole)
				}
			}
			for _, a := range p.Joint.Fasteners {
				for _, b := range p.Joint.Fasteners {
					from, ok1 := at[a.ID]
					to, ok2 := at[b.ID]
					if !ok1 || !ok2 || a.ID == b.ID {
						continue
					}
					pairs++
					if off := math.Hypot(to.X-from.X-(b.At.X-a.At.X), from.Y-to.Y-(b.At.Y-a.At.Y)); off > 0.03 {
						t.Errorf("%s: %s and %s are %.3f mm off", paper.Name, a.ID, b.ID, off)
					}
				}
			}
		}
		if pairs < 10 {
			t.Errorf("%s: only %d pairs were compared", paper.Name, pairs)
		}
	}
}

// Ids that do not fit are reported, also on the sheet.
func TestCrowdedDrawing(t *testing.T) {
	p := planOf(t, "drawdown: 1\ntitle: Crowded\nfasteners: [{grid: {columns: 20, rows: 20, pitch: [60, 55], id: M}}]\n")
	document, notes := lay(t, p, false, sheet.Request{Paper: sheet.Papers[2], Words: words.English()})
	if len(notes) != 1 || !strings.Contains(notes[0], "of 400 ids do not fit on a5") {
		t.Errorf("notes %q", notes)
	}
	for _, it := range document.Pages[0].Items {
		if text, ok := it.(scene.Text); ok && strings.Contains(text.Content, "Ids that do not fit: ") {
			return
		}
	}
	t.Error("the sheet does not say which ids do not fit")
}

// Words that do not fit are also reported on the paper.
func TestWordsWithoutRoomAreSaid(t *testing.T) {
	p := planOf(t, "p4-cam-caps")
	long := strings.Repeat("long name ", 6)
	for k := range 3 {
		p.Joint.Stations = append(p.Joint.Stations, geometry.Station{ID: "X" + strconv.Itoa(k), Label: long + strconv.Itoa(k), At: geometry.Point{X: float64(k)}})
	}
	for _, tag := range words.Languages() {
		w := sheettest.Language(t, tag)
		document, notes := lay(t, p, false, sheet.Request{Paper: sheettest.Paper(t, "a5"), Words: w})
		said := scenetest.Said(document.Pages...)
		missing := 0
		for k := range 3 {
			name := long + strconv.Itoa(k)
			if !slices.ContainsFunc(notes, func(note string) bool { return strings.Contains(note, name) }) {
				continue
			}
			missing++
			if !strings.Contains(said, name) {
				t.Errorf("%s: the paper does not say that %q has no room", tag, name)
			}
		}
		if missing == 0 {
			t.Errorf("%s: all have room, and the test is idle: %q", tag, notes)
		}
		sheettest.Check(t, "long names", sheet.Request{Paper: sheettest.Paper(t, "a5"), Words: w}, document.Pages)
	}
}

// The golden scenes are our own output, inspected by eye.
func TestGoldenScenes(t *testing.T) {
	for name, actual := range map[string]bool{"p4-head": false, "p4-head-actual": true} {
		document, _ := lay(t, planOf(t, "p4-head"), actual, sheet.Request{Paper: sheet.Papers[1], Words: words.English()})
		scenetest.Golden(t, filepath.Join("testdata", name+".scene"), document)
	}
}

// First principles: the drawing is compared with the numbers cast on the part.
func TestCastNumbersAreDrawn(t *testing.T) {
	p := planOf(t, "p4-cover")
	for _, actual := range []bool{false, true} {
		document, _ := lay(t, p, actual, sheet.Request{Paper: sheet.Papers[0], Words: words.English()})
		said := map[string]bool{}
		for _, page := range document.Pages {
			for _, it := range page.Items {
				if text, ok := it.(scene.Text); ok {
					said[text.Content] = true
				}
			}
		}
		for _, f := range p.Joint.Fasteners {
			want := strconv.Itoa(f.Cast)
			if actual {
				want = f.ID + " (" + want + ")"
			}
			if !said[want] {
				t.Errorf("actual size %v: no %q", actual, want)
			}
		}
	}
}
