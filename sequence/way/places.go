package way

import "drawdown/geometry"

// Places orders bare places by a way that looks at the layout alone (not by
// cast number or list). It gives a permutation of the indices of points.
func Places(points []geometry.Point, way Way, turn Turn) []int {
	if len(points) == 0 {
		return nil
	}
	l := newLayout(points)
	order := l.by(way, turn)
	for k, i := range order {
		order[k] = l.listed[i]
	}
	return order
}

func (l *layout) by(way Way, turn Turn) []int {
	if way == Auto || way == "" {
		way = l.auto()
	}
	turn = turn.For(way)
	switch way {
	case Cross:
		return l.cross(turn)
	case Row:
		return l.row(turn)
	case Star:
		return l.star(turn)
	case Circular:
		return l.circular(turn)
	}
	return l.spiral(turn)
}

// Settled gives the way that Auto stands for with these places.
func Settled(points []geometry.Point, way Way) Way {
	if (way == Auto || way == "") && len(points) > 0 {
		return newLayout(points).auto()
	}
	return way
}
