package handout_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/handout"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/exercise"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// checkLayout reports every layout fault of a document, and type smaller than 2
// mm.
func checkLayout(t *testing.T, what string, doc scene.Document) {
	t.Helper()
	if len(doc.Pages) == 0 {
		t.Errorf("%s: no page", what)
	}
	for _, page := range doc.Pages {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("%s: %s", what, fault)
		}
		if err := font.Check(page); err != nil {
			t.Errorf("%s: %v", what, err)
		}
		for _, text := range scenetest.Texts(page) {
			if text.Size*font.CapHeight < 2 {
				t.Errorf("%s: %q is %.2f mm high", what, text.Content, text.Size*font.CapHeight)
			}
		}
	}
}

// A caption far from its drawing looks like the heading of what follows.
func TestCaptionStandsWithThePart(t *testing.T) {
	pages, _ := handout.Pages(handout.Sheet{Plan: planOf(t, "p4-head")}, handout.Request{Request: sheettest.English(sheettest.Paper(t, "a4"))}, handout.Blank)
	bottom, caption := 0.0, 0.0
	for _, it := range pages[0].Items {
		switch it := it.(type) {
		case scene.Shape:
			if it.Tag.Role == scene.Mark {
				bottom = max(bottom, it.Path.Bounds().Bottom)
			}
		case scene.Text:
			if it.Content == "EXHAUST SIDE" {
				bottom = max(bottom, it.Box().Bottom)
			}
			if it.Content == "side" {
				caption = it.At.Y
			}
		}
	}
	if caption < bottom || caption > bottom+8 {
		t.Errorf("the caption stands at %.1f, below a part that ends at %.1f", caption, bottom)
	}
}

// Sheets and keys of every built-in pattern pass the layout check on every
// paper, in portrait and landscape, in every language, with nothing left out. A
// plain run tries some in turn.
func TestBuiltinLayouts(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for k, ask := range sheettest.Requests(n) {
			checkTask(t, p, handout.Request{Request: ask, Loosening: k%2 == 1})
		}
		small, _ := sheet.FindPaper("a5")
		for k, w := range wordstest.All() {
			if testkit.Full() || (k+n)%2 == 0 {
				checkTask(t, p, handout.Request{Request: sheet.Request{Paper: small, Words: w}})
			}
		}
	}
}

func checkTask(t *testing.T, p plan.Plan, ask handout.Request) {
	t.Helper()
	for _, which := range []handout.Which{handout.Blank, handout.Key} {
		doc, notes := handout.Document([]handout.Sheet{{Plan: p}}, ask, which)
		what := fmt.Sprintf("%s %s on %s %g wide, %s", p.Name, which, ask.Paper.Name, ask.Paper.Width, ask.Words.Language)
		checkLayout(t, what, doc)
		if len(notes) > 0 {
			t.Errorf("%s: %q", what, notes)
		}
	}
}

// class generates the sheets of a class.
func class(t testing.TB, seed uint64, n int, w *words.Catalogue) []handout.Sheet {
	t.Helper()
	made, err := exercise.Make(seed, n)
	if err != nil {
		t.Fatal(err)
	}
	var sheets []handout.Sheet
	for k, e := range made {
		p, err := plan.Build(e.Input("class", exercise.Names{
			Title: w.Handout.Families[string(e.Family)], Machine: "Fernhollow P4 pump engine",
			View: w.Handout.Above, Main: w.Handout.Main, Small: w.Handout.Small,
		}))
		if err != nil {
			t.Fatal(err)
		}
		sheets = append(sheets, handout.Sheet{Plan: p, Number: k + 1, Of: n, Seed: seed, MadeUp: true})
	}
	return sheets
}

// The same for generated parts.
func TestMadeUpLayouts(t *testing.T) {
	count := testkit.Samples(4, 16)
	for k, paper := range sheettest.Papers() {
		w := wordstest.All()[k%len(words.Languages())]
		for _, task := range class(t, uint64(k), count, w) {
			checkTask(t, task.Plan, handout.Request{Request: sheet.Request{Paper: paper, Words: w}, Loosening: k%2 == 1})
		}
	}
}

// The sheet to fill in reveals nothing about the order: each name is once
// beside its mark, in the order of the file, all marks look the same, and the
// only numbers are those of the empty boxes. The key has numbers and list.
func TestBlankHidesTheOrder(t *testing.T) {
	p := planOf(t, "p4-head")
	a4, _ := sheet.FindPaper("a4")
	ask := handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}}
	blank, _ := handout.Document([]handout.Sheet{{Plan: p}}, ask, handout.Blank)
	named := map[string]int{}
	for _, text := range scenetest.Texts(blank.Pages[0]) {
		if text.Tag.Role != scene.Number {
			continue
		}
		if text.Content != text.Tag.Name {
			t.Errorf("%q stands at the mark of %s", text.Content, text.Tag.Name)
		}
		named[text.Content]++
	}
	looks := map[string]int{}
	for _, it := range blank.Pages[0].Items {
		if shape, ok := it.(scene.Shape); ok && shape.Tag.Role == scene.Mark {
			looks[fmt.Sprint(shape.Fill, shape.Stroke, shape.Width)]++
			// A digit written by hand needs about 8 mm: common practice, no source.
			if width := shape.Path.Bounds().Width(); width < 8 {
				t.Errorf("the mark of %s is %.1f mm wide", shape.Tag.Name, width)
			}
		}
	}
	if len(named) != 14 || len(looks) != 1 {
		t.Errorf("names %v; marks look %v", named, looks)
	}
	key, _ := handout.Document([]handout.Sheet{{Plan: p}}, ask, handout.Key)
	var list, numbers []string
	for _, text := range scenetest.Texts(key.Pages[0]) {
		_, notNumber := strconv.Atoi(text.Content)
		switch {
		case text.Tag.Role == scene.Number && notNumber == nil:
			numbers = append(numbers, text.Content)
		case text.Tag.Role != scene.Number && text.Weight == scene.Bold && text.Size == ask.Paper.HeadEm && len(text.Content) <= 3:
			list = append(list, text.Content)
		}
	}
	// The output of drawdown order for p4-head, pinned there.
	if got, want := strings.Join(list, " "), "M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F2 F3 F1 F4"; got != want {
		t.Errorf("the list of the key is %s, want %s", got, want)
	}
	if slices.Sort(numbers); len(slices.Compact(numbers)) != 14 {
		t.Errorf("numbers on the key: %q", numbers)
	}
}

// A part with more bolts than names fit beside has the names in the marks; one
// or two bolts work too.
func TestCrowdedParts(t *testing.T) {
	a5, _ := sheet.FindPaper("a5")
	for _, count := range []int{1, 2, 40} {
		p := planOf(t, fmt.Sprintf("drawdown: 1\ntitle: Large flange\nfasteners: [{circle: {count: %d, diameter: 900, id: S}}]\n", count))
		for _, which := range []handout.Which{handout.Blank, handout.Key} {
			doc, _ := handout.Document([]handout.Sheet{{Plan: p}}, handout.Request{Request: sheet.Request{Paper: a5, Words: words.English()}}, which)
			checkLayout(t, fmt.Sprintf("%d bolts, %s", count, which), doc)
		}
	}
}
