package way

import (
	"drawdown/geometry"
	"drawdown/geometry/family"
)

// Places orders places by a way that depends on the layout alone (not on cast
// numbers or a list). It returns a permutation of the indices of points.
func Places(points []geometry.Point, by Way, turn Turn) []int {
	return PlacesAs(points, "", by, turn)
}

// PlacesAs does the same for places treated as a family, or as the family
// recognized if as is empty.
func PlacesAs(points []geometry.Point, as family.Family, by Way, turn Turn) []int {
	if len(points) == 0 {
		return nil
	}
	l := layoutAs(points, as)
	return l.given(l.by(by, turn))
}

func (l *layout) by(way Way, turn Turn) []int {
	if way == Auto || way == "" {
		way = For(l.seen.Family)
	}
	turn = turn.For(way)
	switch way {
	case Cross:
		return l.ringwise(turn, paired)
	case Row:
		return l.row(turn)
	case Star:
		return l.star(turn)
	case Four:
		return l.four(turn)
	case Balanced:
		return l.balanced(turn)
	case Circular:
		return l.circular(turn)
	}
	return l.ringwise(turn, once)
}
