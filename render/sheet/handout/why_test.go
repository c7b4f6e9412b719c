package handout_test

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/patterns"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/handout"
	"drawdown/render/words"
)

var someFigures = handout.Figures{
	LowestPercent: [2]handout.Band{{Low: 86, Nominal: 94, High: 98}, {Low: 23, Nominal: 69, High: 86}},
	UnevenMm:      [2]handout.Band{{Low: 0.09, Nominal: 0.14, High: 0.21}, {Low: 0.14, Nominal: 0.23, High: 0.35}},
}

// The page that tells why passes the layout check for every pattern, on every
// paper and in every language, and is one page on A4 and Letter.
func TestWhyLayouts(t *testing.T) {
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for k, paper := range papers() {
			w := languages(t)[(k+n)%len(words.Languages())]
			figures := someFigures
			figures.TellsLowest, figures.TellsUneven = k%2 == 0, k%3 == 0
			doc := handout.WhyDocument(p, &figures, handout.Request{Paper: paper, Words: w})
			what := fmt.Sprintf("%s: why on %s %g wide, %s", name, paper.Name, paper.Width, w.Language)
			checkLayout(t, what, doc)
			if upright := paper.Height > paper.Width; upright && paper.Name != "a5" && len(doc.Pages) != 1 {
				t.Errorf("%s: %d pages", what, len(doc.Pages))
			}
		}
	}
	for _, count := range []int{1, 2, 3, 60} {
		p := planOf(t, fmt.Sprintf("drawdown: 1\ntitle: Flange\nfasteners: [{circle: {count: %d, diameter: 300, id: S}}]\n", count))
		a4, _ := sheet.FindPaper("a4")
		checkLayout(t, fmt.Sprintf("%d bolts", count), handout.WhyDocument(p, nil, handout.Request{Paper: a4, Words: words.English()}))
	}
}

func said(doc scene.Document) string {
	var all []string
	for _, page := range doc.Pages {
		for _, text := range texts(page) {
			all = append(all, text.Content)
		}
	}
	return strings.Join(all, " ")
}

// A circle is told why crosswise, all else why outwards; figures carry ≈ and
// their band, and one that does not tell the orders apart is not held up as a
// reason.
func TestWhySays(t *testing.T) {
	a4, _ := sheet.FindPaper("a4")
	ask := handout.Request{Paper: a4, Words: words.English()}
	telling := someFigures
	telling.TellsLowest = true
	for _, c := range []struct {
		pattern string
		figures *handout.Figures
		says    []string
		not     []string
	}{
		{"p4-head", &telling, []string{"Why from the centre outwards?", "keeps ≈ 94 (86–98) % in this order and ≈ 69 (23–86) % edges first", "In brackets"}, []string{"out of true", "crosswise", "What the order is for"}},
		{"p4-head", &someFigures, []string{"What the order is for", "no bulge is trapped"}, []string{"≈", "finds little"}},
		{"p4-flywheel", &someFigures, []string{"What the order is for", "no side is pinched"}, []string{"≈", "finds little", "bulge"}},
		{"p4-pump-flange", &handout.Figures{UnevenMm: someFigures.UnevenMm, TellsUneven: true}, []string{"Why crosswise?", "lies ≈ 0.14 (0.09–0.21) mm out of true in this order and ≈ 0.23 (0.14–0.35) mm once round the rim", "does not speak for the order"}, []string{"centre outwards", "edges first", "edges bend"}},
		{"p4-head", nil, []string{"Common practice"}, []string{"≈"}},
	} {
		text := said(handout.WhyDocument(planOf(t, c.pattern), c.figures, ask))
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
