package geometry

import "math"

// Related gives for each point its relative neighbours (Toussaint 1980): two
// points are neighbours where no third is nearer to both than they are to each
// other. Along an edge these are the next on either side, on a grid those in
// row and column, whatever the pitch.
//
// Of the points that lie within a sixth of a turn as seen from one, only the
// nearest can be its neighbour: it lies nearer to the others than they do to
// the one. Twelfths are looked through, so that rounding cannot lose any.
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

// nearestOfTwelfths gives the nearest point in each twelfth of a turn round one.
func nearestOfTwelfths(points []Point, i int) []int {
	var nearest [12]int
	var least [12]float64
	for t := range nearest {
		nearest[t], least[t] = -1, math.Inf(1)
	}
	for k, p := range points {
		if k == i {
			continue
		}
		d := p.Sub(points[i])
		if t, square := twelfth(d), d.Dot(d); square < least[t] {
			nearest[t], least[t] = k, square
		}
	}
	found := nearest[:0]
	for _, k := range nearest {
		if k >= 0 {
			found = append(found, k)
		}
	}
	return found
}

// twelfth gives the twelfth of a turn in which a direction lies: quarters by the
// signs, thirds of them by the slope.
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

// between says whether some point is nearer to both i and k than they are to
// each other.
func between(points []Point, i, k int) bool {
	p, q := points[i], points[k]
	apart := squareOf(p.Sub(q)) * (1 - 1e-9)
	for m, r := range points {
		if m != i && m != k && squareOf(r.Sub(p)) < apart && squareOf(r.Sub(q)) < apart {
			return true
		}
	}
	return false
}

func squareOf(p Point) float64 { return p.Dot(p) }

const tan60 = 1.7320508075688772
