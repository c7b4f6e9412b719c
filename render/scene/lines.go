package scene

import "math"

// Distance is the distance between two points, in millimetres.
func (p Point) Distance(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// SquareToBox is the squared distance from a point to a box: a search compares
// very many of them.
func SquareToBox(p Point, b Box) float64 {
	dx := max(0, b.Left-p.X, p.X-b.Right)
	dy := max(0, b.Top-p.Y, p.Y-b.Bottom)
	return dx*dx + dy*dy
}

// SquareToLine is the squared distance from a point to the segment from a to b.
func SquareToLine(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	length := dx*dx + dy*dy
	t := 0.0
	if length > 0 {
		t = max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/length))
	}
	x, y := p.X-a.X-t*dx, p.Y-a.Y-t*dy
	return x*x + y*y
}

// LineToBox is the distance from the segment pq to a box; 0 if they touch.
// Otherwise it is that from an end of the segment or from a corner of the box.
func LineToBox(p, q Point, b Box) float64 {
	if b.Cut(p, q) {
		return 0
	}
	least := min(SquareToBox(p, b), SquareToBox(q, b))
	for _, corner := range b.Corners() {
		least = min(least, SquareToLine(corner, p, q))
	}
	return math.Sqrt(least)
}

// RunsToBox is the distance from a flattened path to a box; 0 if they touch.
func RunsToBox(runs [][]Point, b Box) float64 {
	least := math.Inf(1)
	for _, run := range runs {
		for k := 1; k < len(run); k++ {
			least = min(least, LineToBox(run[k-1], run[k], b))
		}
	}
	return least
}

// Crossing reports whether the segments ab and cd cross.
func Crossing(a, b, c, d Point) bool {
	side := func(p, q, r Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// LinesNear reports whether two segments are closer than air.
func LinesNear(a, b, c, d Point, air float64) bool {
	if max(a.X, b.X)+air < min(c.X, d.X) || max(c.X, d.X)+air < min(a.X, b.X) ||
		max(a.Y, b.Y)+air < min(c.Y, d.Y) || max(c.Y, d.Y)+air < min(a.Y, b.Y) {
		return false
	}
	near := air * air
	return Crossing(a, b, c, d) ||
		SquareToLine(a, c, d) < near || SquareToLine(b, c, d) < near ||
		SquareToLine(c, a, b) < near || SquareToLine(d, a, b) < near
}

// Inside reports whether a point is inside a polygon.
func Inside(p Point, polygon []Point) bool {
	in := false
	for k, q := range polygon {
		r := polygon[(k+1)%len(polygon)]
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	}
	return in
}
