package geometry

import "math"

// EvenPlaces assigns directions to the even places of a circle. The directions
// are in degrees, ascending from 0. The circle has len(deg) places, or a few
// more if bolts are missing. It returns nil if the directions do not fit.
func EvenPlaces(deg []float64) (places []int, count int) {
	n := len(deg)
	for count = n; count <= n+n/4; count++ {
		if places = placesAmong(deg, count); places != nil {
			return places, count
		}
	}
	return nil, n
}

// placesAmong assigns the directions to count even places. The phase is fitted
// to all directions together, so that the result does not depend on which one
// comes first.
func placesAmong(deg []float64, count int) []int {
	step := 360 / float64(count)
	var sum Point
	for _, d := range deg {
		sum = sum.Add(Polar(Point{}, 1, d/step*360))
	}
	shift := math.Atan2(sum.Y, sum.X) / (2 * math.Pi)
	places := make([]int, len(deg))
	for k, d := range deg {
		exact := d/step - shift
		places[k] = int(math.Round(exact))
		tooFar := math.Abs(exact-math.Round(exact)) > 0.2
		if tooFar || (k > 0 && places[k] <= places[k-1]) || places[k]-places[0] >= count {
			return nil
		}
	}
	for k := len(places) - 1; k >= 0; k-- {
		places[k] -= places[0]
	}
	return places
}

// EvenCircle moves points that are nearly evenly spaced on one circle to their
// exact places. count is the number of places of the circle. It returns nil if
// a point is off by more than share of the spacing.
func EvenCircle(points []Point, share float64) (even []Point, count int) {
	centre := Enclose(points).Centre
	if off := offCircle(points, centre); len(points) < 3 || off > max(CircleShare, 2*share)*Spacing(points) {
		return nil, 0
	}
	angle := func(i int) float64 { return points[i].AngleFrom(centre) }
	order := Sorted(len(points), angle)
	deg := Mapped(order, func(i int) float64 { return angle(i) - angle(order[0]) })
	places, count := EvenPlaces(deg)
	if places == nil {
		return nil, 0
	}
	even, slack := fitCircle(points, order, places, count), share*Spacing(points)
	for i, p := range points {
		if p.Distance(even[i]) > slack {
			return nil, 0
		}
	}
	return even, count
}

// fitCircle fits even places to the points by least squares: centre, radius and
// direction of the first place. Place k is c + w·z with z = e^(2πik/n). The
// sums below solve for the complex numbers c and w.
func fitCircle(points []Point, order, places []int, count int) []Point {
	n := float64(len(points))
	spoke := make([]Point, len(points))
	for k, i := range order {
		spoke[i] = Polar(Point{}, 1, 360*float64(places[k])/float64(count))
	}
	meanP, meanZ := Centroid(points), Centroid(spoke)
	var re, im, squares float64
	for i := range points {
		p, z := points[i].Sub(meanP), spoke[i].Sub(meanZ)
		re += p.X*z.X + p.Y*z.Y
		im += p.Y*z.X - p.X*z.Y
		squares += z.X*z.X + z.Y*z.Y
	}
	if squares < 1e-9*n {
		return points
	}
	w := Point{re / squares, im / squares}
	times := func(z Point) Point { return Point{w.X*z.X - w.Y*z.Y, w.X*z.Y + w.Y*z.X} }
	c := meanP.Sub(times(meanZ))
	return Mapped(spoke, func(z Point) Point { return c.Add(times(z)) })
}
