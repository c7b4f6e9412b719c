package geometry

import "math"

// Tolerances for shapes and relations of places; nothing else defines them.
// They are shares of the spacing, because measuring errors grow with the pitch,
// whatever the size of the part. None has a published source; each gives the
// reason for its value.
const (
	// LevelShare is how much measuring errors may make two equal distances
	// differ. A hole 1 % of the spacing off its place changes a difference of
	// two distances by 5.7 % at most.
	LevelShare = 0.06
	// CircleShare is how far places may be off one circle or one line: more
	// than measuring errors, less than the distance between two rings.
	CircleShare = 0.1
	// CentralShare is the radius around the centre within which a place has no
	// direction.
	CentralShare = 0.15
	// NeighbourShare is the largest distance between neighbours: more than the
	// larger pitch of a nearly square grid, less than the diagonal of a square.
	NeighbourShare = 1.3
	// AcrossDeg is the smallest angle between two directions from the centre
	// that counts as across. It is not a multiple of the steps of common
	// circles, so that a measuring error cannot decide.
	AcrossDeg = 133.0
)

// OneCircle reports whether all points are on one circle around the centre.
func OneCircle(points []Point, centre Point) bool {
	return len(points) >= 3 && offCircle(points, centre) <= CircleShare*Spacing(points)
}

// offCircle returns the difference between the largest and smallest distance
// from the centre.
func offCircle(points []Point, centre Point) float64 {
	low, high := math.Inf(1), 0.0
	for _, p := range points {
		d := p.Distance(centre)
		low, high = math.Min(low, d), math.Max(high, d)
	}
	return high - low
}

// LongAxis returns the unit vector of the largest extent of the points, or the
// x axis if no direction is longer than others. It points to the right, or up
// if it is vertical.
func LongAxis(points []Point) Point {
	c := Centroid(points)
	var xx, yy, xy float64
	for _, p := range points {
		d := p.Sub(c)
		xx, yy, xy = xx+d.X*d.X, yy+d.Y*d.Y, xy+d.X*d.Y
	}
	// Half the difference and half the sum of the principal moments.
	differ, sum := math.Hypot((xx-yy)/2, xy), (xx+yy)/2
	if differ < 1e-6*sum || sum == 0 {
		return Point{1, 0}
	}
	axis := Polar(Point{}, 1, math.Atan2(2*xy, xx-yy)/2*180/math.Pi)
	if axis.X <= 1e-9 && axis.Y < 0 { // half the angle of Atan2 never points left
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

// OneLine reports whether all points are on one line. Two always are.
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
