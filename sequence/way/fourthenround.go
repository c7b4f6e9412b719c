package way

import (
	"slices"

	"drawdown/geometry"
)

// fewestInRound is the smallest round that has places across and between.
const fewestInRound = 6

// four tightens four places crosswise, a quarter apart, and then goes once
// round all others: an alternative pattern of ASME PCC-1, appendix F (value
// from memory). It does so on each circle, or once along the edge. A row and a
// round of few places keep the order of a row and of a star.
func (l *layout) four(turn Turn) (order []int) {
	if geometry.OneLine(l.at) {
		return l.row(turn.Opposite())
	}
	rounds := l.seen.Rings
	if rounds == nil {
		rounds = [][]int{geometry.Count(len(l.at))}
	}
	for _, ring := range rounds {
		rim := slices.DeleteFunc(slices.Clone(ring), l.central)
		if len(rim) == 0 {
			order = append(order, ring...)
			continue
		}
		round := l.roundFrom(ring, l.first(rim, turn), turn)
		numbers := starPlaces(len(round))
		if len(round) >= fewestInRound {
			numbers = fourThenRound(len(round))
		}
		order = append(order, geometry.Picked(round, numbers)...)
	}
	return order
}

func fourThenRound(n int) []int {
	order := []int{0, n / 2, n / 4, n/4 + n/2}
	for place := range n {
		if !slices.Contains(order[:4], place) {
			order = append(order, place)
		}
	}
	return order
}
