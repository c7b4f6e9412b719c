package way

import (
	"slices"

	"drawdown/geometry"
)

// circular goes once round the centre in the sense of the turn; places on one
// line go from end to end. It is the way of a check pass.
func (l *layout) circular(turn Turn) []int {
	all := geometry.Count(len(l.at))
	if geometry.OneLine(l.at) {
		return l.endToEnd(turn)
	}
	rim := slices.DeleteFunc(slices.Clone(all), l.central)
	return l.roundFrom(all, l.first(rim, turn), turn)
}

// endToEnd walks a row. Where the part does not tell its ends apart it goes as
// one goes over the top of a circle: from the left for turn right, from the
// right for turn left; an upright row from its top.
func (l *layout) endToEnd(turn Turn) []int {
	axis := geometry.LongAxis(l.at)
	order := geometry.Sorted(len(l.at), func(i int) float64 { return l.at[i].Dot(axis) })
	ends := []int{order[0], order[len(order)-1]}
	if l.first(ends, turn.Opposite()) != order[0] {
		slices.Reverse(order)
	}
	return order
}
