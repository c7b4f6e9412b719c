package geometry

import "math"

// Disc is a circle with its interior.
type Disc struct {
	Centre Point
	Radius float64
}

// Enclose returns the smallest disc around the points. Its centre is used as
// the middle of a joint because, unlike the centroid, it does not move if a
// fastener is missing from a grid or a circle.
func Enclose(points []Point) Disc {
	hull := Hull(points)
	var d Disc
	for i, p := range hull {
		if i == 0 {
			d = Disc{Centre: p}
		} else if !d.holds(p) {
			d = encloseWith(hull[:i], p)
		}
	}
	return d
}

// encloseWith returns the smallest disc around the points that has p on its
// rim.
func encloseWith(points []Point, p Point) Disc {
	d := Disc{Centre: p}
	for i, q := range points {
		if d.holds(q) {
			continue
		}
		d = onDiameter(p, q)
		for _, r := range points[:i] {
			if !d.holds(r) {
				d = through(p, q, r)
			}
		}
	}
	return d
}

// holds reports whether the disc contains p. It allows for rounding, so that a
// point on the rim never counts as outside.
func (d Disc) holds(p Point) bool {
	return p.Distance(d.Centre) <= d.Radius*(1+1e-12)+1e-9
}

func onDiameter(p, q Point) Disc {
	centre := p.Add(q).Scale(0.5)
	return Disc{centre, math.Max(centre.Distance(p), centre.Distance(q))}
}

// through returns the circle through three points. For points on one line it
// returns the disc whose diameter is the longest of their distances.
func through(a, b, c Point) Disc {
	twice := 2 * cross(a, b, c)
	longest := onDiameter(a, b)
	for _, other := range []Disc{onDiameter(a, c), onDiameter(b, c)} {
		if other.Radius > longest.Radius {
			longest = other
		}
	}
	if math.Abs(twice) < 1e-12*longest.Radius*longest.Radius {
		return longest
	}
	u, v := b.Sub(a), c.Sub(a)
	uu, vv := u.X*u.X+u.Y*u.Y, v.X*v.X+v.Y*v.Y
	centre := a.Add(Point{(v.Y*uu - u.Y*vv) / twice, (u.X*vv - v.X*uu) / twice})
	return Disc{centre, math.Max(centre.Distance(a), math.Max(centre.Distance(b), centre.Distance(c)))}
}
