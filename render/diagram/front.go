package diagram

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// FrontWays is where on paper the front of a machine lies.
var FrontWays = map[geometry.Front]scene.Point{
	geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: -1}, geometry.FrontBottom: {Y: 1},
}

// Arrow is a solid arrow head with a word at its tip. Lengths are millimetres.
type Arrow struct {
	Gap, Length, Half float64 // from what it stands beside; of the head, and half of its base
	Air, Em           float64 // before the word, and its size
}

// Beside draws the arrow beside a box, in one of the ways of the paper. Without a
// word it stands alone.
func (a Arrow) Beside(b scene.Box, way scene.Point, word string) []scene.Item {
	c := b.Centre()
	on := func(along float64) scene.Point {
		return scene.Point{X: c.X + way.X*(b.Width()/2+along), Y: c.Y + way.Y*(b.Height()/2+along)}
	}
	items := []scene.Item{Arrowhead(on(a.Gap), on(a.Gap+a.Length), a.Half, scene.Black)}
	if word == "" {
		return items
	}
	t := scene.Text{
		At: on(a.Gap + a.Length + a.Air), Size: a.Em, Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black,
		Upward: way.X != 0, Content: word,
	}
	t.At.X += math.Max(0, way.X) * a.Em * font.CapHeight
	t.At.Y += math.Max(0, way.Y) * a.Em * font.CapHeight
	return append(items, font.Set(t))
}

// Arrowhead is a filled triangle from the middle of its base to its tip.
func Arrowhead(base, tip scene.Point, half float64, ink scene.Ink) scene.Shape {
	dx, dy := tip.X-base.X, tip.Y-base.Y
	length := math.Max(math.Hypot(dx, dy), 1e-9)
	nx, ny := -dy/length*half, dx/length*half
	return scene.Shape{
		Path: scene.Polyline([]scene.Point{{X: base.X + nx, Y: base.Y + ny}, tip, {X: base.X - nx, Y: base.Y - ny}}, true),
		Fill: ink,
	}
}
