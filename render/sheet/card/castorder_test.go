package card_test

import (
	"strings"
	"testing"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

// First principles: who follows the numbers has to know whose order they are.
// The cover is ordered by its casting, the head is not.
func TestCardSaysThatTheOrderIsTheCastings(t *testing.T) {
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
