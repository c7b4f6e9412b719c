package geometry

import (
	"math"
	"slices"
)

// Related returns the relative neighbours of each point (Toussaint 1980): two
// points are neighbours if no third point is closer to both than they are to
// each other. Along an edge these are the next points on either side, on a grid
// those in the same row and column, whatever the pitch.
//
// Within 60° as seen from a point, only the nearest point can be its neighbour,
// because it is closer to the others there than they are to the first point.
// The search uses sectors of 30°, so that rounding cannot lose any.
func Related(points []Point) [][]int {
	related := make([][]int, len(points))
	for i := range points {
		for _, k := range nearestOfTwelfths(points, i) {
			if k > i && !between(points, i, k) {
				related[i], related[k] = append(related[i], k), append(related[k], i)
			}
		}
	}
	return related
}

// nearestOfTwelfths returns the nearest point in each sector of 30° around a
// point.
func nearestOfTwelfths(points []Point, i int) []int {
	nearest := slices.Repeat([]int{-1}, 12)
	least := slices.Repeat([]float64{math.Inf(1)}, 12)
	for k, p := range points {
		if k == i {
			continue
		}
		d := p.Sub(points[i])
		if t, square := twelfth(d), d.Dot(d); square < least[t] {
			nearest[t], least[t] = k, square
		}
	}
	return slices.DeleteFunc(nearest, func(k int) bool { return k < 0 })
}

// twelfth returns the 30° sector of a direction: the quadrant from the signs,
// its third from the slope.
func twelfth(d Point) int {
	quarter, x, y := 0, d.X, d.Y
	switch {
	case x > 0 && y >= 0:
	case x <= 0 && y > 0:
		quarter, x, y = 1, y, -x
	case x < 0:
		quarter, x, y = 2, -x, -y
	default:
		quarter, x, y = 3, -y, x
	}
	switch {
	case y*tan60 < x:
		return 3 * quarter
	case y < x*tan60:
		return 3*quarter + 1
	}
	return 3*quarter + 2
}

// between reports whether some point is closer to both i and k than they are to
// each other.
func between(points []Point, i, k int) bool {
	p, q := points[i], points[k]
	square := func(d Point) float64 { return d.Dot(d) }
	apart := square(p.Sub(q)) * (1 - 1e-9)
	for m, r := range points {
		if m != i && m != k && square(r.Sub(p)) < apart && square(r.Sub(q)) < apart {
			return true
		}
	}
	return false
}

const tan60 = 1.7320508075688772
