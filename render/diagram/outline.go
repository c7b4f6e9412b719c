package diagram

import (
	"math"

	"drawdown/render/scene"
)

// around draws a line at a distance round a convex hull, with round corners.
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

// normal is the unit vector to the outside of an edge of a hull that runs
// anticlockwise on the part, which is clockwise on the page turned over.
func normal(a, b scene.Point) scene.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := math.Max(math.Hypot(dx, dy), 1e-9)
	return scene.Point{X: -dy / length, Y: dx / length}
}

// bend adds the round corner about c from direction in to direction out.
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

// towards gives the place at a distance from a corner along an edge, at most
// to 0.4 of the edge.
func towards(from, to scene.Point, distance float64) scene.Point {
	return along(from, to, math.Min(distance, 0.4*from.Distance(to)))
}

func mix(end, corner scene.Point) scene.Point {
	return scene.Point{X: end.X + (corner.X-end.X)*2/3, Y: end.Y + (corner.Y-end.Y)*2/3}
}
