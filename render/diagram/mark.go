package diagram

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

// mark is a fastener on the page.
type mark struct {
	at     scene.Point
	shape  shape
	radius float64 // of the round mark that the shape is drawn about
}

// reach is the radius of the circle that holds the whole mark.
func (m mark) reach() float64 { return m.radius * m.shape.reach }

// shape is how the fasteners of one kind are drawn: kinds differ by shape, so
// that no meaning hangs on colour.
type shape struct {
	name  string
	reach float64 // of its corners, for a round mark of radius 1
	path  func(at scene.Point, r float64) scene.Path
}

var shapes = []shape{
	{"circle", 1, func(at scene.Point, r float64) scene.Path { return scene.Circle(at.X, at.Y, r) }},
	{"square", 1.2, func(at scene.Point, r float64) scene.Path {
		h := 0.9 * r
		return scene.Rect(at.X-h, at.Y-h, 2*h, 2*h, 0.14*r)
	}},
	{"hexagon", 1.15, func(at scene.Point, r float64) scene.Path { return scene.Polygon(at.X, at.Y, 1.15*r, 6, 0) }},
	{"diamond", 1.4, func(at scene.Point, r float64) scene.Path { return scene.Polygon(at.X, at.Y, 1.4*r, 4, 0) }},
	{"triangle", 1.7, func(at scene.Point, r float64) scene.Path { return scene.Polygon(at.X, at.Y, 1.7*r, 3, 90) }},
}

// shapeOf gives the shape for the kind with that index in the plan.
func shapeOf(kind int) shape { return shapes[kind%len(shapes)] }

// Sample draws a small mark of a kind for the legend, about a place.
func Sample(kind int, at scene.Point, radius float64) scene.Item {
	return scene.Shape{Path: shapeOf(kind).path(at, radius), Fill: scene.White, Stroke: scene.Black, Width: 0.4}
}

// ringGap is the distance of the second ring about the last fastener.
const ringGap = 0.9

// placeMarks puts every fastener on the page and keeps its place free.
func (s *sketch) placeMarks(z size) {
	plan := s.req.Plan
	kinds := map[string]int{}
	for i, k := range plan.Kinds {
		kinds[k.Name] = i
	}
	for i, f := range plan.Joint.Fasteners {
		m := mark{at: s.view.at(f.At), shape: shapeOf(kinds[f.Kind]), radius: z.radius}
		s.marks = append(s.marks, m)
		s.space.takeDisc(m.at, m.reach()+s.rim(i), s.name(i))
	}
}

// rim is what the second ring of the last fastener adds to its mark.
func (s *sketch) rim(fastener int) float64 {
	if s.numbers[fastener] == len(s.numbers) && len(s.numbers) > 1 {
		return ringGap
	}
	return 0
}

// drawMarks draws the marks and the numbers in them: the first filled, the
// last ringed twice.
func (s *sketch) drawMarks(z size) {
	for i, m := range s.marks {
		tag := scene.Tag{Name: s.name(i), Role: scene.Mark}
		line := 0.6
		if z.led {
			line = 0.35
		}
		fill, ink := s.fill(i), scene.Black
		if s.numbers[i] == 1 {
			fill, ink = scene.Black, scene.White
		}
		if rim := s.rim(i); rim > 0 {
			s.add(scene.Shape{Path: m.shape.path(m.at, m.radius+rim), Fill: scene.White, Stroke: scene.Black, Width: line * 0.7, Tag: tag})
		}
		s.add(scene.Shape{Path: m.shape.path(m.at, m.radius), Fill: fill, Stroke: scene.Black, Width: line, Tag: tag})
		if !z.led {
			s.add(numberText(m.at, z, ink, s.text(i), tag.Name))
		}
	}
	s.out.CapMm, s.out.Led = z.capMm, z.led
}

// fill shades every second ring where the order is shown by rings.
func (s *sketch) fill(fastener int) scene.Ink {
	if s.out.Rings && s.ringOf(fastener)%2 == 1 {
		return scene.Shade
	}
	return scene.White
}

// numberText sets a number with its capitals centred on a place.
func numberText(at scene.Point, z size, ink scene.Ink, number, name string) scene.Text {
	return font.Set(scene.Text{
		At: scene.Point{X: at.X, Y: at.Y + z.capMm/2}, Size: z.em(), Weight: scene.Bold,
		Anchor: scene.Middle, Ink: ink, Content: number, Tag: scene.Tag{Name: name, Role: scene.Number},
	})
}
