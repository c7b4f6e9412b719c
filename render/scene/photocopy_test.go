package scene

import "testing"

// First principles: grey on black and black on grey both turn black on black;
// white on a tint turns white on white; a tint under black is left away.
func TestPhotocopyFindsWhatIsLost(t *testing.T) {
	word := func(ink Ink) Text { return Text{At: Point{20, 20}, Size: 4, Width: 20, Ink: ink, Content: "word"} }
	panel := func(ink Ink) Shape { return Shape{Path: Rect(10, 10, 50, 20, 0), Fill: ink} }
	line := func(ink Ink, width float64) Shape {
		return Shape{Path: Polyline([]Point{{0, 0}, {50, 0}}, false), Stroke: ink, Width: width}
	}
	for _, c := range []struct {
		name  string
		items []Item
		lost  int
	}{
		{"black on white", []Item{word(Black)}, 0},
		{"grey on black", []Item{panel(Black), word(Grey)}, 1},
		{"accent on grey", []Item{panel(Grey), word(Accent)}, 1},
		{"white on black", []Item{panel(Black), word(White)}, 0},
		{"white on shade", []Item{panel(Shade), word(White)}, 1},
		{"black on shade", []Item{panel(Shade), word(Black)}, 0},
		{"white over black over it", []Item{panel(Black), panel(White), word(Black)}, 0},
		{"half on black", []Item{Shape{Path: Rect(30, 10, 50, 20, 0), Fill: Black}, word(Black)}, 1},
		{"painted over", []Item{word(Black), panel(White)}, 1},
		{"line", []Item{line(Grey, 0.25)}, 0},
		{"tinted line", []Item{line(Shade, 0.5)}, 1},
		{"hair line", []Item{line(Black, 0.05)}, 1},
	} {
		if faults := CheckPhotocopy(Page{Width: 100, Height: 100, Items: c.items}); len(faults) != c.lost {
			t.Errorf("%s: %q", c.name, faults)
		}
	}
}
