package geometry

import "math"

// gridTilt returns the direction of the rows of a grid in degrees, from about
// -45 to 45. The neighbours of each place give a first estimate, which is then
// fitted to the rows and columns found along it. On a long part a small angular
// error is large at the ends.
func gridTilt(points []Point) float64 {
	first := neighbourTilt(points)
	return first + remainingTilt(rotated(points, -first))
}

// neighbourTilt returns the mean direction to the nearest neighbour in degrees,
// modulo 90°, in (-45, 45].
func neighbourTilt(points []Point) float64 {
	var sum Point
	for i, k := range nearestNeighbours(points) {
		sum = sum.Add(Polar(Point{}, 1, 4*points[k].AngleFrom(points[i])))
	}
	return math.Atan2(sum.Y, sum.X) * 180 / math.Pi / 4
}

// remainingTilt returns the small angle in degrees by which rows nearly along x
// and columns nearly along y are turned. It is a least-squares fit of the
// places against the middles of their rows and columns.
func remainingTilt(points []Point) float64 {
	slack := LevelShare * Spacing(points)
	return tiltOf(points, newLevels(points, alongX, slack), newLevels(points, alongY, slack))
}

// tiltOf does the same for given columns and rows.
func tiltOf(points []Point, columns, rows *levels) float64 {
	rowMiddle, columnMiddle := rows.middles(points), columns.middles(points)
	var product, squares float64
	for i, p := range points {
		r, c := p.Sub(rowMiddle[rows.of[i]]), p.Sub(columnMiddle[columns.of[i]])
		product += r.X*r.Y - c.X*c.Y
		squares += r.X*r.X + c.Y*c.Y
	}
	if squares == 0 {
		return 0
	}
	return math.Atan(product/squares) * 180 / math.Pi
}

// shift returns the largest distance that a turn by deg about the middle moves
// a point.
func shift(points []Point, deg float64) float64 {
	return Enclose(points).Radius * math.Abs(math.Sin(deg*math.Pi/180))
}

func alongX(p Point) float64 { return p.X }

func alongY(p Point) float64 { return p.Y }

func rotated(points []Point, deg float64) []Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return Mapped(points, func(p Point) Point { return Point{c*p.X - s*p.Y, s*p.X + c*p.Y} })
}
