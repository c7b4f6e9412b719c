package card_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern, or the text of one.
var planOf = patterntest.Plan

// checkCard lays a card out and reports every fault of its layout.
func checkCard(t *testing.T, p plan.Plan, paper sheet.Paper) []string {
	t.Helper()
	document, notes := card.Document(p, card.BothSides, english(paper))
	for _, page := range document.Pages {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("%s on %s: %s", p.Title, paper.Name, fault)
		}
	}
	return notes
}

// Every built-in pattern passes the layout check on every paper, with every
// number and label in its place.
func TestBuiltinLayouts(t *testing.T) {
	for _, name := range patterns.Builtin() {
		for _, paper := range everyPaper() {
			if notes := checkCard(t, planOf(t, name), paper); len(notes) > 0 {
				t.Errorf("%s on %s: %q", name, paper.Name, notes)
			}
		}
	}
}

// The same for patterns that nobody drew: grids, circles, perimeters, rows,
// scattered ones, one to three kinds, clusters, stations, long words, now and
// then hundreds of fasteners. DRAWDOWN_LAYOUTS=300 looks at that many, on every
// paper both ways round.
func TestGeneratedLayouts(t *testing.T) {
	seeds, all := 60, false
	if testing.Short() {
		seeds = 12
	}
	if asked := os.Getenv("DRAWDOWN_LAYOUTS"); asked != "" {
		n, err := strconv.Atoi(asked)
		if err != nil || n < 1 {
			t.Fatalf("DRAWDOWN_LAYOUTS is %q: it must be a count", asked)
		}
		seeds, all = n, true
	}
	for seed := range seeds {
		p := planOf(t, generated(uint64(seed)))
		for k, paper := range everyPaper() {
			if all || k%2 == seed%2 {
				checkCard(t, p, paper)
			}
		}
	}
}

// generated writes a pattern file from a seed.
func generated(seed uint64) string {
	r := rand.New(rand.NewPCG(seed, 3))
	var b strings.Builder
	fmt.Fprintf(&b, "drawdown: 1\ntitle: %s\nmachine: Fernhollow P4 pump engine\nrevision: 7\ndate: 2026-05-0%d\nview: from above\n",
		strings.Repeat("Long title of a part ", 1+r.IntN(4)), 1+r.IntN(9))
	kinds := []string{"main", "side", "outermost"}[:1+r.IntN(3)]
	b.WriteString("kinds:\n")
	for k, name := range kinds {
		fmt.Fprintf(&b, "  %s: {thread: M%d, class: \"8.8\", lubricant: engine oil, reuse: inspect}\n", name, 12-2*k)
	}
	b.WriteString("fasteners:\n")
	family := int(seed) % 6
	if family == 4 && seed%5 != 3 {
		family = 5 // hundreds take long
	}
	switch family {
	case 0:
		fmt.Fprintf(&b, "  - grid: {columns: %d, rows: %d, pitch: [%d, %d], kind: main, id: M}\n", 2+r.IntN(9), 1+r.IntN(5), 50+r.IntN(60), 50+r.IntN(60))
	case 1:
		fmt.Fprintf(&b, "  - circle: {count: %d, diameter: 400, kind: main, id: M}\n", 3+r.IntN(40))
	case 2:
		fmt.Fprintf(&b, "  - rectangle: {columns: %d, rows: %d, size: [400, 300], kind: main, id: M}\n", 2+r.IntN(10), r.IntN(8))
	case 3:
		fmt.Fprintf(&b, "  - row: {count: %d, pitch: 60, from: [0, 0], angle: %d°, kind: main, id: M}\n", 3+r.IntN(40), 30*r.IntN(4))
	case 4:
		hundreds := []string{"grid: {columns: 20, rows: 20, pitch: [60, 55]", "circle: {count: 400, diameter: 2000", "rectangle: {columns: 60, rows: 40, size: [2000, 1200]"}
		fmt.Fprintf(&b, "  - %s, kind: main, id: M}\n", hundreds[r.IntN(len(hundreds))])
	default:
		for n := range 3 + r.IntN(30) {
			fmt.Fprintf(&b, "  - {id: M%d, at: [%d, %d], kind: main}\n", n, n%6*70+r.IntN(40), n/6*70+r.IntN(40))
		}
	}
	for k, name := range kinds[1:] {
		fmt.Fprintf(&b, "  - row: {count: %d, pitch: 60, from: [-150, %d], angle: 0°, kind: %s, id: %c}\n", 2+r.IntN(4), -400-80*k, name, 'S'+k)
	}
	if seed%3 == 1 {
		b.WriteString("clusters:\n  - {name: cap 1, of: [M1, M2]}\nstations:\n  - {id: T1, at: [40, 40], label: in 1}\n")
	}
	b.WriteString("features:\n  - {front: left}\n  - {label: EXHAUST SIDE, at: [0, -30]}\n  - {bore: [20, 30], diameter: 40, label: bore}\ntighten:\n  stages:\n")
	for n := range 1 + r.IntN(5) {
		fmt.Fprintf(&b, "    - {of: [main], torque: %d N·m, note: a note that runs on for a while}\n", 20+20*n)
	}
	b.WriteString("    - {of: [main], angle: 90°}\n    - {wait: 10 min}\n    - {of: [main], torque: 200 N·m, way: circular}\n")
	for _, name := range kinds[1:] {
		fmt.Fprintf(&b, "    - {of: [%s], torque: 24 lbf·ft}\n", name)
	}
	b.WriteString("  source: works manual 4.2\ncautions: [Timing pin in before anything turns]\n")
	return b.String()
}

// The look of the sheets, rule by rule: heights of capitals.
func TestHeightsOfLetters(t *testing.T) {
	for _, name := range patterns.Builtin() {
		document, _ := card.Document(planOf(t, name), card.BothSides, english(mustPaper(t, "a4")))
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

// Each number from 1 to n stands once in each drawing of each side, and each tick
// box has its fastener and stage.
func TestEveryFastenerIsOnTheCard(t *testing.T) {
	for _, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, which := range []card.Sides{card.TightenSide, card.LoosenSide} {
			document, _ := card.Document(p, which, english(mustPaper(t, "a4")))
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

// isTickBox knows the 4 mm boxes of the tick grid.
func isTickBox(s scene.Shape) bool {
	b := s.Path.Bounds()
	return s.Fill == scene.White && near(b.Width(), 4) && near(b.Height(), 4)
}

func near(a, b float64) bool { return a-b < 0.011 && b-a < 0.011 }

// The two sides cannot be confused: one badge is solid, one is outlined.
func TestBadgesDiffer(t *testing.T) {
	document, _ := card.Document(planOf(t, "p4-head"), card.BothSides, english(mustPaper(t, "a4")))
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

// A worked-out figure carries ≈, and the card says so in words.
func TestWorkedOutFiguresAreMarked(t *testing.T) {
	text := `drawdown: 1
title: Cover
kinds: {b: {thread: M8, class: "8.8", lubricant: engine oil}}
fasteners: [{row: {count: 4, pitch: 60, from: [0, 0], angle: 0°, id: C}}]
tighten:
  stages: [{percent: 30}, {percent: 100}]
  source: works manual
`
	document, _ := card.Document(planOf(t, text), card.TightenSide, english(mustPaper(t, "a4")))
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

// The golden scene is our own output, looked at by eye; the pictures follow
// from it.
func TestGoldenScenes(t *testing.T) {
	for _, name := range []string{"p4-head", "p4-cam-caps", "p4-pump-flange"} {
		document, _ := card.Document(planOf(t, name), card.BothSides, english(mustPaper(t, "a4")))
		scenetest.Golden(t, filepath.Join("testdata", name+".scene"), document)
	}
}

// Crowded parts: every number stands on the first page, or on a detail.
func TestCrowdedParts(t *testing.T) {
	for _, layout := range []string{
		"grid: {columns: 10, rows: 4, pitch: [60, 55], id: M}",
		"circle: {count: 120, diameter: 2000, id: M}",
		"rectangle: {columns: 30, rows: 12, size: [2000, 1200], id: M}",
		"grid: {columns: 20, rows: 20, pitch: [60, 55], id: M}",
	} {
		p := planOf(t, "drawdown: 1\ntitle: Crowded\nkinds: {b: {thread: M8}}\nfasteners:\n  - "+layout+
			"\ntighten: {stages: [{torque: 20 N·m}], source: works manual}\n")
		for _, paper := range everyPaper() {
			checkCard(t, p, paper)
			document, notes := card.Document(p, card.TightenSide, english(paper))
			placed := map[string]bool{}
			for _, text := range textsOf(document) {
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

// Mirrored banks: places are mirrored, words are not.
func TestSecondBankIsMirrored(t *testing.T) {
	left := planOf(t, "p4-head")
	right := left
	right.Joint = left.Joint.Mirrored(geometry.AxisX)
	at := func(p plan.Plan) map[string]float64 {
		document, _ := card.Document(p, card.TightenSide, english(mustPaper(t, "a4")))
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

// english asks for a sheet in English.
func english(paper sheet.Paper) sheet.Request {
	return sheet.Request{Paper: paper, Words: words.English()}
}

func mustPaper(t testing.TB, name string) sheet.Paper {
	t.Helper()
	paper, err := sheet.FindPaper(name)
	if err != nil {
		t.Fatal(err)
	}
	return paper
}

func BenchmarkCardScene(b *testing.B) {
	p, paper := planOf(b, "p4-head"), mustPaper(b, "a4")
	for b.Loop() {
		card.Document(p, card.BothSides, english(paper))
	}
}
