package card_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Stages and cautions that do not fit on a page continue on the next. Nothing
// overlaps the footer, and every stage and caution is on the card once.
func TestMuchOfEverything(t *testing.T) {
	t.Parallel()
	text := strings.Builder{}
	text.WriteString("drawdown: 1\ntitle: Much\nkinds: {main: {thread: M8}}\nfasteners: [{grid: {columns: 5, rows: 3, pitch: [60, 55], kind: main, id: M}}]\ntighten:\n  stages:\n")
	for n := range 33 {
		fmt.Fprintf(&text, "    - {torque: %d N·m, note: stage with a note %d}\n", 101+n, n)
	}
	text.WriteString("  source: works manual\ncautions:\n")
	for n := range 60 {
		fmt.Fprintf(&text, "  - Caution number %d of many that somebody thought of\n", n)
	}
	p := planOf(t, text.String())
	for _, paper := range sheettest.InTurn(0, 2) {
		document, _ := checkSides(t, p.Title, p, sheettest.English(paper))
		stages, cautions := 0, 0
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Weight == scene.Bold && len(text.Content) == 3 && text.Content[0] == '1' {
				stages++
			}
			if strings.HasPrefix(text.Content, "Caution number") {
				cautions++
			}
		}
		if stages != 33 || cautions != 60 {
			t.Errorf("%s, %g wide: %d stages of 33, %d cautions of 60", paper.Name, paper.Width, stages, cautions)
		}
	}
}

// A landscape A4 card has one page if the portrait one has. It reads from left,
// the part, to right, the work.
func TestLandscapeStandsBesideThePart(t *testing.T) {
	t.Parallel()
	paper := sheettest.Paper(t, "a4").Landscape()
	for _, name := range []string{"p4-head", "p4-cam-caps", "p4-sump"} {
		document, _ := card.Document(planOf(t, name), card.BothSides, sheettest.English(paper))
		if len(document.Pages) != 2 {
			t.Errorf("%s has %d pages", name, len(document.Pages))
		}
		for _, page := range document.Pages {
			right, stages := 0.0, 0.0
			for _, it := range page.Items {
				if text, ok := it.(scene.Text); ok {
					if text.Tag.Role == scene.Number {
						right = max(right, text.Box().Right)
					}
					if text.Content == words.English().Card.Stages {
						stages = text.At.X
					}
				}
			}
			if right >= stages {
				t.Errorf("%s %s: numbers reach to %.1f, the stages begin at %.1f", name, page.Name, right, stages)
			}
		}
	}
}

// Number of pages of each side, pinned from our own output, so that a layout
// change that costs paper is noticed.
func TestPageCounts(t *testing.T) {
	t.Parallel()
	// Tightening + loosening, in the order of the names.
	names := []string{"p4-cam-caps", "p4-cover", "p4-head", "p4-manifold", "p4-pump-flange", "p4-sump", "p4-v-head-right"}
	const usual = "1+1 1+1 1+1 1+1 2+1 1+1 1+1"
	want := map[string]string{
		"a3 297 wide": usual, "a3 420 wide": usual, "a4 210 wide": usual, "a4 297 wide": usual,
		"letter 215.9 wide": "1+1 1+1 1+1 1+1 2+1 1+1 2+1", "letter 279.4 wide": usual,
		"a5 148 wide": "2+2 2+2 3+2 2+2 5+2 2+2 3+3",
		"a5 210 wide": "2+3 2+2 3+3 3+2 5+3 2+2 3+3",
	}
	for k, paper := range sheettest.Papers() {
		key := fmt.Sprintf("%s %g wide", paper.Name, paper.Width)
		for n, want := range strings.Fields(want[key]) {
			if !testkit.Full() && (n+k)%3 > 0 {
				continue
			}
			p := planOf(t, names[n])
			tighten, _ := card.Document(p, card.TightenSide, sheettest.English(paper))
			loosen, _ := card.Document(p, card.LoosenSide, sheettest.English(paper))
			if got := fmt.Sprintf("%d+%d", len(tighten.Pages), len(loosen.Pages)); got != want {
				t.Errorf("%s on %s: %s pages, want %s", names[n], key, got, want)
			}
		}
		if len(strings.Fields(want[key])) != len(names) {
			t.Errorf("%s: not every count is there", key)
		}
	}
}

// A black-and-white copy of a card loses no word and no line.
func TestPhotocopy(t *testing.T) {
	t.Parallel()
	for n, name := range append(patterns.Builtin(), everyWord, patterntest.Generated(4), patterntest.Generated(5)) {
		p := planOf(t, name)
		for _, paper := range sheettest.InTurn(n, 8) {
			document, _ := card.Document(p, card.BothSides, sheettest.English(paper))
			for _, page := range document.Pages {
				for _, fault := range scenetest.CheckPhotocopy(page) {
					t.Errorf("%s on %s: %s", p.Title, paper.Name, fault)
				}
			}
		}
	}
}

// However many checks there are, no page is empty, and the troubleshooting box
// is on a side once.
func TestNoPageIsEmpty(t *testing.T) {
	t.Parallel()
	for lines := 8; lines <= 24; lines += 2 {
		text := "drawdown: 1\ntitle: Part\nkinds: {main: {thread: M8}}\nfasteners: [{grid: {columns: 5, rows: 3, pitch: [60, 55], kind: main, id: M}}]\ntighten:\n  stages: [{torque: 20 N·m}]\n  source: works manual\ncautions:\n"
		for n := range lines {
			text += fmt.Sprintf("  - Caution number %d of many\n", n)
		}
		p := planOf(t, text)
		for _, paper := range sheettest.InTurn(lines/2, 4) {
			w := words.English()
			document, _ := card.Document(p, card.TightenSide, sheet.Request{Paper: paper, Words: w})
			boxes := 0
			for _, page := range document.Pages {
				something := false
				for _, text := range scenetest.Texts(page) {
					switch text.Content {
					case w.Card.Stages, w.Card.TickAsYouGo, w.Card.Before:
						something = true
					case w.Card.TighteningTrouble.Steps[0]:
						boxes++
					}
					something = something || text.Tag.Role == scene.Number
				}
				if !something {
					t.Errorf("%d cautions, %s, %g wide: %s is empty", lines, paper.Name, paper.Width, page.Name)
				}
				for _, fault := range scenetest.CheckLayout(page) {
					t.Errorf("%d cautions, %s, %g wide: %s", lines, paper.Name, paper.Width, fault)
				}
			}
			if boxes != 1 {
				t.Errorf("%d cautions, %s, %g wide: the box stands %d times", lines, paper.Name, paper.Width, boxes)
			}
		}
	}
}

// The checks are on page one, above stages and ticks. If not everything fits,
// the stages are divided, and the part is on each of their pages.
func TestOrderOfUse(t *testing.T) {
	t.Parallel()
	w := words.English().Card
	plans := []string{everyWord, manyStages(11, 9), manyStages(5, 16)}
	for seed := range uint64(6) {
		plans = append(plans, patterntest.Generated(seed))
	}
	for n, name := range append(patterns.Builtin(), plans...) {
		p := planOf(t, name)
		for _, paper := range sheettest.InTurn(n, 8) {
			for _, side := range []card.Sides{card.TightenSide, card.LoosenSide} {
				document, _ := card.Document(p, side, sheettest.English(paper))
				for k, page := range document.Pages {
					where := fmt.Sprintf("%s on %s, %g wide: page %s", p.Title, paper.Name, paper.Width, page.Name)
					checkOrderOfUse(t, where, page, w, k == 0)
				}
			}
		}
	}
}

func checkOrderOfUse(t *testing.T, where string, page scene.Page, w words.Card, first bool) {
	t.Helper()
	at, numbers := map[string]scene.Box{}, 0
	for _, it := range page.Items {
		if text, ok := it.(scene.Text); ok {
			at[text.Content] = text.Box()
			if text.Tag.Role == scene.Number {
				numbers++
			}
		}
	}
	before, checks := at[w.Before]
	if first && !checks {
		t.Errorf("%s: %q does not stand there", where, w.Before)
	}
	for _, later := range []string{w.Stages, w.TickAsYouGo} {
		// Beside is as good as above.
		if box, there := at[later]; there && checks && box.Top < before.Top {
			t.Errorf("%s: %q stands above %q", where, later, w.Before)
		}
	}
	_, stages := at[w.Stages]
	_, ticks := at[w.TickAsYouGo]
	if stages && ticks && numbers == 0 {
		t.Errorf("%s: stages and ticks stand there without the part", where)
	}
}

// A stage that turns loose bolts further does not break them loose again.
func TestOnlyTheFirstTurnBreaksLoose(t *testing.T) {
	t.Parallel()
	document, _ := card.Document(planOf(t, "p4-cam-caps"), card.LoosenSide, sheettest.English(sheettest.Paper(t, "a4")))
	n := 0
	for _, text := range scenetest.Texts(document.Pages...) {
		if text.Content == words.English().Card.Stage.BreakLoose {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d stages break loose, want 1 of 2 that turn back", n)
	}
}

// The caption explains the symbol of a dowel if there is one, and says that the
// cast numbers are the order if they are.
func TestCaptionNamesDowelsAndCastOrder(t *testing.T) {
	t.Parallel()
	w := words.English().Card.Part
	for _, c := range []struct {
		name, want string
		there      bool
	}{
		{"p4-head", w.Dowel, true}, {"p4-cover", w.Dowel, false},
		{"p4-cover", w.LargeCast + " Start: black. End: double ring. Order: 14 down to 1.", true}, {"p4-head", w.LargeCast, false}, {"p4-head", "Small number: " + w.Tightening, true},
	} {
		document, _ := card.Document(planOf(t, c.name), card.LoosenSide, sheettest.English(sheettest.Paper(t, "a4")))
		all := ""
		for _, text := range scenetest.Texts(document.Pages...) {
			all += text.Content + " "
		}
		if strings.Contains(all, c.want) != c.there {
			t.Errorf("%s: %q stands there: %v, want %v", c.name, c.want, !c.there, c.there)
		}
	}
}

// A card without stages shows the part and says that it has no figures, however
// many checks there are.
func TestNoStagesAndManyCautions(t *testing.T) {
	t.Parallel()
	text := "drawdown: 1\ntitle: Part\nkinds: {main: {thread: M8}}\nfasteners: [{grid: {columns: 5, rows: 3, pitch: [60, 55], kind: main, id: M}}]\ncautions:\n"
	for n := range 40 {
		text += fmt.Sprintf("  - Caution number %d of many\n", n)
	}
	p, w := planOf(t, text), words.English()
	for _, paper := range sheettest.Papers() {
		document, _ := card.Document(p, card.TightenSide, sheettest.English(paper))
		said, numbers := "", 0
		for _, text := range scenetest.Texts(document.Pages...) {
			said += text.Content + " "
			if text.Tag.Role == scene.Number && text.Weight == scene.Bold {
				numbers++
			}
		}
		if numbers < 15 || !strings.Contains(said, w.Card.Stage.None) {
			t.Errorf("%s, %g wide: %d numbers; says that there are no figures: %v", paper.Name, paper.Width, numbers, strings.Contains(said, w.Card.Stage.None))
		}
	}
}

// A caption far from its drawing looks like the heading of what follows, so it
// starts one line below the part.
func TestCaptionStandsWithThePart(t *testing.T) {
	t.Parallel()
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, paper := range sheettest.InTurn(n, 8) {
			document, _ := card.Document(p, card.BothSides, sheettest.English(paper))
			for _, page := range document.Pages {
				part, drawn := partOn(page, p)
				caption := firstBelow(page, part)
				if gap := caption.Box().Top - part.Bottom; drawn && gap > 1.6*caption.Size {
					t.Errorf("%s on %s, %g wide: page %s: the caption stands %.1f mm below the part", name, paper.Name, paper.Width, page.Name, gap)
				}
			}
		}
	}
}

// partOn is the bounding box of the part on a page, words included.
func partOn(page scene.Page, p plan.Plan) (part scene.Box, drawn bool) {
	var items []scene.Item
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Shape:
			drawn = drawn || it.Tag.Role == scene.Mark
			if it.Tag.Role == scene.Mark || it.Tag.Role == scene.Edge || it.Tag.Role == scene.Hole {
				items = append(items, it)
			}
		case scene.Text:
			label := slices.ContainsFunc(p.Joint.Labels, func(l geometry.Label) bool { return l.Text == it.Content })
			if it.Tag.Role == scene.Number || it.Tag.Role == scene.Label || label {
				items = append(items, it)
			}
		}
	}
	return scene.Bounds(items), drawn
}

// firstBelow is the first text below the part in its column.
func firstBelow(page scene.Page, part scene.Box) (first scene.Text) {
	top := page.Height
	for _, text := range scenetest.Texts(page) {
		b := text.Box()
		if b.Top >= part.Bottom-0.01 && b.Left < part.Right && b.Right > part.Left && b.Top < top {
			first, top = text, b.Top
		}
	}
	return first
}
