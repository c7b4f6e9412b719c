package scene

import "math"

// Box is a rectangle on the page, parallel to its edges.
type Box struct{ Left, Top, Right, Bottom float64 }

// NoBox is empty; its union with another box is that box.
var NoBox = Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

// BoxAbout is the box of a width and a height around a centre.
func BoxAbout(c Point, width, height float64) Box {
	return Box{c.X - width/2, c.Y - height/2, c.X + width/2, c.Y + height/2}
}

// BoxOf is the smallest box that contains some points.
func BoxOf(points ...Point) Box {
	b := NoBox
	for _, q := range points {
		b = Box{min(b.Left, q.X), min(b.Top, q.Y), max(b.Right, q.X), max(b.Bottom, q.Y)}
	}
	return b
}

// Union is the smallest box that contains both.
func (b Box) Union(c Box) Box {
	return Box{math.Min(b.Left, c.Left), math.Min(b.Top, c.Top), math.Max(b.Right, c.Right), math.Max(b.Bottom, c.Bottom)}
}

// Moved returns the box shifted by an offset.
func (b Box) Moved(by Point) Box {
	return Box{b.Left + by.X, b.Top + by.Y, b.Right + by.X, b.Bottom + by.Y}
}

// Nearest returns the point of the box that is nearest to p.
func (b Box) Nearest(p Point) Point {
	return Point{max(b.Left, min(b.Right, p.X)), max(b.Top, min(b.Bottom, p.Y))}
}

// Corners are the corners of the box, clockwise from the top left.
func (b Box) Corners() [4]Point {
	return [4]Point{{b.Left, b.Top}, {b.Right, b.Top}, {b.Right, b.Bottom}, {b.Left, b.Bottom}}
}

// Width and Height are the extents along x and y.
func (b Box) Width() float64  { return b.Right - b.Left }
func (b Box) Height() float64 { return b.Bottom - b.Top }

// Centre is the middle of the box.
func (b Box) Centre() Point { return Point{(b.Left + b.Right) / 2, (b.Top + b.Bottom) / 2} }

// Grown returns the box with a margin added on every side; a negative one
// shrinks it.
func (b Box) Grown(margin float64) Box {
	return Box{b.Left - margin, b.Top - margin, b.Right + margin, b.Bottom + margin}
}

// Meets reports whether two boxes overlap.
func (b Box) Meets(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

// Holds reports whether c is completely inside b.
func (b Box) Holds(c Box) bool {
	return c.Left >= b.Left && c.Right <= b.Right && c.Top >= b.Top && c.Bottom <= b.Bottom
}

// Contains reports whether the point is in the box.
func (b Box) Contains(p Point) bool {
	return p.X >= b.Left && p.X <= b.Right && p.Y >= b.Top && p.Y <= b.Bottom
}

// Cut reports whether the straight line from p to q touches the box.
func (b Box) Cut(p, q Point) bool {
	if max(p.X, q.X) < b.Left || min(p.X, q.X) > b.Right || max(p.Y, q.Y) < b.Top || min(p.Y, q.Y) > b.Bottom {
		return false // the most common case
	}
	from, to := b.clip(p, q)
	return from <= to
}

// Clipped returns the part of the straight line from p to q inside the box.
// Ends inside it are not changed.
func (b Box) Clipped(p, q Point) (start, end Point, ok bool) {
	from, to := b.clip(p, q)
	if from >= to {
		return start, end, false
	}
	at := func(t float64) Point { return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)} }
	start, end = p, q
	if from > 0 {
		start = at(from)
	}
	if to < 1 {
		end = at(to)
	}
	return start, end, true
}

// clip returns the interval of the straight line from p, at 0, to q, at 1, that
// is inside the box, with from ≥ to if there is none (Liang and Barsky 1984).
func (b Box) clip(p, q Point) (from, to float64) {
	from, to = 0, 1
	dx, dy := q.X-p.X, q.Y-p.Y
	for _, side := range [4][2]float64{{-dx, p.X - b.Left}, {dx, b.Right - p.X}, {-dy, p.Y - b.Top}, {dy, b.Bottom - p.Y}} {
		step, room := side[0], side[1]
		switch {
		case step == 0 && room < 0:
			return 1, 0
		case step < 0:
			from = max(from, room/step)
		case step > 0:
			to = min(to, room/step)
		}
	}
	return from, to
}

// Extent of letters in em: capitals and digits reach up to letterTop, accents
// above it are rare and thin; descenders reach down to letterFoot.
const (
	letterTop  = 0.76
	letterFoot = 0.20
)

// Before is the length of a line before its anchor, in millimetres.
func (t Text) Before() float64 {
	switch t.Anchor {
	case Middle:
		return t.Width / 2
	case End:
		return t.Width
	}
	return 0
}

// Box returns the rectangle that the line of type covers.
func (t Text) Box() Box {
	before, foot := t.Before(), letterFoot
	if onlyDigits(t.Content) {
		foot = 0
	}
	if t.Upward {
		return Box{t.At.X - letterTop*t.Size, t.At.Y + before - t.Width, t.At.X + foot*t.Size, t.At.Y + before}
	}
	return Box{t.At.X - before, t.At.Y - letterTop*t.Size, t.At.X - before + t.Width, t.At.Y + foot*t.Size}
}

func onlyDigits(s string) bool {
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return s != ""
}

// Bounds returns the bounding box of a path, from its flattened outline.
func (p Path) Bounds() Box {
	b := NoBox
	p.walk(fewPieces, func(q Point, _ bool) {
		b = Box{min(b.Left, q.X), min(b.Top, q.Y), max(b.Right, q.X), max(b.Bottom, q.Y)}
	})
	return b
}

// Flatten returns each sub-path as a polyline, with curves in a few pieces.
func (p Path) Flatten() [][]Point { return p.flatten(fewPieces) }

func fewPieces(Point, *Segment) int { return 12 }

// FlattenTo does the same with as many pieces as keep the lines within a
// distance of the curves. A chord over 1/n of a cubic is within 1/8 of its
// second derivative divided by n², which is at most 6 times the largest second
// difference of its four points.
func (p Path) FlattenTo(distance float64) [][]Point {
	return p.flatten(func(a Point, curve *Segment) int {
		b, c, d := curve.P[0], curve.P[1], curve.P[2]
		first := math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y)
		second := math.Hypot(b.X-2*c.X+d.X, b.Y-2*c.Y+d.Y)
		return max(1, int(math.Ceil(math.Sqrt(0.75*math.Max(first, second)/distance))))
	})
}

func (p Path) flatten(pieces func(start Point, curve *Segment) int) [][]Point {
	var runs [][]Point
	p.walk(pieces, func(q Point, begins bool) {
		if begins {
			runs = append(runs, nil)
		}
		runs[len(runs)-1] = append(runs[len(runs)-1], q)
	})
	return runs
}

// walk follows the path in straight lines and reports where each sub-path
// begins.
func (p Path) walk(pieces func(start Point, curve *Segment) int, to func(q Point, begins bool)) {
	var first, here Point
	for k := range p {
		switch s := &p[k]; s.Verb {
		case Move:
			first, here = s.P[0], s.P[0]
			to(here, true)
		case Line:
			here = s.P[0]
			to(here, false)
		case Curve:
			start, steps := here, pieces(here, s)
			for k := 1; k <= steps; k++ {
				here = Bezier(start, s.P[0], s.P[1], s.P[2], float64(k)/float64(steps))
				to(here, false)
			}
		case Close:
			here = first
			to(here, false)
		}
	}
}

// Bezier is the point on a cubic curve from a to d, with control points b and
// c, at t from 0 to 1.
func Bezier(a, b, c, d Point, t float64) Point {
	u := 1 - t
	f := [4]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
	return Point{f[0]*a.X + f[1]*b.X + f[2]*c.X + f[3]*d.X, f[0]*a.Y + f[1]*b.Y + f[2]*c.Y + f[3]*d.Y}
}
