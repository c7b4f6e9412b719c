package scenetest

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// standOff is the least gap between a mark and the edge of the part or of a
// bore, in millimetres: with less, the two look like one line. Thinner lines
// need less.
func standOff(mark scene.Shape) float64 { return min(0.2, mark.Width/3) }

// checkEdges checks that marks keep clear of the edges of the part and of its
// openings, or that these end before them.
func (c *checker) checkEdges() {
	for k, edge := range c.shapes {
		if edge.Tag.Role != scene.Edge && edge.Tag.Role != scene.Hole {
			continue
		}
		runs, around := edge.Path.Flatten(), edge.Path.Bounds()
		for _, mark := range c.shapes {
			box := mark.Path.Bounds().Grown(standOff(mark) + (mark.Width+edge.Width)/2)
			if mark.Tag.Role != scene.Mark || !around.Meets(box) {
				continue
			}
			if at, touches := c.touches(mark, box, runs, edge.Width, k); touches {
				c.fault("the mark %s meets an edge at %.1f,%.1f", mark.Tag.Name, at.X, at.Y)
			}
		}
	}
}

// touches finds a point of an edge, painted as the kth shape, that is visibly
// too close to a mark.
func (c *checker) touches(mark scene.Shape, box scene.Box, runs [][]scene.Point, width float64, k int) (scene.Point, bool) {
	const step = 0.2
	rim := mark.Path.Flatten()
	near := standOff(mark) + (mark.Width+width)/2
	for _, run := range runs {
		for i := 1; i < len(run); i++ {
			a, b, ok := box.Clipped(run[i-1], run[i])
			if !ok {
				continue
			}
			for n, steps := 0.0, math.Ceil(a.Distance(b)/step); n <= steps; n++ {
				p := scene.Point{X: a.X + (b.X-a.X)*n/max(1, steps), Y: a.Y + (b.Y-a.Y)*n/max(1, steps)}
				here := scene.Box{Left: p.X, Top: p.Y, Right: p.X, Bottom: p.Y}
				if scene.RunsToBox(rim, here) < near && !c.painted(p, k+1) {
					return p, true
				}
			}
		}
	}
	return scene.Point{}, false
}

// painted reports whether a shape from the kth on is filled over a point.
func (c *checker) painted(p scene.Point, k int) bool {
	return slices.ContainsFunc(c.shapes[k:], func(s scene.Shape) bool {
		return s.Fill != scene.None && s.Path.Bounds().Contains(p) && encloses(s.Path.Flatten(), p)
	})
}

// checkHoles checks that a number without a leader is not in an opening that
// does not contain its mark: it would be read as the name of the opening.
func (c *checker) checkHoles(number scene.Text, mark *outline) {
	for _, s := range c.shapes {
		if s.Tag.Role != scene.Hole {
			continue
		}
		runs := s.Path.Flatten()
		if encloses(runs, number.Box().Centre()) && !encloses(runs, mark.bounds.Centre()) {
			c.fault("number %q of %s stands in a bore", number.Content, mark.name)
		}
	}
}
