package geometry

import (
	"math"
	"slices"
)

// Spacing gives the spacing of a pattern: the median distance from a point to
// its nearest neighbour; 0 for fewer than two points. All tolerances of
// drawdown are shares of it.
func Spacing(points []Point) float64 {
	if len(points) < 2 {
		return 0
	}
	nearest := NearestDistances(points)
	slices.Sort(nearest)
	return nearest[len(nearest)/2]
}

// NearestDistances gives for each point the distance to its nearest neighbour
// (infinite for a lone point).
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

// nearestNeighbours gives for each point the index of its nearest neighbour,
// its own for a lone point. The points are swept along the longer side of the
// pattern, which keeps large patterns fast.
func nearestNeighbours(points []Point) []int {
	along := func(i int) float64 { return points[i].X }
	if box := Bounds(points); box.Height() > box.Width() {
		along = func(i int) float64 { return points[i].Y }
	}
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return sign(along(a) - along(b)) })
	nearest := make([]int, len(points))
	for rank, i := range order {
		nearest[i] = i
		best := math.Inf(1)
		look := func(k int) (goOn bool) {
			if math.Abs(along(k)-along(i)) >= best {
				return false
			}
			if d := points[i].Distance(points[k]); d < best {
				nearest[i], best = k, d
			}
			return true
		}
		for k := rank + 1; k < len(order) && look(order[k]); k++ {
		}
		for k := rank - 1; k >= 0 && look(order[k]); k-- {
		}
	}
	return nearest
}
