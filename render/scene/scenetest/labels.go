package scenetest

import (
	"math"

	"drawdown/render/scene"
)

// besideSpot is how near to its spot, in millimetres, a name must stand.
const besideSpot = 8.0

// checkLabels sees that each name stands in or near its own spot, and neither in
// another nor nearer to it: a name that points at the neighbour is worse than
// none.
func (c *checker) checkLabels() {
	var spots []*outline
	for _, s := range c.shapes {
		if s.Tag.Role == scene.Spot {
			spots = append(spots, &outline{s.Tag.Name, s.Path.Bounds(), s.Path.Flatten()})
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
	if own > besideSpot {
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
	if encloses(o.runs, box.Centre()) {
		return 0
	}
	return scene.RunsToBox(o.runs, box)
}
