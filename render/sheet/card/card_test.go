package card_test

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern, or a pattern given as text.
var planOf = patterntest.Plan

// checkCard lays out a card and reports every layout fault.
func checkCard(t *testing.T, what string, p plan.Plan, ask sheet.Request) []string {
	t.Helper()
	document, notes := card.Document(p, card.BothSides, ask)
	sheettest.Check(t, what, ask, document.Pages)
	return notes
}

// checkSides does the same for each side separately, and returns the tightening
// side.
func checkSides(t *testing.T, what string, p plan.Plan, ask sheet.Request) (scene.Document, []string) {
	t.Helper()
	loosen, _ := card.Document(p, card.LoosenSide, ask)
	tighten, notes := card.Document(p, card.TightenSide, ask)
	sheettest.Check(t, what, ask, append(loosen.Pages, tighten.Pages...))
	return tighten, notes
}

// Generated patterns pass the layout check on every paper, in portrait and
// landscape, in every language. A plain run uses two papers and one language
// for each, in turn, so that each language meets each paper.
func TestGeneratedLayouts(t *testing.T) {
	t.Parallel()
	languages := wordstest.All()
	for n, language := range languages {
		t.Run(language.Language, func(t *testing.T) {
			t.Parallel()
			for seed := range testkit.Samples(16, 300) {
				if !testkit.Full() && seed/4%len(languages) != n {
					continue
				}
				p := planOf(t, patterntest.Generated(uint64(seed)))
				for _, paper := range sheettest.InTurn(seed, 4) {
					checkCard(t, fmt.Sprint("seed ", seed), p, sheet.Request{Paper: paper, Words: language})
				}
			}
		})
	}
}

// Heights of capitals on the sheets, rule by rule.
func TestHeightsOfLetters(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		document, _ := card.Document(planOf(t, name), card.BothSides, sheettest.English(sheettest.Paper(t, "a4")))
		for _, page := range document.Pages {
			for _, it := range page.Items {
				text, ok := it.(scene.Text)
				if !ok {
					continue
				}
				capMm := text.Size * font.CapHeight
				if capMm < 2 {
					t.Errorf("%s: %q is %.2f mm high", name, text.Content, capMm)
				}
				_, isNumber := strconv.Atoi(text.Content)
				if isNumber == nil && text.Tag.Role == scene.Number && text.Weight == scene.Bold && capMm < 5 {
					t.Errorf("%s: the number %s is %.2f mm high", name, text.Content, capMm)
				}
			}
		}
	}
}

// Each drawing of each side has the numbers 1 to n once, and each fastener has
// its tick boxes.
func TestEveryFastenerIsOnTheCard(t *testing.T) {
	t.Parallel()
	for _, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, which := range []card.Sides{card.TightenSide, card.LoosenSide} {
			document, _ := card.Document(p, which, sheettest.English(sheettest.Paper(t, "a4")))
			numbers, boxes, drawings := map[string]int{}, 0, 0
			for _, page := range document.Pages {
				for _, it := range page.Items {
					switch it := it.(type) {
					case scene.Text:
						if it.Tag.Role == scene.Number && it.Weight == scene.Bold {
							numbers[it.Content]++
							drawings = max(drawings, numbers[it.Content])
						}
					case scene.Shape:
						if isTickBox(it) {
							boxes++
						}
					}
				}
			}
			for n := 1; n <= len(p.Joint.Fasteners); n++ {
				if got := numbers[strconv.Itoa(n)]; got != drawings || got > len(document.Pages) {
					t.Errorf("%s %s: number %d stands %d times on %d pages", name, which, n, got, len(document.Pages))
				}
			}
			side := p.Tighten
			if which == card.LoosenSide {
				side = p.Loosen
			}
			want := 0
			for _, s := range side.Stages {
				want += len(s.Fasteners)
			}
			if boxes != want {
				t.Errorf("%s %s: %d tick boxes, want %d", name, which, boxes, want)
			}
		}
	}
}

// isTickBox reports whether a shape is one of the 4 mm boxes of the tick grid.
func isTickBox(s scene.Shape) bool {
	b := s.Path.Bounds()
	return s.Fill == scene.White && near(b.Width(), 4) && near(b.Height(), 4)
}

func near(a, b float64) bool { return a-b < 0.011 && b-a < 0.011 }

// The badges of the two sides differ: one is solid, one is outlined.
func TestBadgesDiffer(t *testing.T) {
	t.Parallel()
	document, _ := card.Document(planOf(t, "p4-head"), card.BothSides, sheettest.English(sheettest.Paper(t, "a4")))
	inks := map[string]scene.Ink{}
	for _, page := range document.Pages {
		for _, it := range page.Items {
			if text, ok := it.(scene.Text); ok && (text.Content == "TIGHTEN" || text.Content == "LOOSEN") {
				inks[text.Content] = text.Ink
			}
		}
	}
	if diff := cmp.Diff(map[string]scene.Ink{"TIGHTEN": scene.White, "LOOSEN": scene.Black}, inks); diff != "" {
		t.Error(diff)
	}
}

// A calculated figure has a ≈, and the card explains it.
func TestWorkedOutFiguresAreMarked(t *testing.T) {
	t.Parallel()
	text := `drawdown: 1
title: Cover
kinds: {b: {thread: M8, class: "8.8", lubricant: engine oil}}
fasteners: [{row: {count: 4, pitch: 60, from: [0, 0], angle: 0°, id: C}}]
tighten:
  stages: [{percent: 30}, {percent: 100}]
  source: works manual
`
	document, _ := card.Document(planOf(t, text), card.TightenSide, sheettest.English(sheettest.Paper(t, "a4")))
	marked, said := 0, 0
	for _, it := range document.Pages[0].Items {
		words, ok := it.(scene.Text)
		if !ok {
			continue
		}
		if strings.HasPrefix(words.Content, "≈ ") && words.Weight == scene.Bold {
			marked++
		}
		if strings.Contains(words.Content, "worked out") {
			said++
		}
	}
	if marked != 2 || said < 3 {
		t.Errorf("%d figures are marked and %d lines say so", marked, said)
	}
}

// The golden scenes are our own output, inspected by eye.
func TestGoldenScenes(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"p4-head", "p4-cam-caps", "p4-pump-flange"} {
		document, _ := card.Document(planOf(t, name), card.BothSides, sheettest.English(sheettest.Paper(t, "a4")))
		scenetest.Golden(t, filepath.Join("testdata", name+".scene"), document)
	}
}

// Crowded parts: every number is on the first page or in a section.
func TestCrowdedParts(t *testing.T) {
	t.Parallel()
	for n, layout := range []string{
		"grid: {columns: 10, rows: 4, pitch: [60, 55], id: M}",
		"circle: {count: 120, diameter: 2000, id: M}",
		"rectangle: {columns: 30, rows: 12, size: [2000, 1200], id: M}",
		"grid: {columns: 20, rows: 20, pitch: [60, 55], id: M}",
	} {
		p := planOf(t, "drawdown: 1\ntitle: Crowded\nkinds: {b: {thread: M8}}\nfasteners:\n  - "+layout+
			"\ntighten: {stages: [{torque: 20 N·m}], source: works manual}\n")
		for _, paper := range sheettest.InTurn(2*n, 8) {
			document, notes := checkSides(t, p.Title, p, sheettest.English(paper))
			placed := map[string]bool{}
			for _, text := range scenetest.Texts(document.Pages...) {
				if text.Tag.Role == scene.Number && text.Weight == scene.Bold {
					placed[text.Content] = true
				}
			}
			if len(placed) != len(p.Joint.Fasteners) {
				t.Errorf("%s on %s: %d numbers stand of %d; the notes are %q", layout, paper.Name, len(placed), len(p.Joint.Fasteners), notes)
			}
		}
	}
}

// Mirrored banks: positions are mirrored, words are not.
func TestSecondBankIsMirrored(t *testing.T) {
	t.Parallel()
	left := planOf(t, "p4-head")
	right := left
	right.Joint = left.Joint.Mirrored(geometry.AxisX)
	at := func(p plan.Plan) map[string]float64 {
		document, _ := card.Document(p, card.TightenSide, sheettest.English(sheettest.Paper(t, "a4")))
		x := map[string]float64{}
		for _, it := range document.Pages[0].Items {
			if text, ok := it.(scene.Text); ok && text.Tag.Role == scene.Number && text.Weight == scene.Bold {
				x[text.Content] = text.At.X
			}
		}
		return x
	}
	a, b := at(left), at(right)
	for number, x := range a {
		if sum := x + b[number]; !near(sum/2, 105) {
			t.Errorf("number %s stands at %.2f and %.2f", number, x, b[number])
		}
	}
}

func BenchmarkCardScene(b *testing.B) {
	p, paper := planOf(b, "p4-head"), sheettest.Paper(b, "a4")
	for b.Loop() {
		card.Document(p, card.BothSides, sheettest.English(paper))
	}
}
