package geometry

import (
	"math"
	"slices"
)

// Spacing returns the spacing of a pattern: the median distance from a point to
// its nearest neighbour (the larger of two middle values), or 0 for fewer than
// two points. All tolerances of drawdown are shares of it.
func Spacing(points []Point) float64 {
	if len(points) < 2 {
		return 0
	}
	nearest := NearestDistances(points)
	slices.Sort(nearest)
	return nearest[len(nearest)/2]
}

// NearestDistances returns for each point the distance to its nearest
// neighbour; +Inf for a single point.
func NearestDistances(points []Point) []float64 {
	nearest := make([]float64, len(points))
	for i, k := range nearestNeighbours(points) {
		if k == i {
			nearest[i] = math.Inf(1)
		} else {
			nearest[i] = points[i].Distance(points[k])
		}
	}
	return nearest
}

// nearestNeighbours returns for each point the index of its nearest neighbour;
// its own for a single point. It searches left and right of each point in order
// of x, no further than the nearest found so far.
func nearestNeighbours(points []Point) []int {
	order := Sorted(len(points), func(i int) float64 { return points[i].X })
	nearest := make([]int, len(points))
	for at, i := range order {
		nearest[i] = i
		best := math.Inf(1)
		for _, step := range []int{-1, 1} {
			for k := at + step; k >= 0 && k < len(order); k += step {
				p := points[order[k]]
				if math.Abs(p.X-points[i].X) >= best {
					break
				}
				if d := p.Distance(points[i]); d < best {
					nearest[i], best = order[k], d
				}
			}
		}
	}
	return nearest
}
