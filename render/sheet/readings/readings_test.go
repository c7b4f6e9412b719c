package readings_test

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/readings"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

func part(holes int, known bool) readings.Part {
	p := readings.Part{Title: "Bearing cover, seen from the drive end", Machine: "Fernhollow P4 pump engine", File: "bearing-cover.yaml"}
	at := survey.RoundTheEdge(holes)
	for i := range holes {
		p.IDs = append(p.IDs, fmt.Sprintf("M%d", i+1))
		p.DiametersMm = append(p.DiametersMm, float64(i%2)*8.4)
	}
	p.Pairs = survey.Pairs(at)
	if known {
		p.At = at
	}
	return p
}

func textOf(pages []scene.Page) string {
	var all []string
	for _, page := range pages {
		for _, item := range page.Items {
			if text, ok := item.(scene.Text); ok {
				all = append(all, text.Content)
			}
		}
	}
	return strings.Join(all, "\n")
}

// Every paper in every language, with and without places: no fault, and each pair
// has its row.
func TestLayouts(t *testing.T) {
	t.Parallel()
	for turn, holes := range []int{2, 5, 12, 40} {
		for _, known := range []bool{false, true} {
			for _, ask := range sheettest.Requests(2*turn + map[bool]int{true: 1}[known]) {
				p := part(holes, known)
				doc, _ := readings.Document(p, ask)
				sheettest.Check(t, fmt.Sprint(holes, " holes, known ", known), ask, doc.Pages)
				text := textOf(doc.Pages)
				for _, pair := range p.Pairs {
					if want := p.IDs[pair[0]] + " – " + p.IDs[pair[1]]; !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
						t.Errorf("%s, %s: no row for %s", ask.Paper.Name, ask.Words.Language, want)
					}
				}
			}
		}
	}
}

// A part of which nothing was measured has room for a drawing; another is drawn,
// with a mark for each hole.
func TestDrawingOrRoom(t *testing.T) {
	t.Parallel()
	a4, _ := sheet.FindPaper("a4")
	ask := sheet.Request{Paper: a4, Words: words.English()}
	blank, _ := readings.Document(part(6, false), ask)
	known := part(6, true)
	known.At[2] = geometry.Point{X: 30, Y: 90}
	drawn, notes := readings.Document(known, ask)
	if text := textOf(blank.Pages); !strings.Contains(text, "Draw the part here") || !strings.Contains(text, "8.4 ?") {
		t.Errorf("blank: %s", text)
	}
	marks := 0
	for _, item := range drawn.Pages[0].Items {
		if s, ok := item.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			marks++
		}
	}
	if text := textOf(drawn.Pages); strings.Contains(text, "Draw the part here") || marks != 6 || len(notes) > 0 {
		t.Errorf("drawn: %d marks, %v", marks, notes)
	}
}
