package way

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// ringwise goes ring by ring from the centre outwards. It goes around each ring
// in the direction of the turn, starting with the place next after the last
// one, so that the path never doubles back.
func (l *layout) ringwise(turn Turn, within func(l *layout, round []int) []int) []int {
	if len(l.Gaps) > 0 && l.tied == nil {
		return l.withGaps(func(whole *layout) []int { return whole.ringwise(turn, within) })
	}
	var order []int
	for _, ring := range l.Rings(l.centre) {
		last := -1
		if len(order) > 0 {
			last = order[len(order)-1]
		}
		order = append(order, within(l, l.round(ring, last, turn))...)
	}
	return order
}

// withGaps orders a grid as if no fastener were missing and then removes the
// gaps, so that a missing one does not affect the others.
func (l *layout) withGaps(by func(whole *layout) []int) []int {
	whole := newLayout(slices.Concat(l.at, l.Gaps))
	return slices.DeleteFunc(whole.given(by(whole)), func(i int) bool { return i >= len(l.at) })
}

// round lists a ring in the direction of the turn. It starts after the
// direction of the last place. If there is none, or it has no direction, it
// starts with the first of the ring.
func (l *layout) round(ring []int, last int, turn Turn) []int {
	if last < 0 || l.central(last) {
		return l.roundFrom(ring, l.first(ring, turn), turn)
	}
	// A place on the same spoke as the last one is a neighbour: it comes last.
	return l.byTurn(ring, func(i int) float64 {
		deg := l.turned(i, l.angle[last], turn)
		if l.onSpoke(i, deg) {
			return 360
		}
		return deg
	})
}

// roundFrom lists a ring in the direction of the turn, starting with start.
func (l *layout) roundFrom(ring []int, start int, turn Turn) []int {
	rest := slices.DeleteFunc(slices.Clone(ring), func(i int) bool { return i == start })
	return append([]int{start}, l.byTurn(rest, func(i int) float64 {
		deg := l.turned(i, l.angle[start], turn)
		if l.central(i) || l.onSpoke(i, deg) {
			return 0
		}
		return deg
	})...)
}

// byTurn sorts places by angle, those on one spoke from the centre outwards.
func (l *layout) byTurn(places []int, turnedDeg func(i int) float64) []int {
	order := slices.Clone(places)
	deg := make(map[int]float64, len(order))
	for _, i := range order {
		deg[i] = turnedDeg(i)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(deg[a], deg[b]) })
	begin := 0
	for k := 1; k <= len(order); k++ {
		if k < len(order) && l.onSpoke(order[k], deg[order[k]]-deg[order[k-1]]) {
			continue
		}
		slices.SortStableFunc(order[begin:k], func(a, b int) int { return cmp.Compare(l.radius[a], l.radius[b]) })
		begin = k
	}
	return order
}

// onSpoke reports whether place i, at an angle of deg from a spoke, is still on
// it.
func (l *layout) onSpoke(i int, deg float64) bool {
	beside := math.Min(deg, 360-deg)
	return beside*math.Pi/180*l.radius[i] <= l.slack
}

// once goes around a ring as it is.
func once(_ *layout, round []int) []int { return round }

// paired goes around a ring and follows each place by the one across.
func paired(l *layout, round []int) []int {
	var order []int
	for len(round) > 0 {
		here := round[0]
		order, round = append(order, here), round[1:]
		if k := l.across(here, round); k >= 0 {
			order = append(order, round[k])
			round = slices.Delete(slices.Clone(round), k, k+1)
		}
	}
	return order
}

// across finds in the rest of a ring the place most nearly opposite; ties go in
// the direction of the turn. It returns -1 if none is opposite.
func (l *layout) across(here int, rest []int) int {
	best, bestOff := -1, 180-geometry.AcrossDeg
	for k, i := range rest {
		off := 180 - geometry.Apart(l.angle[i], l.angle[here])
		level := l.slack / math.Max(l.radius[i], l.slack) * 180 / math.Pi
		if off < bestOff-level || (best < 0 && off < bestOff) {
			best, bestOff = k, off
		}
	}
	return best
}
