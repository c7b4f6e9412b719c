package handout_test

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/handout"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/plan"
)

var someFigures = interaction.Reason{
	LowestPercent: [2]bounds.Band{{Low: 86, Nominal: 94, High: 98}, {Low: 23, Nominal: 69, High: 86}},
	UnevenMm:      [2]bounds.Band{{Low: 0.09, Nominal: 0.14, High: 0.21}, {Low: 0.14, Nominal: 0.23, High: 0.35}},
}

// whyDocument is the explanation page as a document.
func whyDocument(p plan.Plan, figures *interaction.Reason, ask handout.Request) scene.Document {
	return sheet.Document(p, ask.Request, handout.WhyPages(p, figures, ask))
}

// The explanation page passes the layout check for every pattern, on every
// paper and in every language. It is one page, or at most two on paper lower
// than A4. A plain run tries some in turn.
func TestWhyLayouts(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for k, paper := range sheettest.InTurn(n, 2) {
			speaking := wordstest.All()
			if paper.Name != "a5" { // with plenty of space, one language is enough
				speaking = speaking[(k+n)%len(speaking):][:1]
			}
			for m, w := range speaking {
				checkWhy(t, p, handout.Request{Request: sheet.Request{Paper: paper, Words: w}}, (k+m)%2 == 0, (k+m)%3 == 0)
			}
		}
	}
	for _, count := range []int{1, 2, 3, 60} {
		p := planOf(t, fmt.Sprintf("drawdown: 1\ntitle: Flange\nfasteners: [{circle: {count: %d, diameter: 300, id: S}}]\n", count))
		a4, _ := sheet.FindPaper("a4")
		checkLayout(t, fmt.Sprintf("%d bolts", count), whyDocument(p, nil, handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}}))
	}
}

// checkWhy checks a page that uses one or both figures, or none.
func checkWhy(t *testing.T, p plan.Plan, ask handout.Request, lowest, uneven bool) {
	t.Helper()
	figures := someFigures
	figures.TellsLowest, figures.TellsUneven = lowest, uneven
	if name := p.Name; strings.HasSuffix(name, "caps") {
		figures.TellsLowest = false // caps without a gasket never show both
	}
	doc := whyDocument(p, &figures, ask)
	what := fmt.Sprintf("%s: why on %s %g wide, %s", p.Name, ask.Paper.Name, ask.Paper.Width, ask.Words.Language)
	checkLayout(t, what, doc)
	most := 1
	if ask.Paper.Name != "a4" || ask.Paper.Wide() { // the others have less height
		most = 2
	}
	if len(doc.Pages) > most {
		t.Errorf("%s: %d pages, want %d", what, len(doc.Pages), most)
	}
}

// The small drawing of the part fills its space: on A4, with four side by side,
// a flange is as wide as its column or 40 mm high, and its marks can be told
// apart.
func TestWhyDrawsThePartLarge(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	for _, name := range []string{"p4-pump-flange", "p4-head"} {
		doc := whyDocument(planOf(t, name), nil, handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}})
		widest := 0.0
		for _, it := range doc.Pages[0].Items {
			if shape, ok := it.(scene.Shape); ok && shape.Fill == scene.Tint {
				if box := shape.Path.Bounds(); box.Bottom < 100 && box.Height() > 15 { // no section is as high
					widest = max(widest, box.Width())
				}
			}
		}
		if widest < 38 {
			t.Errorf("%s is drawn %.1f mm wide", name, widest)
		}
	}
}

// If a cap is unloaded, the page says that no figure includes springs;
// otherwise it does not mention them.
func TestWhyTellsOfSprings(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	ask := handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}}
	for name, want := range map[string]bool{"p4-cam-caps": true, "p4-main-caps": false} {
		text := said(whyDocument(planOf(t, name), nil, ask))
		if got := strings.Contains(text, "Springs under caps are not in the drawings") && strings.Contains(text, "cap 4, where no spring presses"); got != want {
			t.Errorf("%s speaks of springs %v: %s", name, got, text)
		}
	}
}

func said(doc scene.Document) string {
	var all []string
	for _, page := range doc.Pages {
		for _, text := range scenetest.Texts(page) {
			all = append(all, text.Content)
		}
	}
	return strings.Join(all, " ")
}

// For a circle the page explains crosswise, for all others outwards. Figures
// have a ≈ and their range, and a figure that does not distinguish the orders
// is not given as a reason.
func TestWhySays(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	ask := handout.Request{Request: sheet.Request{Paper: a4, Words: words.English()}}
	telling := someFigures
	telling.TellsLowest = true
	for _, c := range []struct {
		pattern string
		figures *interaction.Reason
		says    []string
		not     []string
	}{
		{"p4-head", &telling, []string{"Why from the centre outwards?", "keeps ≈ 94 (86–98) % in this order and ≈ 69 (23–86) % edges first", "In brackets"}, []string{"out of true", "crosswise", "Purpose of the order"}},
		{"p4-head", &someFigures, []string{"Purpose of the order", "no bulge is trapped"}, []string{"≈", "finds little"}},
		{"p4-flywheel", &someFigures, []string{"Purpose of the order", "no side is pinched"}, []string{"≈", "finds little", "bulge"}},
		{"p4-pump-flange", &interaction.Reason{UnevenMm: someFigures.UnevenMm, TellsUneven: true}, []string{"Why crosswise?", "is ≈ 0.14 (0.09–0.21) mm out of true in this order and ≈ 0.23 (0.14–0.35) mm one by one round the rim", "does not show the benefit of the order"}, []string{"centre outwards", "edges first", "edges bend"}},
		{"p4-head", nil, []string{"Common practice"}, []string{"≈"}},
	} {
		text := said(whyDocument(planOf(t, c.pattern), c.figures, ask))
		for _, want := range c.says {
			if !strings.Contains(text, want) {
				t.Errorf("%s does not say %q: %s", c.pattern, want, text)
			}
		}
		for _, word := range c.not {
			if strings.Contains(text, word) {
				t.Errorf("%s says %q: %s", c.pattern, word, text)
			}
		}
	}
}
