package handout

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// mini is the part drawn small, without words: its outline, its bores, and its
// marks, so that it fills the room that there is.
type mini struct {
	plan   plan.Plan
	bounds geometry.Box // of the part
	reach  float64      // of a mark, in millimetres of the part
}

const (
	// miniReach is the radius of a mark in spacings: two neighbours stay apart.
	miniReach = 0.3
	// nowReach is how far the ring of the bolt just turned reaches, in radii.
	nowReach = 1.6
	// largestMark and smallestMark are radii on paper.
	largestMark, smallestMark = 2.4, 0.7
)

func newMini(p plan.Plan) mini {
	j := p.Joint
	points := j.Points()
	m := mini{plan: p, reach: miniReach * geometry.Spacing(points)}
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
	}
	m.bounds = geometry.Bounds(corners)
	return m
}

// height is what the part takes up of a width, at the most so much.
func (m mini) height(width, most float64) float64 {
	return math.Min(most, width*m.bounds.Height()/math.Max(m.bounds.Width(), 1e-9))
}

// state is how a bolt stands: tight or loose, and whether it is the one just
// turned.
type state struct{ tight, now bool }

// drawn draws a bolt of a kind: tight is solid, loose is open, and the one just
// turned has a ring, so that a copy in black and white tells them apart.
func (s state) drawn(kind int, at scene.Point, radius float64) []scene.Item {
	mark := diagram.Sample(kind, at, radius).(scene.Shape)
	if s.tight {
		mark.Fill = scene.Black
	}
	if !s.now {
		return []scene.Item{mark}
	}
	ring := diagram.Sample(kind, at, radius*nowReach).(scene.Shape)
	return []scene.Item{ring, mark}
}

func (m mini) draw(box scene.Box, states func(fastener int) state) []scene.Item {
	const line = 0.3
	joint := m.plan.Joint
	scale := math.Min((box.Width()-2*line)/m.bounds.Width(), (box.Height()-2*line)/m.bounds.Height())
	middle := geometry.Point{X: (m.bounds.Min.X + m.bounds.Max.X) / 2, Y: (m.bounds.Min.Y + m.bounds.Max.Y) / 2}
	centre := box.Centre()
	at := func(p geometry.Point) scene.Point {
		return scene.Point{X: centre.X + (p.X-middle.X)*scale, Y: centre.Y - (p.Y-middle.Y)*scale}
	}
	var items []scene.Item
	add := func(path scene.Path, fill scene.Ink) {
		items = append(items, scene.Shape{Path: path, Fill: fill, Stroke: scene.Black, Width: line})
	}
	for _, path := range joint.Outline {
		add(scene.Traced(path, at), scene.Tint)
	}
	if len(joint.Outline) == 0 {
		add(m.rim(at, scale), scene.Tint)
	}
	for _, bore := range joint.Bores {
		c := at(bore.Centre)
		add(scene.Circle(c.X, c.Y, bore.Diameter/2*scale), scene.White)
	}
	for i, f := range joint.Fasteners {
		kind := max(0, slices.IndexFunc(m.plan.Kinds, func(k plan.Kind) bool { return k.Name == f.Kind }))
		items = append(items, states(i).drawn(kind, at(f.At), math.Max(smallestMark, math.Min(largestMark, m.reach*scale)))...)
	}
	return items
}

// rim stands for the outline of a part that has none: round where it is as wide
// as high.
func (m mini) rim(at func(geometry.Point) scene.Point, scale float64) scene.Path {
	low, high := at(m.bounds.Min), at(m.bounds.Max)
	if w, h := high.X-low.X, low.Y-high.Y; math.Abs(w-h) > 0.05*math.Max(w, h) {
		return scene.Rect(low.X, high.Y, w, h, math.Min(1.5, math.Min(w, h)/2))
	}
	return scene.Circle((low.X+high.X)/2, (low.Y+high.Y)/2, (high.X-low.X)/2)
}
