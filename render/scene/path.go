package scene

import "math"

// Verb is the kind of a segment.
type Verb uint8

const (
	Move  Verb = iota // to P[0]
	Line              // to P[0]
	Curve             // cubic with control points P[0] and P[1] to P[2]
	Close             // back to the start
)

// Segment is one piece of a path.
type Segment struct {
	Verb Verb
	P    [3]Point
}

var pointCount = [...]int{Move: 1, Line: 1, Curve: 3, Close: 0}

// Points are the used points of the segment.
func (s *Segment) Points() []Point { return s.P[:pointCount[s.Verb]] }

// Path is a sequence of segments; each sub-path begins with a Move.
type Path []Segment

// MoveTo starts a sub-path. LineTo and CurveTo continue it, straight or with
// two control points, and Close closes it.
func (p *Path) MoveTo(x, y float64)     { p.add(Move, Point{x, y}) }
func (p *Path) LineTo(x, y float64)     { p.add(Line, Point{x, y}) }
func (p *Path) CurveTo(a, b, end Point) { p.add(Curve, a, b, end) }
func (p *Path) Close()                  { p.add(Close) }

// Stroke adds a sub-path of one straight line.
func (p *Path) Stroke(x1, y1, x2, y2 float64) {
	p.MoveTo(x1, y1)
	p.LineTo(x2, y2)
}

func (p *Path) add(v Verb, points ...Point) {
	s := Segment{Verb: v}
	for i, q := range points {
		s.P[i] = q.rounded()
	}
	*p = append(*p, s)
}

// Rounded rounds a coordinate to 1/100 mm: finer than any printer, and the same
// in every backend.
func Rounded(v float64) float64 { return math.Round(v*100) / 100 }

func (p Point) rounded() Point { return Point{Rounded(p.X), Rounded(p.Y)} }

// Polyline connects the points by straight lines, closed or open.
func Polyline(points []Point, closed bool) Path {
	var p Path
	for i, q := range points {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	if closed && len(points) > 0 {
		p.Close()
	}
	return p
}

// Traced is a closed outline with each of its points mapped to the page.
func Traced[P any](outline []P, at func(P) Point) Path {
	points := make([]Point, len(outline))
	for i, p := range outline {
		points[i] = at(p)
	}
	return Polyline(points, true)
}

// Rect is a rectangle with rounded corners.
func Rect(x, y, w, h, radius float64) Path {
	r := math.Min(radius, math.Min(w, h)/2)
	if r <= 0 {
		return Polyline([]Point{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}, true)
	}
	k := r * (1 - kappa)
	var p Path
	p.MoveTo(x+r, y)
	p.LineTo(x+w-r, y)
	p.CurveTo(Point{x + w - k, y}, Point{x + w, y + k}, Point{x + w, y + r})
	p.LineTo(x+w, y+h-r)
	p.CurveTo(Point{x + w, y + h - k}, Point{x + w - k, y + h}, Point{x + w - r, y + h})
	p.LineTo(x+r, y+h)
	p.CurveTo(Point{x + k, y + h}, Point{x, y + h - k}, Point{x, y + h - r})
	p.LineTo(x, y+r)
	p.CurveTo(Point{x, y + k}, Point{x + k, y}, Point{x + r, y})
	p.Close()
	return p
}

// Path is the edge of the box.
func (b Box) Path() Path { return Rect(b.Left, b.Top, b.Width(), b.Height(), 0) }

// Cross is a horizontal and a vertical line through a point.
func Cross(x, y, arm float64) Path {
	var p Path
	p.Stroke(x-arm, y, x+arm, y)
	p.Stroke(x, y-arm, x, y+arm)
	return p
}

// kappa positions the control points of a cubic quarter circle: 4/3·(√2−1).
const kappa = 0.5522847498307936

// Circle is a full circle.
func Circle(x, y, radius float64) Path {
	k := radius * kappa
	var p Path
	p.MoveTo(x+radius, y)
	p.CurveTo(Point{x + radius, y + k}, Point{x + k, y + radius}, Point{x, y + radius})
	p.CurveTo(Point{x - k, y + radius}, Point{x - radius, y + k}, Point{x - radius, y})
	p.CurveTo(Point{x - radius, y - k}, Point{x - k, y - radius}, Point{x, y - radius})
	p.CurveTo(Point{x + k, y - radius}, Point{x + radius, y - k}, Point{x + radius, y})
	p.Close()
	return p
}

// Polygon is a regular polygon. Its first corner is in the direction firstDeg,
// anticlockwise from the right as seen on the page.
func Polygon(x, y, radius float64, sides int, firstDeg float64) Path {
	points := make([]Point, sides)
	for i := range points {
		s, c := math.Sincos((firstDeg + 360*float64(i)/float64(sides)) * math.Pi / 180)
		points[i] = Point{x + radius*c, y - radius*s}
	}
	return Polyline(points, true)
}

// Wedge is a sector of a disc from the top, clockwise by sweepDeg (negative:
// anticlockwise), for the angle of a turned bolt head.
func Wedge(x, y, radius, sweepDeg float64) Path {
	var p Path
	p.MoveTo(x, y)
	p.LineTo(x, y-radius)
	p.Arc(Point{x, y}, radius, -math.Pi/2, sweepDeg*math.Pi/180)
	p.Close()
	return p
}

// Arc adds an arc around c in pieces of at most a right angle. Angles are in
// radians, clockwise on the page from the right.
func (p *Path) Arc(c Point, radius, from, sweep float64) {
	pieces := int(math.Ceil(math.Abs(sweep) / (math.Pi / 2)))
	step := sweep / float64(pieces)
	k := radius * 4 / 3 * math.Tan(step/4)
	at := func(a float64) (place, tangent Point) {
		sin, cos := math.Sincos(a)
		return Point{c.X + radius*cos, c.Y + radius*sin}, Point{-k * sin, k * cos}
	}
	for i := range pieces {
		a, ta := at(from + step*float64(i))
		b, tb := at(from + step*float64(i+1))
		p.CurveTo(Point{a.X + ta.X, a.Y + ta.Y}, Point{b.X - tb.X, b.Y - tb.Y}, b)
	}
}
