package geometry

import "math"

// Point is a place in the view, in millimetres.
type Point struct{ X, Y float64 }

// Sub returns the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Add returns p moved by vector q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Scale returns p multiplied by f.
func (p Point) Scale(f float64) Point { return Point{p.X * f, p.Y * f} }

// Dot returns the scalar product of two vectors.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Distance returns the distance between p and q.
func (p Point) Distance(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// AngleFrom returns the direction from centre to p in degrees, anticlockwise
// from the right, in [0, 360).
func (p Point) AngleFrom(centre Point) float64 {
	return Turn(math.Atan2(p.Y-centre.Y, p.X-centre.X) * 180 / math.Pi)
}

// Turn normalizes an angle in degrees to [0, 360).
func Turn(deg float64) float64 {
	deg = math.Mod(deg, 360)
	if deg < 0 {
		deg += 360
	}
	if deg >= 360 { // an angle just below zero rounds up to a full turn
		return 0
	}
	return deg
}

// Centroid returns the mean of the points, or the zero point if there are none.
func Centroid(points []Point) Point {
	var sum Point
	for _, p := range points {
		sum = sum.Add(p)
	}
	if len(points) == 0 {
		return sum
	}
	return sum.Scale(1 / float64(len(points)))
}

// Box is a rectangle parallel to the axes.
type Box struct{ Min, Max Point }

// Bounds returns the smallest box around the points.
func Bounds(points []Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	b := Box{points[0], points[0]}
	for _, p := range points[1:] {
		b.Min.X, b.Min.Y = math.Min(b.Min.X, p.X), math.Min(b.Min.Y, p.Y)
		b.Max.X, b.Max.Y = math.Max(b.Max.X, p.X), math.Max(b.Max.Y, p.Y)
	}
	return b
}

// Width is the extent along x.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height is the extent along y.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// Grown returns the box with a margin added on every side.
func (b Box) Grown(margin float64) Box {
	return Box{Point{b.Min.X - margin, b.Min.Y - margin}, Point{b.Max.X + margin, b.Max.Y + margin}}
}
