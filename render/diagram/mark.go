package diagram

import (
	"math"

	"drawdown/render/font"
	"drawdown/render/scene"
)

type mark struct {
	at     scene.Point
	shape  shape
	radius float64 // of the circle that the shape is based on
}

// shape is how the fasteners of one kind are drawn. Kinds differ by shape, so
// that no meaning depends on colour.
type shape struct {
	sides int     // of the regular polygon; 0 for a circle
	reach float64 // of its corners, if the round mark has radius 1
	first float64 // direction of its first corner, in degrees
}

var shapes = []shape{
	{sides: 0, reach: 1},
	{sides: 4, reach: 1.26, first: 45},
	{sides: 6, reach: 1.15},
	{sides: 4, reach: 1.4},
	{sides: 3, reach: 1.7, first: 90},
}

func (h shape) path(at scene.Point, r float64) scene.Path {
	if h.sides == 0 {
		return scene.Circle(at.X, at.Y, r)
	}
	return scene.Polygon(at.X, at.Y, h.reach*r, h.sides, h.first)
}

// rim is the distance from the middle to the edge in a direction, if the round
// mark has radius 1.
func (h shape) rim(deg float64) float64 {
	if h.sides == 0 {
		return 1
	}
	sector := 360 / float64(h.sides)
	fromMiddle := math.Mod(math.Mod(deg-h.first, sector)+sector, sector) - sector/2
	rad := math.Pi / 180
	return h.reach * math.Cos(sector/2*rad) / math.Cos(fromMiddle*rad)
}

// inner is the radius of the largest circle inside the shape, if the round mark
// has radius 1.
func (h shape) inner() float64 {
	if h.sides == 0 {
		return 1
	}
	return h.reach * math.Cos(math.Pi/float64(h.sides))
}

func shapeOf(kind int) shape { return shapes[kind%len(shapes)] }

// Sample draws a small mark of a kind for the legend.
func Sample(kind int, at scene.Point, radius float64) scene.Item {
	return scene.Shape{Path: shapeOf(kind).path(at, radius), Fill: scene.White, Stroke: scene.Black, Width: 0.4}
}

// ringGap is the gap to the second ring around the last fastener.
const ringGap = 0.9

// cornerIn reports whether a corner of the mark, or of the ring around it, is
// in a box.
func (m mark) cornerIn(b scene.Box, ring float64) bool {
	for k := range m.shape.sides {
		sin, cos := math.Sincos((m.shape.first + 360*float64(k)/float64(m.shape.sides)) * math.Pi / 180)
		reach := m.shape.reach * (m.radius + ring)
		if b.Contains(scene.Point{X: m.at.X + reach*cos, Y: m.at.Y - reach*sin}) {
			return true
		}
	}
	return false
}

func (s *sketch) placeMarks(z size) {
	plan := s.req.Plan
	kinds := map[string]int{}
	for i, k := range plan.Kinds {
		kinds[k.Name] = i
	}
	for i, f := range plan.Joint.Fasteners {
		m := mark{at: s.view.at(f.At), shape: shapeOf(kinds[f.Kind]), radius: z.radius}
		s.marks = append(s.marks, m)
		s.space.TakeDisc(m.at, s.reach(i), s.name(i))
	}
}

// reach is the radius of the circle around a fastener's whole mark, second ring
// included.
func (s *sketch) reach(fastener int) float64 {
	m := s.marks[fastener]
	return m.shape.reach * (m.radius + s.outer(fastener))
}

// outer is how much the second ring, or a thick edge, adds to a mark.
func (s *sketch) outer(fastener int) float64 {
	if s.req.Thick != nil && s.req.Thick[fastener] {
		return max(s.rim(fastener), thickGrowth)
	}
	return s.rim(fastener)
}

// rim is how much the second ring of the last fastener adds to its mark: less
// where it would overlap its neighbours.
func (s *sketch) rim(fastener int) float64 {
	if !s.last(fastener) {
		return 0
	}
	const least, air = 0.3, 0.05
	between := s.closest()*s.view.scale - 2*s.marks[fastener].radius
	return min(ringGap, max(least, between-air))
}

// drawMarks draws the marks with their text. The first is filled, the last has
// two rings.
func (s *sketch) drawMarks(z size) {
	for i, m := range s.marks {
		tag := scene.Tag{Name: s.name(i), Role: scene.Mark}
		line := markEdge
		if z.led {
			line = ledEdge
		}
		fill, ink := scene.White, scene.Black
		if s.req.Show == Numbers && s.numbers[i] == 1 {
			fill, ink = scene.Black, scene.White
		}
		if rim := s.rim(i); rim > 0 {
			s.add(scene.Shape{Path: m.shape.path(m.at, m.radius+rim), Fill: scene.White, Stroke: scene.Black, Width: line * 0.7, Tag: tag})
		}
		tag.Core = true
		s.add(scene.Shape{Path: m.shape.path(m.at, m.radius), Fill: fill, Stroke: scene.Black, Width: line, Tag: tag})
		if !z.led && s.text(i) != "" {
			s.add(numberText(m.at, z, ink, s.text(i), tag.Name))
		}
	}
}

func numberText(at scene.Point, z size, ink scene.Ink, number, name string) scene.Text {
	return font.Set(scene.Text{
		At: scene.Point{X: at.X, Y: at.Y + z.capMm/2}, Size: z.em(), Weight: scene.Bold,
		Anchor: scene.Middle, Ink: ink, Content: number, Tag: scene.Tag{Name: name, Role: scene.Number, Core: true},
	})
}

// Look is how to show a mark and its text.
type Look struct {
	Fill scene.Ink // of the mark
	Ink  scene.Ink // of its number; a number outside the mark stays black
	// Thick gives the mark an edge that survives a black-and-white copy.
	Thick bool
}

const (
	// thickEdge is the width of a thick edge as a multiple of the normal one.
	thickEdge = 3
	markEdge  = 0.6 // mm, of a mark with text in it
	ledEdge   = 0.35
	// thickGrowth is how far a thick edge extends outwards, in millimetres.
	thickGrowth = (thickEdge - 1) * markEdge / 2
)

// Relook returns the items of a drawing with another look for the marks of some
// fasteners, by id: to show which are tight, or which to check again.
func Relook(items []scene.Item, looks map[string]Look) []scene.Item {
	return scene.Mapped(items, func(s scene.Shape) scene.Shape {
		if look, known := looks[s.Tag.Name]; known && s.Tag.Core {
			s.Fill = look.Fill
			if look.Thick {
				s.Width *= thickEdge
			}
		}
		return s
	}, func(t scene.Text) scene.Text {
		if look, known := looks[t.Tag.Name]; known && t.Tag.Core {
			t.Ink = look.Ink
		}
		return t
	})
}
