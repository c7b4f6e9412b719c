package scenetest

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// besideSpot is how near to its spot, in millimetres, a name must stand: on a sheet
// that is enlarged as much further as its type is larger.
func besideSpot(name scene.Text) float64 {
	const near, em = 8.0, 3.5
	return near * max(1, name.Size/em)
}

// checkLabels sees that each name stands in or near its own spot, and neither in
// another nor nearer to it: a name that points at the neighbour is worse than
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

// distance of a box from a spot; 0 within it.
func (o *outline) distance(box scene.Box) float64 {
	if o.holds(box.Centre()) {
		return 0
	}
	return scene.RunsToBox(o.runs, box)
}

// holds reports whether a place lies in a spot. A spot bulges outwards everywhere,
// and the edge of the paper may cut it into lines that no longer meet: a place
// is in what is left of it where no straight line parts it from all of these.
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

// cutCorner returns the corner of the paper between the two ends of a line that
// two edges of it cut: on the other side of the ends from where the line bulges.
// A line that is whole, or that one edge cuts, has none.
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
