package card_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

// First principles: the reader must know whose order the numbers give. The
// cover has the cast order, the head does not.
func TestCardSaysThatTheOrderIsTheCastings(t *testing.T) {
	t.Parallel()
	const kinds = "drawdown: 1\ntitle: Lid\nkinds: {big: {thread: M10}, small: {thread: M8}}\n" +
		"fasteners: [{id: A, at: [0, 0], kind: big, cast: 2}, {id: B, at: [80, 0], kind: big, cast: 1}, {row: {count: 2, pitch: 90, from: [0, 60], id: C, kind: small}}]\n"
	for pattern, want := range map[string]string{
		"p4-cover": "Order: as cast on the part.",
		kinds:      "Order of big: as cast on the part.",
		"p4-head":  "",
	} {
		document, _ := card.Document(planOf(t, pattern), card.TightenSide, sheettest.English(sheettest.Paper(t, "a4")))
		got := ""
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Tag.Role != scene.Number && strings.Contains(text.Content, "as cast on the part") {
				got = text.Content
			}
		}
		if !strings.HasPrefix(got, want) || want == "" && got != "" {
			t.Errorf("%.20s: %q, want %q", pattern, got, want)
		}
	}
}

// First principles: a technician looks for the cast number. On both sides, on
// every paper and in every language it is the large number, the tick boxes are
// headed by those numbers in working order, and the text says from which number
// to which. The first bolt is filled, the last has two rings.
func TestCastNumbersAreTheLargeOnes(t *testing.T) {
	t.Parallel()
	p := planOf(t, "p4-cover")
	for turn := range testkit.Samples(4, 1) { // in four, each paper meets each language
		for _, ask := range sheettest.Requests(turn) {
			for side, run := range map[card.Sides]struct {
				first, last int
				words       string
			}{card.TightenSide: {1, 14, ask.Words.Card.Part.Up}, card.LoosenSide: {14, 1, ask.Words.Card.Part.Down}} {
				document, _ := card.Document(p, side, ask)
				at := fmt.Sprintf("%s on %s in %s", side, ask.Paper.Name, ask.Words.Language)
				marks, heads, said := readCard(document.Pages)
				for _, f := range p.Joint.Fasteners {
					if marks[f.ID] != strconv.Itoa(f.Cast) {
						t.Errorf("%s: %s shows %q, cast is %d", at, f.ID, marks[f.ID], f.Cast)
					}
				}
				step := (run.last - run.first) / 13
				for k, head := range heads {
					if want := strconv.Itoa(run.first + step*(k%14)); head != want {
						t.Errorf("%s: head %d of the boxes is %s, want %s", at, k, head, want)
					}
				}
				if len(heads) < 14 || len(heads)%14 != 0 {
					t.Errorf("%s: %d heads over the boxes", at, len(heads))
				}
				if want := fmt.Sprintf(run.words, run.first, run.last); strings.Count(said, want) < 2 {
					t.Errorf("%s: %q does not stand under the part and over the boxes", at, want)
				}
			}
		}
	}
}

// readCard returns the number in each mark, the headings of the tick boxes line
// by line, and all words.
func readCard(pages []scene.Page) (marks map[string]string, heads []string, said string) {
	marks = map[string]string{}
	for _, page := range pages {
		for _, text := range scenetest.Texts(page) {
			switch {
			case text.Tag.Role == scene.Number && text.Weight == scene.Bold:
				marks[text.Tag.Name] = text.Content
			case text.Ink == scene.White && text.Weight == scene.Bold && text.Anchor == scene.Middle && len(text.Content) < 3:
				heads = append(heads, text.Content)
			default:
				said += text.Content + " "
			}
		}
	}
	return marks, heads, said
}
