package way

import (
	"slices"

	"drawdown/geometry"
)

// circular goes once around the centre in the direction of the turn. Places on
// one line go from end to end. It is the way of a check pass.
func (l *layout) circular(turn Turn) []int {
	all := geometry.Count(len(l.at))
	if geometry.OneLine(l.at) {
		return l.endToEnd(turn)
	}
	rim := slices.DeleteFunc(slices.Clone(all), l.central)
	return l.roundFrom(all, l.first(rim, turn), turn)
}

// endToEnd goes along a row. If the part does not distinguish its ends, it
// starts as at the top of a circle: from the left for turn right, from the
// right for turn left, and from the top of an upright row.
func (l *layout) endToEnd(turn Turn) []int {
	axis := geometry.LongAxis(l.at)
	order := geometry.Sorted(len(l.at), func(i int) float64 { return l.at[i].Dot(axis) })
	ends := []int{order[0], order[len(order)-1]}
	if l.first(ends, turn.Opposite()) != order[0] {
		slices.Reverse(order)
	}
	return order
}
