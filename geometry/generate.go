package geometry

import "math"

// Grid returns rows × columns places, row by row from the top left, with the
// middle of the grid at centre. It returns none if a count is below one.
func Grid(columns, rows int, pitchX, pitchY float64, centre Point) []Point {
	if columns < 1 || rows < 1 {
		return nil
	}
	points := make([]Point, 0, columns*rows)
	for r := range rows {
		for c := range columns {
			points = append(points, Point{
				centre.X + (float64(c)-float64(columns-1)/2)*pitchX,
				centre.Y - (float64(r)-float64(rows-1)/2)*pitchY,
			})
		}
	}
	return points
}

// Row returns count places at the pitch, starting at from in the direction
// angleDeg (anticlockwise from the right). It returns none if count is below
// one.
func Row(count int, pitch float64, from Point, angleDeg float64) []Point {
	if count < 1 {
		return nil
	}
	direction := Polar(Point{}, 1, angleDeg)
	return Mapped(Count(count), func(i int) Point { return from.Add(direction.Scale(pitch * float64(i))) })
}

// Circle returns count evenly spaced places on a circle, the first in the
// direction firstDeg, clockwise or anticlockwise in the view. It returns none
// if count is below one.
func Circle(count int, diameter float64, centre Point, firstDeg float64, clockwise bool) []Point {
	if count < 1 {
		return nil
	}
	step := 360 / float64(count)
	if clockwise {
		step = -step
	}
	return Mapped(Count(count), func(i int) Point { return Polar(centre, diameter/2, firstDeg+step*float64(i)) })
}

// Rectangle returns places on the perimeter of a width × height rectangle,
// clockwise from the top left: columns along the top and bottom with the
// corners, and rows more on each end. It returns none if columns is below two,
// which leaves no corners, or if rows is below zero.
func Rectangle(columns, rows int, width, height float64, centre Point) []Point {
	if columns < 2 || rows < 0 {
		return nil
	}
	left, right := centre.X-width/2, centre.X+width/2
	bottom, top := centre.Y-height/2, centre.Y+height/2
	along := func(a, b float64, i, n int) float64 { return a + (b-a)*float64(i)/float64(n) }
	points := make([]Point, 0, 2*(columns+rows))
	for c := range columns {
		points = append(points, Point{along(left, right, c, columns-1), top})
	}
	for r := range rows {
		points = append(points, Point{right, along(top, bottom, r+1, rows+1)})
	}
	for c := range columns {
		points = append(points, Point{along(right, left, c, columns-1), bottom})
	}
	for r := range rows {
		points = append(points, Point{left, along(bottom, top, r+1, rows+1)})
	}
	return points
}

// Polar returns the place at a distance and a direction from centre. Multiples
// of 90° are exact, so that a circle's top and side places tie exactly.
func Polar(centre Point, radius, angleDeg float64) Point {
	s, c := math.Sincos(Turn(angleDeg) * math.Pi / 180)
	switch Turn(angleDeg) {
	case 0:
		s, c = 0, 1
	case 90:
		s, c = 1, 0
	case 180:
		s, c = 0, -1
	case 270:
		s, c = -1, 0
	}
	return Point{centre.X + radius*c, centre.Y + radius*s}
}
