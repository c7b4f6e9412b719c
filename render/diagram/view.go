package diagram

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// view maps positions on the part to the page, with one scale for both
// directions and y flipped.
type view struct {
	scale  float64 // mm on paper per mm of the part
	part   geometry.Point
	centre scene.Point
}

func (v view) at(p geometry.Point) scene.Point {
	return scene.Point{
		X: v.centre.X + (p.X-v.part.X)*v.scale,
		Y: v.centre.Y - (p.Y-v.part.Y)*v.scale,
	}
}

func (v view) box(b geometry.Box) scene.Box { return scene.BoxOf(v.at(b.Min), v.at(b.Max)) }

func (v view) all(points []geometry.Point) []scene.Point {
	out := make([]scene.Point, len(points))
	for i, p := range points {
		out[i] = v.at(p)
	}
	return out
}

// fit returns the largest view that keeps the part's bounds in the box, and the
// fasteners at least a mark's radius from its edges.
func fit(part, fasteners geometry.Box, box scene.Box, radius float64) view {
	v := view{
		part:   part.Min.Add(part.Max).Scale(0.5),
		centre: box.Centre(),
		scale:  math.Min(ratio(box.Width(), part.Width()), ratio(box.Height(), part.Height())),
	}
	// Extent of the fasteners from the middle of the part, on each side.
	for _, reach := range [][2]float64{
		{fasteners.Max.X - v.part.X, box.Width() / 2},
		{v.part.X - fasteners.Min.X, box.Width() / 2},
		{fasteners.Max.Y - v.part.Y, box.Height() / 2},
		{v.part.Y - fasteners.Min.Y, box.Height() / 2},
	} {
		if reach[0] > 0 {
			v.scale = math.Min(v.scale, math.Max(0, reach[1]-radius)/reach[0])
		}
	}
	if math.IsInf(v.scale, 1) {
		v.scale = 1 // a lone fastener has no extent
	}
	return v
}

func ratio(room, extent float64) float64 {
	if extent <= 0 {
		return math.Inf(1)
	}
	return room / extent
}

// frontArrow is the arrow to the front of the machine.
func frontArrow(em float64) Arrow { return Arrow{Gap: 2, Length: 3.2, Half: 2, Air: 1, Em: em} }

// room is the width that the arrow and its word take beside an object.
func (a Arrow) room() float64 { return a.Gap + a.Length + a.Air + a.Em }

// room returns the box that remains for the part beside the front arrow.
func room(box scene.Box, front geometry.Front, em float64) scene.Box {
	way, frontRoom := FrontWays[front], frontArrow(em).room()
	box.Left -= frontRoom * min(0, way.X)
	box.Right -= frontRoom * max(0, way.X)
	box.Top -= frontRoom * min(0, way.Y)
	box.Bottom -= frontRoom * max(0, way.Y)
	return box
}

// labelRoom keeps a strip free below or above the part, so that a label near
// that edge can go outside if it does not fit inside.
func (s *sketch) labelRoom(box scene.Box) scene.Box {
	strip := s.req.SmallEm * 1.5
	middle, quarter := (s.bounds.Min.Y+s.bounds.Max.Y)/2, s.bounds.Height()/4
	above, below := false, false
	for _, l := range s.req.Plan.Joint.Labels {
		above = above || l.At.Y > middle+quarter
		below = below || l.At.Y < middle-quarter
	}
	if above {
		box.Top += strip
	}
	if below {
		box.Bottom -= strip
	}
	return box
}

// FrontWays are the directions on paper to the front of a machine.
var FrontWays = map[geometry.Front]scene.Point{
	geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: -1}, geometry.FrontBottom: {Y: 1},
}

// Arrow is a solid arrowhead with a word at its tip. Lengths are in
// millimetres.
type Arrow struct {
	Gap, Length, Half float64 // gap to the object; length of the head, and half its base
	Air, Em           float64 // gap before the word, and its size
}

// Beside draws the arrow on one side of a box. Without a word it draws the
// arrow only.
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
