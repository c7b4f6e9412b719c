package handout

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// mini is a small drawing of the part without words: its outline, its bores and
// its marks, as large as the space allows.
type mini struct {
	plan   plan.Plan
	bounds geometry.Box // of the part
	reach  float64      // of a mark, in millimetres on the part
	bores  float64      // least distance from a fastener to the edge of a bore, in millimetres on the part
}

const (
	// miniReach is the radius of a mark in spacings: two neighbours do not
	// touch.
	miniReach = 0.3
	// nowReach is the radius of the ring around the bolt just turned, in radii
	// of a mark.
	nowReach = 1.6
	// largestMark and smallestMark are radii on paper, in millimetres.
	largestMark, smallestMark = 2.4, 0.7
	// fairMark is a radius on paper that is easy to see: marks are reduced to
	// it to clear bores.
	fairMark = 0.8
	// collar is the white border around a mark on paper, so that no edge
	// touches it.
	collar = 0.6
)

func newMini(p plan.Plan) mini {
	j := p.Joint
	points := j.Points()
	m := mini{plan: p, reach: miniReach * geometry.Spacing(points), bores: math.Inf(1)}
	if len(points) < 2 {
		m.reach = 10
	}
	all := geometry.Bounds(points).Grown(1.6 * m.reach)
	corners := []geometry.Point{all.Min, all.Max}
	for _, path := range j.Outline {
		corners = append(corners, path...)
	}
	for _, bore := range j.Bores {
		r := geometry.Point{X: bore.Diameter / 2, Y: bore.Diameter / 2}
		corners = append(corners, bore.Centre.Sub(r), bore.Centre.Add(r))
		for _, at := range points {
			m.bores = math.Min(m.bores, math.Abs(at.Distance(bore.Centre)-bore.Diameter/2))
		}
	}
	m.bounds = geometry.Bounds(corners)
	return m
}

// height is the height of the part at a width, at most most.
func (m mini) height(width, most float64) float64 {
	return math.Min(most, width*m.bounds.Height()/math.Max(m.bounds.Width(), 1e-9))
}

// state is the state of a bolt: tight or loose, and whether it is the one just
// turned.
type state struct{ tight, now bool }

// drawn draws a bolt of a kind: tight is solid, loose is open, and the one just
// turned has a ring, so that a black-and-white copy shows the difference.
func (s state) drawn(kind int, at scene.Point, radius float64) []scene.Item {
	shape := func(radius float64) scene.Shape {
		mark := diagram.Sample(kind, at, radius).(scene.Shape)
		mark.Tag.Role = scene.Mark
		return mark
	}
	white, mark := shape(radius+collar), shape(radius)
	if s.tight {
		mark.Fill = scene.Black
	}
	items := []scene.Item{mark}
	if s.now {
		white = shape(radius*nowReach + collar)
		items = []scene.Item{shape(radius * nowReach), mark}
	}
	white.Stroke, white.Tag = scene.None, scene.Tag{}
	return append([]scene.Item{white}, items...)
}

func (m mini) draw(box scene.Box, states func(fastener int) state) []scene.Item {
	const line = 0.3
	joint := m.plan.Joint
	scale := math.Min((box.Width()-2*collar)/m.bounds.Width(), (box.Height()-2*collar)/m.bounds.Height()) // the white border stays in the box
	middle := geometry.Point{X: (m.bounds.Min.X + m.bounds.Max.X) / 2, Y: (m.bounds.Min.Y + m.bounds.Max.Y) / 2}
	centre := box.Centre()
	at := func(p geometry.Point) scene.Point {
		return scene.Point{X: centre.X + (p.X-middle.X)*scale, Y: centre.Y - (p.Y-middle.Y)*scale}
	}
	var items []scene.Item
	add := func(path scene.Path, fill scene.Ink, role scene.Role) {
		items = append(items, scene.Shape{Path: path, Fill: fill, Stroke: scene.Black, Width: line, Tag: scene.Tag{Role: role}})
	}
	for _, path := range joint.Outline {
		add(scene.Traced(path, at), scene.Tint, scene.Edge)
	}
	if len(joint.Outline) == 0 {
		add(m.rim(at, scale), scene.Tint, scene.Edge)
	}
	for _, bore := range joint.Bores {
		c := at(bore.Centre)
		add(scene.Circle(c.X, c.Y, bore.Diameter/2*scale), scene.White, scene.Hole)
	}
	radius := m.radius(scale)
	for i, f := range joint.Fasteners {
		kind := max(0, slices.IndexFunc(m.plan.Kinds, func(k plan.Kind) bool { return k.Name == f.Kind }))
		items = append(items, states(i).drawn(kind, at(f.At), radius)...)
	}
	return items
}

// radius is the radius of a mark on paper, small enough to clear the bores if
// it is still easy to see.
func (m mini) radius(scale float64) float64 {
	radius := math.Max(smallestMark, math.Min(largestMark, m.reach*scale))
	if clear := m.bores*scale - collar; clear >= fairMark {
		return math.Min(radius, clear)
	}
	return radius
}

// rim replaces the outline of a part without one: round if it is as wide as
// high.
func (m mini) rim(at func(geometry.Point) scene.Point, scale float64) scene.Path {
	low, high := at(m.bounds.Min), at(m.bounds.Max)
	if w, h := high.X-low.X, low.Y-high.Y; math.Abs(w-h) > 0.05*math.Max(w, h) {
		return scene.Rect(low.X, high.Y, w, h, math.Min(1.5, math.Min(w, h)/2))
	}
	return scene.Circle((low.X+high.X)/2, (low.Y+high.Y)/2, (high.X-low.X)/2)
}
