package geometry

import "math"

// Shapes and relations of places, each decided here and nowhere else. Shares
// are of the spacing: a hole is measured off by some part of the pitch,
// whatever the size of the part. None has a source; each says why it is that
// large.
const (
	// LevelShare is how far off a measured hole may make two distances differ
	// that are equal on the part. A hole that lies 1 % of the spacing off its
	// true place changes a difference of two distances by 5.7 % at the most.
	LevelShare = 0.06
	// CircleShare is how far off one circle, or one line, places may lie: more
	// than holes are measured off, less than tells two rings apart.
	CircleShare = 0.1
	// CentralShare is how near the centre a place has no direction.
	CentralShare = 0.15
	// NeighbourShare is how far apart neighbours are at the most: more than the
	// two pitches of a nearly square grid differ by, less than the diagonal of a
	// square.
	NeighbourShare = 1.3
	// AcrossDeg is how far apart two directions from the centre are at the least
	// that count as across. It is no whole number of steps of any usual circle,
	// so that a hole measured off its place decides nothing.
	AcrossDeg = 133.0
)

// OneCircle reports whether all points lie on one circle round the centre.
func OneCircle(points []Point, centre Point) bool {
	return len(points) >= 3 && offCircle(points, centre) <= CircleShare*Spacing(points)
}

// offCircle returns how much the distances from the centre differ at the most.
func offCircle(points []Point, centre Point) float64 {
	low, high := math.Inf(1), 0.0
	for _, p := range points {
		d := p.Distance(centre)
		low, high = math.Min(low, d), math.Max(high, d)
	}
	return high - low
}

// LongAxis returns the unit vector along which the points extend most. Where no
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
	if axis.X <= 1e-9 && axis.Y < 0 { // half the angle of Atan2 never points to the left
		axis = axis.Scale(-1)
	}
	return axis
}

// OffLine returns the largest distance of a point from the line through the
// centroid along axis.
func OffLine(points []Point, axis Point) float64 {
	c, normal := Centroid(points), Point{-axis.Y, axis.X}
	worst := 0.0
	for _, p := range points {
		worst = math.Max(worst, math.Abs(p.Sub(c).Dot(normal)))
	}
	return worst
}

// OneLine reports whether all points lie on one line; two always do.
func OneLine(points []Point) bool {
	return len(points) < 3 || OffLine(points, LongAxis(points)) <= CircleShare*Spacing(points)
}

// Apart returns the angle between two directions, from 0 to 180 degrees.
func Apart(aDeg, bDeg float64) float64 {
	d := Turn(aDeg - bDeg)
	return math.Min(d, 360-d)
}

// Across reports whether two directions from a centre are nearly opposite.
func Across(aDeg, bDeg float64) bool { return Apart(aDeg, bDeg) >= AcrossDeg }

// Neighbours reports whether two points are neighbours among points with this
// spacing.
func Neighbours(p, q Point, spacing float64) bool {
	return p.Distance(q) <= NeighbourShare*spacing
}
