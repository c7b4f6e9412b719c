package scenetest

import (
	"math"

	"drawdown/render/scene"
)

// A trail with a name is a leader: it connects a mark to a number away from it.
// A trail without a name is an arrow of the path.

// joined is how close, in millimetres, a leader must come to what it connects.
const joined = 1.0

// checkTrails checks that no trail passes through another mark, and that no
// leader meets another trail, because the eye could follow the wrong one.
func (c *checker) checkTrails() {
	var lines []scene.Shape
	var runs [][][]scene.Point
	var boxes []scene.Box
	for _, s := range c.shapes {
		if s.Tag.Role == scene.Mark || s.Tag.Role == scene.Trail {
			lines, runs, boxes = append(lines, s), append(runs, s.Path.Flatten()), append(boxes, s.Path.Bounds())
		}
	}
	c.pairs(boxes, func(i, k int) {
		a, b := lines[i], lines[k]
		if a.Tag.Role == scene.Mark && b.Tag.Role == scene.Mark || a.Tag.Name != "" && a.Tag.Name == b.Tag.Name {
			return
		}
		if b.Tag.Role == scene.Mark {
			a, b, i, k = b, a, k, i
		}
		arrows := a.Tag == b.Tag // the layout of the path itself allows a few crossings
		if arrows || !boxes[i].Grown(touch).Meets(boxes[k].Grown(touch)) || !meet(runs[i], runs[k]) {
			return
		}
		c.fault("the trail %s meets the %s %s at %.1f,%.1f", b.Tag.Name, a.Tag.Role, a.Tag.Name, boxes[k].Left, boxes[k].Top)
	})
}

func meet(a, b [][]scene.Point) bool {
	for _, p := range a {
		for _, q := range b {
			for i := 1; i < len(p); i++ {
				for k := 1; k < len(q); k++ {
					if linesMeet(p[i-1], p[i], q[k-1], q[k]) {
						return true
					}
				}
			}
		}
	}
	return false
}

// linesMeet reports whether the segments ab and cd touch.
func linesMeet(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	c1, d1, a2, b2 := side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
	if c1 == 0 && d1 == 0 && a2 == 0 && b2 == 0 {
		// On one line, where they may be apart.
		return math.Min(a.X, b.X) <= math.Max(c.X, d.X) && math.Min(c.X, d.X) <= math.Max(a.X, b.X) &&
			math.Min(a.Y, b.Y) <= math.Max(c.Y, d.Y) && math.Min(c.Y, d.Y) <= math.Max(a.Y, b.Y)
	}
	return c1*d1 <= 0 && a2*b2 <= 0
}

func leads(trail, mark [][]scene.Point, text scene.Box) bool {
	toMark := math.Inf(1)
	for _, run := range trail {
		for _, p := range run {
			end := scene.Box{Left: p.X, Top: p.Y, Right: p.X, Bottom: p.Y}
			toMark = math.Min(toMark, scene.RunsToBox(mark, end))
		}
	}
	return toMark <= joined && scene.RunsToBox(trail, text) <= joined
}
