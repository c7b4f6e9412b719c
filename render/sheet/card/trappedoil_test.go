package card_test

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

// Oil in a blind hole can crack the part. The line appears for every hole that
// is not known to be a through hole, which only a nut without a tapped part
// shows.
func TestTrappedOilIsToldOf(t *testing.T) {
	t.Parallel()
	w := words.English().Card.Checks.TappedHoles
	for kind, there := range map[string]bool{
		"{thread: M10, lubricant: engine oil}":                  true,
		"{thread: M10, into: aluminium, lubricant: engine oil}": true,
		"{thread: M10, into: aluminium, nut: 16 mm}":            true,
		"{thread: M10, head: 16 mm, nut: 16 mm}":                false,
	} {
		p := planOf(t, fmt.Sprintf("drawdown: 1\ntitle: Lid\nkinds: {b: %s}\nfasteners: [{row: {count: 4, pitch: 60, kind: b, id: M}}]\ntighten: {stages: [{torque: 20 N·m}], source: a manual}\n", kind))
		document, _ := card.Document(p, card.TightenSide, sheettest.English(sheettest.Paper(t, "a4")))
		all := ""
		for _, text := range scenetest.Texts(document.Pages...) {
			all += text.Content + " "
		}
		if strings.Contains(all, "trapped oil") != there || !strings.Contains(w, "trapped oil") {
			t.Errorf("%s: the line stands there: %v", kind, !there)
		}
	}
}
