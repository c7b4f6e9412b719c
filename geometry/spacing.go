package geometry

import (
	"math"
	"slices"
)

// Spacing gives the spacing of a pattern: the median distance from a point to
// its nearest neighbour (of two middle ones the larger); 0 for fewer than two
// points. All tolerances of drawdown are shares of it.
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
// its own for a lone point.
func nearestNeighbours(points []Point) []int {
	c := newCells(points)
	nearest := make([]int, len(points))
	for i := range points {
		nearest[i] = c.nearest(i)
	}
	return nearest
}
