package way

import (
	"drawdown/geometry"
)

// byPairs works separate flanges by turns, so that none draws the part askew:
// a pair on each, from the middle of the part outwards, each flange in the
// order that it would have by itself.
func (l *layout) byPairs(turn Turn) []int {
	parts := l.seen.Parts
	orders, middles := make([][]int, len(parts)), make([]geometry.Point, len(parts))
	for k, part := range parts {
		points := make([]geometry.Point, len(part))
		for m, i := range part {
			points[m] = l.at[i]
		}
		middles[k] = geometry.Centroid(points)
		for _, m := range Places(points, Auto, turn) {
			orders[k] = append(orders[k], part[m])
		}
	}
	var order []int
	flanges := Places(middles, Auto, turn)
	for len(order) < len(l.at) {
		for _, k := range flanges {
			pair := min(2, len(orders[k]))
			order, orders[k] = append(order, orders[k][:pair]...), orders[k][pair:]
		}
	}
	return order
}
