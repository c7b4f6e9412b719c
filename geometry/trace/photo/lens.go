// Package photo finds a sheet of paper, or a printed target, in a photo: its
// corners, and how much the camera's lens bends its straight sides. It may import
// geometry. It knows pixels only.
package photo

import (
	"math"

	"drawdown/geometry"
)

// Lens is how a camera lens moves places in the picture along the rays from its
// middle: by even powers of the distance (Brown, 1966). The zero Lens moves none.
type Lens struct {
	middle         geometry.Point // pixels
	half           float64        // of the picture's diagonal; 0 for no lens
	second, fourth float64
}

// Straight returns where a place of the picture would be without the lens, in
// pixels.
func (l Lens) Straight(p geometry.Point) geometry.Point {
	if l.half == 0 {
		return p
	}
	from := p.Sub(l.middle)
	square := from.Dot(from) / (l.half * l.half)
	return l.middle.Add(from.Scale(1 + square*(l.second+square*l.fourth)))
}

// Bent is the reverse of Straight.
func (l Lens) Bent(p geometry.Point) geometry.Point {
	from := p.Sub(l.middle)
	far := math.Hypot(from.X, from.Y)
	if l.half == 0 || far == 0 {
		return p
	}
	return l.middle.Add(from.Scale(l.drawnAt(far/l.half) * l.half / far))
}

// drawnAt is the distance from the middle at which the lens draws a distance, in
// halves of the diagonal (Newton's method).
func (l Lens) drawnAt(far float64) float64 {
	r := far
	for range 12 {
		square := r * r
		slope := 1 + square*(3*l.second+square*5*l.fourth)
		if slope < leastSlope { // beyond the picture the powers may turn back
			break
		}
		step := (r*(1+square*(l.second+square*l.fourth)) - far) / slope
		r -= step
		if math.Abs(step) < 1e-12 {
			break
		}
	}
	return r
}

// Barrel is how far the lens draws the corners of the picture inwards, as a share
// of half its diagonal. It is negative where it pushes them outwards.
func (l Lens) Barrel() float64 {
	if l.half == 0 {
		return 0
	}
	return 1 - l.drawnAt(1)
}

// From is the lens of a piece of the picture that begins at a pixel.
func (l Lens) From(x, y float64) Lens {
	l.middle = l.middle.Sub(geometry.Point{X: x, Y: y})
	return l
}

// Limits of a lens: those of phones and of wide cameras lie within.
const (
	leastSlope = 0.05
	mostSecond = 0.3
	mostFourth = 0.15
)

// straightening finds the lens that makes all sides straight, by Gauss–Newton
// steps. What a finger or the part covers of a side is left out on the way. The
// sides that come back are what was kept.
func straightening(sides [4][]geometry.Point, l Lens) (Lens, [4][]geometry.Point) {
	for range 8 {
		off := l.off(sides)
		bySecond, byFourth := l.with(probe, 0).off(sides), l.with(0, probe).off(sides)
		// A weak pull of the fourth power to 0 settles what the sides do not show.
		pull := ridge * float64(len(off)) * l.half * l.half
		var a, b, right1 float64
		c, right2 := pull, -pull*l.fourth
		for i, r := range off {
			u, v := (bySecond[i]-r)/probe, (byFourth[i]-r)/probe
			a, b, c = a+u*u, b+u*v, c+v*v
			right1, right2 = right1-u*r, right2-v*r
		}
		det := a*c - b*b
		if !(det > 0) {
			break
		}
		l = l.with((right1*c-right2*b)/det, (a*right2-b*right1)/det)
		l.second, l.fourth = within(l.second, mostSecond), within(l.fourth, mostFourth)
		sides = l.kept(sides)
	}
	return l, sides
}

const (
	probe = 1e-4
	ridge = 1e-6
)

func within(v, most float64) float64 { return min(max(v, -most), most) }

func (l Lens) with(second, fourth float64) Lens {
	l.second, l.fourth = l.second+second, l.fourth+fourth
	return l
}

// off lists how far the places of all sides lie off their straight line, in
// pixels.
func (l Lens) off(sides [4][]geometry.Point) (off []float64) {
	for _, side := range sides {
		straight := l.straightAll(side)
		line := lineThrough(straight)
		for _, p := range straight {
			off = append(off, line.off(p))
		}
	}
	return off
}

func (l Lens) straightAll(side []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(side))
	for i, p := range side {
		out[i] = l.Straight(p)
	}
	return out
}

// kept leaves out places that lie far off their line.
func (l Lens) kept(sides [4][]geometry.Point) (kept [4][]geometry.Point) {
	for k, side := range sides {
		straight := l.straightAll(side)
		line := lineThrough(straight)
		limit := 4*middling(straight, line) + 0.3
		for i, p := range straight {
			if math.Abs(line.off(p)) <= limit {
				kept[k] = append(kept[k], side[i])
			}
		}
	}
	return kept
}
