package scenetest

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// besideSpot is how close to its spot, in millimetres, a name must be; on an
// enlarged sheet in proportion to its type.
func besideSpot(name scene.Text) float64 {
	const near, em = 8.0, 3.5
	return near * max(1, name.Size/em)
}

// checkLabels checks that each name is in or near its own spot, and neither in
// another nor closer to it: a name that points at the neighbour is worse than
// none.
func (c *checker) checkLabels() {
	var spots []*outline
	for _, s := range c.shapes {
		if s.Tag.Role == scene.Spot {
			spots = append(spots, &outline{s.Tag.Name, s.Path.Bounds(), s.Path.Flatten(), s.Width})
		}
	}
	for _, t := range c.texts {
		if t.Tag.Role == scene.Label {
			c.checkLabel(t, spots)
		}
	}
}

func (c *checker) checkLabel(t scene.Text, spots []*outline) {
	box, own := t.Box(), math.Inf(1)
	for _, s := range spots {
		if s.name == t.Tag.Name {
			own = math.Min(own, s.distance(box))
		}
	}
	if own > besideSpot(t) {
		c.fault("%q stands %.1f mm from its %s", t.Content, own, t.Tag.Name)
		return
	}
	for _, s := range spots {
		if s.name != t.Tag.Name && s.distance(box) < own {
			c.fault("%q of %s stands nearer to %s", t.Content, t.Tag.Name, s.name)
		}
	}
}

// distance is the distance of a box from a spot; 0 inside it.
func (o *outline) distance(box scene.Box) float64 {
	if o.holds(box.Centre()) {
		return 0
	}
	return scene.RunsToBox(o.runs, box)
}

// holds reports whether a point is in a spot. A spot is convex, and the edge of
// the paper may cut it into lines that no longer meet: a point is in what is
// left of it if no straight line separates it from all of these.
func (o *outline) holds(p scene.Point) bool {
	var ways []float64
	for _, run := range o.runs {
		for _, q := range append(cutCorner(run), run...) {
			ways = append(ways, math.Atan2(q.Y-p.Y, q.X-p.X))
		}
	}
	slices.Sort(ways)
	widest := ways[0] + 2*math.Pi - ways[len(ways)-1]
	for k := 1; k < len(ways); k++ {
		widest = max(widest, ways[k]-ways[k-1])
	}
	return widest < math.Pi
}

// cutCorner returns the corner of the paper between the two ends of a line cut
// by two of its edges, on the side away from the bulge of the line. A line that
// is whole, or cut by one edge, has none.
func cutCorner(run []scene.Point) []scene.Point {
	a, b := run[0], run[len(run)-1]
	side := func(q scene.Point) float64 { return (b.X-a.X)*(q.Y-a.Y) - (b.Y-a.Y)*(q.X-a.X) }
	bulge := side(run[len(run)/2])
	for _, corner := range []scene.Point{{X: a.X, Y: b.Y}, {X: b.X, Y: a.Y}} {
		if side(corner)*bulge < 0 {
			return []scene.Point{corner}
		}
	}
	return nil
}
