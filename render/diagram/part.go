package diagram

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/scene"
)

func partBounds(j geometry.Joint) geometry.Box {
	points := j.Points()
	for _, path := range j.Outline {
		points = append(points, path...)
	}
	if len(j.Outline) == 0 {
		b := geometry.Bounds(points)
		if rim, round := geometry.RoundPart(j.Points()); round {
			b = geometry.Box{Min: rim.Centre, Max: rim.Centre}.Grown(rim.Radius)
		}
		b = b.Grown(geometry.EdgeAllowance(j.Points()))
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

func (s *sketch) drawPart(z size) {
	joint := s.req.Plan.Joint
	if s.req.piece != nil {
		s.drawCut(z)
	} else {
		s.drawBody(joint, z)
	}
	s.drawClusterCollars()
	for _, b := range joint.Bores {
		s.drawBore(b)
	}
	s.drawCollars()
	for _, d := range joint.Dowels {
		s.drawDowel(d)
	}
	s.drawFront(joint.Front)
}

func (s *sketch) drawBody(joint geometry.Joint, z size) {
	for k, path := range s.outline(joint, z) {
		s.add(scene.Shape{Path: path, Fill: bodyFill(joint, k), Stroke: scene.Black, Width: 0.5, Tag: scene.Tag{Role: scene.Edge}})
		s.space.TakeEdge(path)
		s.edges = append(s.edges, path.Flatten()...)
	}
}

// hole is a bore or a dowel on the page.
type hole struct {
	at     scene.Point
	radius float64
}

// bodyFill is white for an opening in the part.
func bodyFill(j geometry.Joint, outline int) scene.Ink {
	if geometry.Opening(j.Outline, outline) {
		return scene.White
	}
	return scene.Tint
}

func (s *sketch) outline(j geometry.Joint, z size) []scene.Path {
	if len(j.Outline) == 0 {
		if rim, round := geometry.RoundPart(j.Points()); round {
			c := s.view.at(rim.Centre)
			return []scene.Path{scene.Circle(c.X, c.Y, (rim.Radius+geometry.EdgeAllowance(j.Points()))*s.view.scale)}
		}
		edge := geometry.EdgeAllowance(j.Points()) * s.view.scale
		if z.led && !s.mostlyStrung() {
			// A number must fit between the outermost fasteners and the edge,
			// even in a round corner.
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

// leastCrossed is the smallest radius on paper of a bore with centre lines.
const leastCrossed = 7.0

// drawBore draws a large hole. Only the ends of its centre lines are drawn,
// across the rim, to leave the middle free for a label.
func (s *sketch) drawBore(b geometry.Bore) {
	c, r := s.view.at(b.Centre), b.Diameter/2*s.view.scale
	rim := scene.Circle(c.X, c.Y, r)
	s.add(scene.Shape{Path: rim, Fill: scene.White, Stroke: scene.Grey, Width: 0.35, Tag: scene.Tag{Role: scene.Hole}})
	s.space.TakeEdge(rim)
	s.holes = append(s.holes, hole{c, r})
	if r < leastCrossed {
		return
	}
	tick := math.Min(2.5, r/3)
	var lines scene.Path
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		// A bore at the edge of the part can leave no room for them.
		end := s.req.Box.Nearest(scene.Point{X: c.X + d[0]*(r+tick/2), Y: c.Y + d[1]*(r+tick/2)})
		lines.Stroke(c.X+d[0]*(r-tick), c.Y+d[1]*(r-tick), end.X, end.Y)
	}
	s.add(scene.Shape{Path: lines, Stroke: scene.Grey, Width: 0.2})
}

// drawDowel draws a locating pin as a disc with a cross, with a radius of at
// least 0.8 mm.
func (s *sketch) drawDowel(d geometry.Dowel) {
	c, r := s.view.at(d.Centre), math.Max(0.8, d.Diameter/2*s.view.scale)
	s.add(scene.Shape{Path: scene.Circle(c.X, c.Y, r), Fill: scene.Grey, Stroke: scene.Black, Width: 0.3})
	s.add(scene.Shape{Path: scene.Cross(c.X, c.Y, r), Stroke: scene.White, Width: 0.25})
	s.space.TakeDisc(c, r, "dowel")
	s.holes = append(s.holes, hole{c, r})
}

func (s *sketch) drawFront(front geometry.Front) {
	way, known := FrontWays[front]
	if !known {
		return
	}
	for _, it := range frontArrow(s.req.SmallEm).Beside(s.partBox(), way, s.req.Front) {
		s.space.TakeBox(scene.Bounds([]scene.Item{it}))
		s.add(it)
	}
}

func (s *sketch) partBox() scene.Box { return s.view.box(s.bounds) }

// around returns a line at a distance around a convex hull, with round corners.
func around(hull []scene.Point, distance float64) scene.Path {
	if len(hull) == 1 {
		return scene.Circle(hull[0].X, hull[0].Y, distance)
	}
	var p scene.Path
	n := len(hull)
	for k := range n {
		before, here, next := hull[(k+n-1)%n], hull[k], hull[(k+1)%n]
		in, out := normal(before, here), normal(here, next)
		start := scene.Point{X: here.X + in.X*distance, Y: here.Y + in.Y*distance}
		if k == 0 {
			p.MoveTo(start.X, start.Y)
		} else {
			p.LineTo(start.X, start.Y)
		}
		bend(&p, here, in, out, distance)
	}
	p.Close()
	return p
}

// normal is the outward unit vector of a hull edge. The hull runs anticlockwise
// on the part, which is clockwise on the page, where y points down.
func normal(a, b scene.Point) scene.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := math.Max(math.Hypot(dx, dy), 1e-9)
	return scene.Point{X: -dy / length, Y: dx / length}
}

// bend adds the round corner around c from direction in to direction out.
func bend(p *scene.Path, c, in, out scene.Point, r float64) {
	from := math.Atan2(in.Y, in.X)
	sweep := math.Remainder(math.Atan2(out.Y, out.X)-from, 2*math.Pi)
	if sweep > 0 {
		sweep -= 2 * math.Pi // hull corners turn one way
	}
	if sweep > -1e-6 || sweep < -2*math.Pi+1e-6 {
		return
	}
	p.Arc(c, r, from, sweep)
}

func softened(points []scene.Point, radius float64) scene.Path {
	var p scene.Path
	n := len(points)
	for k := range n {
		before, here, next := points[(k+n-1)%n], points[k], points[(k+1)%n]
		a := towards(here, before, radius)
		b := towards(here, next, radius)
		if k == 0 {
			p.MoveTo(a.X, a.Y)
		} else {
			p.LineTo(a.X, a.Y)
		}
		// A quadratic corner, written as a cubic.
		p.CurveTo(mix(a, here), mix(b, here), b)
	}
	p.Close()
	return p
}

// towards returns the point at a distance from a corner along an edge, at most
// 0.4 of the edge.
func towards(from, to scene.Point, distance float64) scene.Point {
	return along(from, to, math.Min(distance, 0.4*from.Distance(to)))
}

func mix(end, corner scene.Point) scene.Point {
	return scene.Point{X: end.X + (corner.X-end.X)*2/3, Y: end.Y + (corner.Y-end.Y)*2/3}
}
