package diagram

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// partBounds gives what the drawing of the part must show.
func partBounds(j geometry.Joint) geometry.Box {
	points := j.Points()
	for _, path := range j.Outline {
		points = append(points, path...)
	}
	if len(j.Outline) == 0 {
		b := geometry.Bounds(points)
		if rim, round := roundPart(j); round {
			b = geometry.Box{Min: rim.Centre, Max: rim.Centre}.Grown(rim.Radius)
		}
		b = b.Grown(edgeAllowance(j))
		points = append(points, b.Min, b.Max)
	}
	for _, b := range j.Bores {
		r := geometry.Point{X: b.Diameter / 2, Y: b.Diameter / 2}
		points = append(points, b.Centre.Add(r), b.Centre.Sub(r))
	}
	for _, d := range j.Dowels {
		points = append(points, d.Centre)
	}
	for _, s := range j.Stations {
		points = append(points, s.At)
	}
	return geometry.Bounds(points)
}

// roundPart says whether the fasteners lie on a bolt circle, so that the part
// is drawn round.
func roundPart(j geometry.Joint) (rim geometry.Disc, round bool) {
	const least = 5 // fewer may lie on a circle by chance
	points := j.Points()
	rim = geometry.Enclose(points)
	return rim, len(points) >= least && geometry.OneCircle(points, rim.Centre)
}

// edgeAllowance is how far a drawn-round outline lies from the fasteners, in
// millimetres of the part.
func edgeAllowance(j geometry.Joint) float64 {
	if spacing := geometry.Spacing(j.Points()); spacing > 0 {
		return 0.5 * spacing
	}
	return 10
}

// drawPart draws the body, its bores and dowels, and the front arrow.
func (s *sketch) drawPart(z size) {
	joint := s.req.Plan.Joint
	if s.req.piece != nil {
		s.drawCut(z)
	} else {
		s.drawBody(joint, z)
	}
	for _, b := range joint.Bores {
		s.drawBore(b)
	}
	for _, d := range joint.Dowels {
		s.drawDowel(d)
	}
	s.drawFront(joint.Front)
}

// drawBody draws the outline of the part and of its openings.
func (s *sketch) drawBody(joint geometry.Joint, z size) {
	for k, path := range s.outline(joint, z) {
		fill := scene.Tint
		if k > 0 && len(joint.Outline) > 1 && inside(joint.Outline[k], joint.Outline[0]) {
			fill = scene.White // an opening in the part
		}
		s.add(scene.Shape{Path: path, Fill: fill, Stroke: scene.Black, Width: 0.5})
		s.space.TakeEdge(path)
	}
}

func (s *sketch) outline(j geometry.Joint, z size) []scene.Path {
	if len(j.Outline) == 0 {
		if rim, round := roundPart(j); round {
			c := s.view.at(rim.Centre)
			return []scene.Path{scene.Circle(c.X, c.Y, (rim.Radius+edgeAllowance(j))*s.view.scale)}
		}
		edge := edgeAllowance(j) * s.view.scale
		if z.led && !s.mostlyStrung() {
			// A number has room between the outermost fasteners and the edge, even
			// in a round corner.
			corner := math.Hypot(s.widestText(z.em())/2, s.widest(z.radius)+besideGap+tallText)
			edge = math.Max(edge, math.Min(z.edge-1, corner+2*plentyAir))
		}
		return []scene.Path{around(s.view.all(geometry.Hull(j.Points())), edge)}
	}
	paths := make([]scene.Path, len(j.Outline))
	for k, path := range j.Outline {
		paths[k] = softened(s.view.all(path), 2.5)
	}
	return paths
}

// inside says whether the first point of a lies in the outline b.
func inside(a, b []geometry.Point) bool {
	in := false
	p := a[0]
	for k := range b {
		q, r := b[k], b[(k+1)%len(b)]
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	}
	return in
}

// leastCrossed is the radius on paper from which a bore has centre lines.
const leastCrossed = 7.0

// drawBore draws a large hole with the ends of its centre lines across the rim,
// so that its middle is free for a label.
func (s *sketch) drawBore(b geometry.Bore) {
	c, r := s.view.at(b.Centre), b.Diameter/2*s.view.scale
	rim := scene.Circle(c.X, c.Y, r)
	s.add(scene.Shape{Path: rim, Fill: scene.White, Stroke: scene.Grey, Width: 0.35})
	s.space.TakeEdge(rim)
	if r < leastCrossed {
		return
	}
	tick := math.Min(2.5, r/3)
	var lines scene.Path
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		lines.MoveTo(c.X+d[0]*(r-tick), c.Y+d[1]*(r-tick))
		end := s.inBox(scene.Point{X: c.X + d[0]*(r+tick/2), Y: c.Y + d[1]*(r+tick/2)})
		lines.LineTo(end.X, end.Y)
	}
	s.add(scene.Shape{Path: lines, Stroke: scene.Grey, Width: 0.2})
}

// inBox keeps a point on the drawing's box: a bore at the edge of a part has
// room for itself, but not for its centre lines.
func (s *sketch) inBox(p scene.Point) scene.Point { return s.req.Box.Nearest(p) }

// drawDowel draws a locating pin: a disc with a cross, never under 1 mm.
func (s *sketch) drawDowel(d geometry.Dowel) {
	c, r := s.view.at(d.Centre), math.Max(0.8, d.Diameter/2*s.view.scale)
	s.add(scene.Shape{Path: scene.Circle(c.X, c.Y, r), Fill: scene.Grey, Stroke: scene.Black, Width: 0.3})
	var lines scene.Path
	lines.MoveTo(c.X-r, c.Y)
	lines.LineTo(c.X+r, c.Y)
	lines.MoveTo(c.X, c.Y-r)
	lines.LineTo(c.X, c.Y+r)
	s.add(scene.Shape{Path: lines, Stroke: scene.White, Width: 0.25})
	s.space.TakeDisc(c, r, "dowel")
}

// drawFront puts an arrow to the front, with its word, beside the part.
func (s *sketch) drawFront(front geometry.Front) {
	if front == geometry.FrontUnknown {
		return
	}
	b := s.partBox()
	c := b.Centre()
	word := scene.Text{Size: SmallEm, Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: s.req.Front}
	const gap, length, half = 2.0, 3.2, 2.0
	const baseline = SmallEm * font.CapHeight
	tip, base := scene.Point{}, scene.Point{} // of the arrow
	switch front {
	case geometry.FrontLeft:
		base, tip = scene.Point{X: b.Left - gap, Y: c.Y}, scene.Point{X: b.Left - gap - length, Y: c.Y}
		word.Upward, word.At = true, scene.Point{X: tip.X - 1, Y: c.Y}
	case geometry.FrontRight:
		base, tip = scene.Point{X: b.Right + gap, Y: c.Y}, scene.Point{X: b.Right + gap + length, Y: c.Y}
		word.Upward, word.At = true, scene.Point{X: tip.X + 1 + baseline, Y: c.Y}
	case geometry.FrontTop:
		base, tip = scene.Point{X: c.X, Y: b.Top - gap}, scene.Point{X: c.X, Y: b.Top - gap - length}
		word.At = scene.Point{X: c.X, Y: tip.Y - 1}
	case geometry.FrontBottom:
		base, tip = scene.Point{X: c.X, Y: b.Bottom + gap}, scene.Point{X: c.X, Y: b.Bottom + gap + length}
		word.At = scene.Point{X: c.X, Y: tip.Y + 1 + baseline}
	}
	head := arrowhead(base, tip, half, scene.Black)
	s.space.TakeBox(head.Path.Bounds())
	s.add(head)
	if s.req.Front != "" {
		word = font.Set(word)
		s.space.TakeBox(word.Box())
		s.add(word)
	}
}

// partBox is the box that the part covers on the page.
func (s *sketch) partBox() scene.Box {
	b := s.bounds
	low, high := s.view.at(b.Min), s.view.at(b.Max)
	return scene.Box{Left: low.X, Top: high.Y, Right: high.X, Bottom: low.Y}
}

// arrowhead is a filled triangle from the middle of its base to its tip.
func arrowhead(base, tip scene.Point, half float64, ink scene.Ink) scene.Shape {
	dx, dy := tip.X-base.X, tip.Y-base.Y
	length := math.Max(math.Hypot(dx, dy), 1e-9)
	nx, ny := -dy/length*half, dx/length*half
	return scene.Shape{
		Path: scene.Polyline([]scene.Point{{X: base.X + nx, Y: base.Y + ny}, tip, {X: base.X - nx, Y: base.Y - ny}}, true),
		Fill: ink,
	}
}
