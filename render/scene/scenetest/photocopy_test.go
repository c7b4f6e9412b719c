package scenetest

import (
	"testing"

	"drawdown/render/scene"
)

// First principles: grey on black and black on grey both turn black on black;
// white on a tint turns white on white; a tint under black is left away.
func TestPhotocopyFindsWhatIsLost(t *testing.T) {
	t.Parallel()
	word := func(ink scene.Ink) scene.Text {
		return scene.Text{At: scene.Point{X: 20, Y: 20}, Size: 4, Width: 20, Ink: ink, Content: "word"}
	}
	panel := func(ink scene.Ink) scene.Shape { return scene.Shape{Path: scene.Rect(10, 10, 50, 20, 0), Fill: ink} }
	line := func(ink scene.Ink, width float64) scene.Shape {
		return scene.Shape{Path: scene.Polyline([]scene.Point{{X: 0, Y: 0}, {X: 50, Y: 0}}, false), Stroke: ink, Width: width}
	}
	for _, c := range []struct {
		name  string
		items []scene.Item
		lost  int
	}{
		{"black on white", []scene.Item{word(scene.Black)}, 0},
		{"grey on black", []scene.Item{panel(scene.Black), word(scene.Grey)}, 1},
		{"accent on grey", []scene.Item{panel(scene.Grey), word(scene.Accent)}, 1},
		{"white on black", []scene.Item{panel(scene.Black), word(scene.White)}, 0},
		{"white on shade", []scene.Item{panel(scene.Shade), word(scene.White)}, 1},
		{"black on shade", []scene.Item{panel(scene.Shade), word(scene.Black)}, 0},
		{"white over black over it", []scene.Item{panel(scene.Black), panel(scene.White), word(scene.Black)}, 0},
		{"half on black", []scene.Item{scene.Shape{Path: scene.Rect(30, 10, 50, 20, 0), Fill: scene.Black}, word(scene.Black)}, 1},
		{"painted over", []scene.Item{word(scene.Black), panel(scene.White)}, 1},
		{"line", []scene.Item{line(scene.Grey, 0.25)}, 0},
		{"tinted line", []scene.Item{line(scene.Shade, 0.5)}, 1},
		{"hair line", []scene.Item{line(scene.Black, 0.05)}, 1},
	} {
		if faults := CheckPhotocopy(scene.Page{Width: 100, Height: 100, Items: c.items}); len(faults) != c.lost {
			t.Errorf("%s: %q", c.name, faults)
		}
	}
}
