package card_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/patterns/patterntest"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

// fullParts returns parts of count fasteners, 200 or 400, whose numbers do not
// fit on small paper.
func fullParts(count int) map[string]string {
	return map[string]string{
		"circle":    fmt.Sprintf(`{circle: {count: %d, diameter: %d, centre: [0, 0], first: 90°, turn: right, kind: main, id: S}}`, count, 13*count),
		"grid":      fmt.Sprintf(`{grid: {columns: %d, rows: 20, pitch: [60, 55], kind: main, id: S}}`, count/20),
		"perimeter": fmt.Sprintf(`{rectangle: {columns: %d, rows: %d, size: [%d, %d], centre: [0, 0], kind: main, id: S}}`, 3*count/10+1, count/5-1, 6*count, 4*count),
		"row":       fmt.Sprintf(`{row: {count: %d, pitch: 60, from: [0, 0], angle: 0°, kind: main, id: S}}`, count),
	}
}

func full(layout string) string {
	return "drawdown: 1\ntitle: Full part\nkinds: {main: {thread: M8}}\nfasteners:\n  - " + layout +
		"\nfeatures:\n  - {front: left}\ntighten:\n  stages: [{torque: 20 N·m}]\n  source: works manual\n"
}

// First principles: a bolt with a box to tick has its number somewhere on the
// side, beside its mark, on every paper. A plain run tries half as many bolts.
func TestEveryNumberStandsSomewhere(t *testing.T) {
	t.Parallel()
	count := testkit.Samples(160, 400)
	for n, name := range slices.Sorted(maps.Keys(fullParts(count))) {
		p := patterntest.WithBore(planOf(t, full(fullParts(count)[name])), geometry.Bore{Centre: geometry.Point{X: 600, Y: 300}, Diameter: 500, Label: "port"})
		for k, paper := range []sheet.Paper{sheettest.Paper(t, "a5"), sheettest.Paper(t, "a5").Landscape(), sheettest.Paper(t, "a4").Landscape()} {
			if !testkit.Full() && k != n%3 {
				continue
			}
			document, notes := card.Document(p, card.TightenSide, sheet.Request{Paper: paper, Words: words.English()})
			numbers := map[string]bool{}
			for _, page := range document.Pages {
				for _, fault := range append(scenetest.CheckLayout(page), scenetest.CheckPhotocopy(page)...) {
					t.Errorf("%s on %s, %g wide: %s", name, paper.Name, paper.Width, fault)
				}
			}
			for _, text := range scenetest.Texts(document.Pages...) {
				if text.Tag.Role == scene.Number {
					numbers[text.Tag.Name+" "+text.Content] = true
				}
			}
			for k, i := range p.Tighten.Order {
				if want := fmt.Sprintf("%s %d", p.Joint.Fasteners[i].ID, k+1); !numbers[want] {
					t.Errorf("%s on %s, %g wide: %s stands nowhere", name, paper.Name, paper.Width, want)
				}
			}
			if len(numbers) != count || strings.Contains(strings.Join(notes, "\n"), fmt.Sprintf("of %d numbers", count)) {
				t.Errorf("%s on %s, %g wide: %d numbers, %q", name, paper.Name, paper.Width, len(numbers), notes)
			}
		}
	}
}
