package scene_test

import (
	"math"
	"strings"
	"testing"

	"drawdown/render/scene"
)

func a4(items ...scene.Item) scene.Page {
	return scene.Page{Name: "card", Width: 210, Height: 297, Items: items}
}

func TestCheckPassesSoundPages(t *testing.T) {
	page := a4(
		scene.Shape{Path: scene.Circle(50, 50, 5), Fill: scene.Tint, Stroke: scene.Black, Width: 0.3, Dash: 1},
		scene.Shape{Fill: scene.Black},
		scene.Text{At: scene.Point{X: 1, Y: 2}, Size: 3, Width: 4, Ink: scene.Black, Content: "a"},
	)
	if err := scene.Check(page); err != nil {
		t.Error(err)
	}
}

// The limits are our own; each message must name the offending value.
func TestCheckTurnsDown(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	line := func(x float64) scene.Path {
		return scene.Path{{Verb: scene.Move}, {Verb: scene.Line, P: [3]scene.Point{{X: x}}}}
	}
	text := scene.Text{Size: 3, Width: 4, Ink: scene.Black, Content: "a"}
	changed := func(change func(t *scene.Text)) scene.Page {
		c := text
		change(&c)
		return a4(c)
	}
	for _, c := range []struct {
		name, want string
		page       scene.Page
	}{
		{"no width", "0 × 297", scene.Page{Height: 297}},
		{"page NaN", "NaN", scene.Page{Width: nan, Height: 297}},
		{"page huge", "6000", scene.Page{Width: 6000, Height: 297}},
		{"line NaN", "NaN", a4(scene.Shape{Path: line(nan), Stroke: scene.Black, Width: 1})},
		{"line endless", "+Inf", a4(scene.Shape{Path: line(inf), Stroke: scene.Black, Width: 1})},
		{"line far", "1e+07", a4(scene.Shape{Path: line(1e7), Stroke: scene.Black, Width: 1})},
		{"unset width", "0 mm wide", a4(scene.Shape{Path: line(1), Stroke: scene.Black})},
		{"dash too short", "1e-06", a4(scene.Shape{Path: line(1), Stroke: scene.Black, Width: 1, Dash: 1e-6})},
		{"no such ink", "fill 99", a4(scene.Shape{Path: line(1), Fill: 99})},
		{"no start", "begin with a Move", a4(scene.Shape{Path: line(1)[1:], Fill: scene.Black})},
		{"line after close", "begin with a Move", a4(scene.Shape{Path: append(scene.Circle(1, 1, 1), line(1)[1]), Fill: scene.Black})},
		{"no such verb", "verb 9", a4(scene.Shape{Path: scene.Path{{Verb: 9}}})},
		{"text NaN", "NaN", changed(func(c *scene.Text) { c.At.Y = nan })},
		{"text size", "set at 0 mm", changed(func(c *scene.Text) { c.Size = 0 })},
		{"text size NaN", "set at NaN", changed(func(c *scene.Text) { c.Size = nan })},
		{"text width", "-1 mm wide", changed(func(c *scene.Text) { c.Width = -1 })},
		{"text ink", "ink 99", changed(func(c *scene.Text) { c.Ink = 99 })},
		{"text weight", "weight 9", changed(func(c *scene.Text) { c.Weight = 9 })},
		{"text anchor", "anchor 9", changed(func(c *scene.Text) { c.Anchor = 9 })},
		{"no item", "<nil>", a4(nil)},
	} {
		err := scene.Check(c.page)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want an error with %q", c.name, err, c.want)
		}
	}
}
