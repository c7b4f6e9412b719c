package trace

import (
	"math"

	"drawdown/geometry"
)

// edge is the border of a patch, found to a fraction of a pixel.
type edge struct {
	mm       []geometry.Point // along the border, from the first pixel round
	side     float64          // of a pixel in the middle of its box, in mm
	sound    []bool           // the step of brightness there is clear and single
	steps    []float64        // of brightness, as shares of the picture's contrast
	contrast float64
}

// profileReach is how far the brightness is followed on either side of an
// edge, in pixels.
const profileReach = 4

// edge follows the border of a patch. Where the pixels change tone is known to
// a pixel only; across it the brightness runs from one tone to the other, and
// the edge stands where the areas under both are equal. Blur and the
// brightness of the tones do not move that place.
func (t *tracer) edge(b blob) edge {
	cracks := t.mask.contour(b)
	inside := 1.0 // sign of inside less outside
	if b.part == (t.mask.tone == ToneDark) {
		inside = -1
	}
	e := edge{}
	var pixels []geometry.Point
	for i, c := range cracks {
		nx, ny := outward(cracks, i)
		dark, bright := t.light.at(c.x, c.y)
		offset, step := t.profile(c.x, c.y, nx, ny)
		step *= inside / (bright - dark)
		sound := step > leastStep && math.Abs(offset) < mostOffset
		if !sound {
			offset = 0
		}
		if t.mask.atRim(c) {
			step = 1 // the part is cut off there; nothing says that it is faint
		}
		e.steps = append(e.steps, step)
		p := geometry.Point{X: c.x + offset*nx, Y: c.y + offset*ny}
		pixels = append(pixels, p)
		e.mm = append(e.mm, t.frame.Mm(p.X, p.Y))
		e.sound = append(e.sound, sound)
	}
	e.contrast = median(e.steps)
	box := geometry.Bounds(pixels)
	e.side = t.frame.pixelMm((box.Min.X+box.Max.X)/2, (box.Min.Y+box.Max.Y)/2)
	return e
}

const (
	leastStep  = 0.35 // of the picture's contrast
	mostOffset = 2.5  // pixels
)

// outward is the direction out of a patch, smoothed over the borders nearby:
// those of pixels run level and upright only.
func outward(cracks []crack, i int) (x, y float64) {
	n := len(cracks)
	k := min(6, n/12)
	for d := -k; d <= k; d++ {
		c := cracks[(i+d+n)%n]
		weight := float64(k + 1 - max(d, -d))
		x, y = x+weight*c.outX, y+weight*c.outY
	}
	if length := math.Hypot(x, y); length > 0 {
		return x / length, y / length
	}
	return cracks[i].outX, cracks[i].outY
}

// profile follows the brightness along a line across an edge. It returns where
// the edge lies ahead of the place, in pixels, and the grey inside less that
// outside.
func (t *tracer) profile(x, y, nx, ny float64) (offset, step float64) {
	const perPixel = 2
	var greys [2*profileReach*perPixel + 1]float64
	for i := range greys {
		d := float64(i)/perPixel - profileReach
		greys[i] = t.grey(x+d*nx, y+d*ny)
	}
	last := len(greys) - 1
	in, out := (greys[0]+greys[1]+greys[2])/3, (greys[last]+greys[last-1]+greys[last-2])/3
	if in == out {
		return 0, 0
	}
	area := (greys[0] + greys[last] - 2*out) / 2
	for _, v := range greys[1:last] {
		area += v - out
	}
	return area/(in-out)/perPixel - profileReach, in - out
}

// grey is the brightness at a place between the pixels' middles.
func (t *tracer) grey(x, y float64) float64 {
	x, y = x-0.5, y-0.5
	left, top := math.Floor(x), math.Floor(y)
	fx, fy := x-left, y-top
	lastX, lastY := t.mask.width-1, t.mask.height-1
	x0, x1 := min(max(int(left), 0), lastX), min(max(int(left)+1, 0), lastX)
	y0, y1 := min(max(int(top), 0), lastY), min(max(int(top)+1, 0), lastY)
	upper, lower := t.picture.Pix[y0*t.picture.Stride:], t.picture.Pix[y1*t.picture.Stride:]
	a, b := float64(upper[x0]), float64(upper[x1])
	c, d := float64(lower[x0]), float64(lower[x1])
	return (a*(1-fx)+b*fx)*(1-fy) + (c*(1-fx)+d*fx)*fy
}

// crack is a place on the border between two pixels, with the direction from
// inside to outside.
type crack struct{ x, y, outX, outY float64 }

// atRim reports whether a border is that of the picture.
func (m *mask) atRim(c crack) bool {
	return c.x <= 0 || c.y <= 0 || c.x >= float64(m.width) || c.y >= float64(m.height)
}

// contour walks round a patch along the borders of its pixels, the patch on
// the right hand, and returns the middle of each border passed. Only the outer
// border is walked: what lies inside the patch is not looked at.
func (m *mask) contour(b blob) []crack {
	var cracks []crack
	// The walk begins at the top left corner of the first pixel and goes right.
	x, y, dx, dy := b.x, b.y, 1, 0
	for {
		// The border from (x, y) to (x+dx, y+dy); outside is to the left.
		cracks = append(cracks, crack{float64(x) + float64(dx)/2, float64(y) + float64(dy)/2, float64(dy), -float64(dx)})
		x, y = x+dx, y+dy
		// The two pixels in front of the corner, left and right of the way.
		l := m.has(x+(dx+dy-1)/2, y+(dy-dx-1)/2, b.part)
		r := m.has(x+(dx-dy-1)/2, y+(dy+dx-1)/2, b.part)
		switch {
		case l && (r || b.part): // a corner is crossed by the part only
			dx, dy = dy, -dx
		case r:
			// straight on
		default:
			dx, dy = -dy, dx
		}
		if x == b.x && y == b.y && dx == 1 && dy == 0 {
			return cracks
		}
	}
}
