package geometry

import "math"

// LongAxis gives the unit vector along which the points extend most. Where no
// direction stands out it is the x axis. It points to the right, or upwards
// where it is upright.
func LongAxis(points []Point) Point {
	c := Centroid(points)
	var xx, yy, xy float64
	for _, p := range points {
		d := p.Sub(c)
		xx, yy, xy = xx+d.X*d.X, yy+d.Y*d.Y, xy+d.X*d.Y
	}
	// Half the difference and half the sum of the two principal moments.
	differ, sum := math.Hypot((xx-yy)/2, xy), (xx+yy)/2
	if differ < 1e-6*sum || sum == 0 {
		return Point{1, 0}
	}
	axis := Polar(Point{}, 1, math.Atan2(2*xy, xx-yy)/2*180/math.Pi)
	if axis.X < -1e-9 || (math.Abs(axis.X) <= 1e-9 && axis.Y < 0) {
		axis = axis.Scale(-1)
	}
	return axis
}

// Dot gives the scalar product of two vectors.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// OffLine gives the largest distance of a point from the line through the
// centroid along axis.
func OffLine(points []Point, axis Point) float64 {
	c, normal := Centroid(points), Point{-axis.Y, axis.X}
	worst := 0.0
	for _, p := range points {
		worst = math.Max(worst, math.Abs(p.Sub(c).Dot(normal)))
	}
	return worst
}
