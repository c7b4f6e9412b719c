package png

import (
	"cmp"
	"image"
	"math"
	"slices"

	"drawdown/render/scene"
)

// gg spends some nanoseconds on every pixel of a fill, which is most of the
// time for a page with tinted panels. So blocks completely inside a large shape
// are cut out of its path and painted row by row; gg paints the rest, including
// the soft edges. The pixels are the same.

const (
	// stripRows is the height of the blocks.
	stripRows = 16
	// leastCore is the smallest width of a block, in pixels, that is worth
	// cutting out.
	leastCore = 24
	// aside is the distance of a block from an edge, in pixels, because the
	// rasterizer rounds.
	aside = 1
)

// core is a block of pixels inside a path, and the path's winding number around
// it.
type core struct {
	image.Rectangle
	winding int
}

type edge struct{ a, b scene.Point }

// edges appends the straight pieces of outlines to out, each closed as in a
// fill.
func edges(out []edge, path []outline) []edge {
	for _, o := range path {
		at := o.points[len(o.points)-1]
		for _, q := range o.points {
			out = append(out, edge{at, q})
			at = q
		}
	}
	return out
}

// cores finds the blocks of the area that are completely inside the path.
func cores(path []edge, area image.Rectangle) []core {
	var out []core
	for y := area.Min.Y; y < area.Max.Y; y += stripRows {
		strip := image.Rect(area.Min.X, y, area.Max.X, min(y+stripRows, area.Max.Y))
		out = append(out, stripCores(path, strip)...)
	}
	return out
}

// span is the extent of an edge in a strip, from left to right, and whether it
// crosses the middle of the strip downwards (1) or upwards (−1).
type span struct {
	low, high float64
	crossing  int
}

// stripCores sweeps a strip from left to right. Between two edges the winding
// number is the same for every point from top to bottom.
func stripCores(path []edge, strip image.Rectangle) []core {
	var spans []span
	for _, e := range path {
		if s, touches := e.within(float64(strip.Min.Y)-aside, float64(strip.Max.Y)+aside); touches {
			spans = append(spans, s)
		}
	}
	slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.low, b.low) })
	var out []core
	winding, free := 0, math.Inf(-1)
	for _, s := range spans {
		if winding != 0 && s.low > free {
			if c, ok := between(free, s.low, strip); ok {
				out = append(out, core{c, winding})
			}
		}
		winding += s.crossing
		free = max(free, s.high)
	}
	return out
}

func between(low, high float64, strip image.Rectangle) (image.Rectangle, bool) {
	left := max(int(math.Ceil(max(low, -1e6)))+aside, strip.Min.X)
	right := min(int(math.Floor(min(high, 1e6)))-aside, strip.Max.X)
	return image.Rect(left, strip.Min.Y, right, strip.Max.Y), right-left >= leastCore
}

func (e edge) within(top, bottom float64) (span, bool) {
	upper, lower, down := e.a, e.b, 1
	if upper.Y > lower.Y {
		upper, lower, down = lower, upper, -1
	}
	if lower.Y < top || upper.Y > bottom {
		return span{}, false
	}
	left, right := upper.X, lower.X
	if slope := (lower.X - upper.X) / (lower.Y - upper.Y); lower.Y > upper.Y {
		if upper.Y < top {
			left = upper.X + slope*(top-upper.Y)
		}
		if lower.Y > bottom {
			right = lower.X - slope*(lower.Y-bottom)
		}
	}
	crossing := 0
	if middle := (top + bottom) / 2; upper.Y <= middle && middle < lower.Y {
		crossing = down
	}
	return span{min(left, right), max(left, right), crossing}, true
}
