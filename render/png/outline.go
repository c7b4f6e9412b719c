package png

import (
	"slices"

	"drawdown/render/scene"
)

// A band shows little of a long line, and gg divides a curve into pieces of one
// pixel, each with a joint. So paths are given to gg as straight pieces that
// are as long as possible, without those outside the band.

// straight is the largest distance of a chord from its curve, in pixels.
const straight = 0.03

type outline struct {
	points []scene.Point
	closed bool
}

func outlines(path scene.Path, place func(scene.Point) scene.Point) []outline {
	var out []outline
	placed := slices.Clone(path)
	for i, seg := range path {
		for k := range seg.P {
			placed[i].P[k] = place(seg.P[k])
		}
		switch seg.Verb {
		case scene.Move:
			out = append(out, outline{})
		case scene.Close:
			out[len(out)-1].closed = true
		}
	}
	for i, run := range placed.FlattenTo(straight) {
		if out[i].closed {
			run = run[:len(run)-1] // without the repeated start point
		}
		out[i].points = run
	}
	return out
}

// seen drops the points whose neighbours are on the same side of the band as
// they are. The piece that then connects the neighbours is there too.
func (o outline) seen(top, bottom float64) []scene.Point {
	side := func(q scene.Point) int {
		switch {
		case q.Y < top:
			return -1
		case q.Y > bottom:
			return 1
		}
		return 0
	}
	last := len(o.points) - 1
	out := make([]scene.Point, 0, 64)
	for i, q := range o.points {
		s := side(q)
		if i == 0 || i == last || s == 0 || side(o.points[i-1]) != s || side(o.points[i+1]) != s {
			out = append(out, q)
		}
	}
	return out
}
