package font_test

import (
	"math"
	"strings"
	"testing"

	"drawdown/render/font"
	"drawdown/render/scene"
)

func page(s string) scene.Page {
	return scene.Page{Name: "card", Width: 210, Height: 297, Items: []scene.Item{
		scene.Text{Size: 3, Width: 10, Ink: scene.Black, Content: s},
	}}
}

func TestCheck(t *testing.T) {
	for _, s := range []string{"", "40 N·m, 90°", "⌀ 12 has a stand-in", "tab\tand\r\nline end", "Łódź, Ξένος, Юг"} {
		if err := font.Check(page(s)); err != nil {
			t.Errorf("%q: %v", s, err)
		}
	}
	for s, want := range map[string]string{
		"spanner 🔧": "U+1F527", "漢字": "U+6F22", "bad \xff byte": "UTF-8", "private \ue000": "U+E000",
	} {
		if err := font.Check(page(s)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want an error with %q", s, err, want)
		}
	}
	bad := page("a")
	bad.Width = math.NaN()
	if font.Check(bad) == nil {
		t.Error("a page of NaN mm passed")
	}
}
