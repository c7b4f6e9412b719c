package way

import (
	"slices"

	"drawdown/geometry"
)

// level is how far two costs may differ and count as equal. Then the sense of
// the turn decides, not a tenth of a millimetre.
const level = 0.02

// balanced works by the rules as an objective: place by place the one that
// costs least, then the order mended where a change costs less.
func (l *layout) balanced(turn Turn) []int {
	stages := l.stages()
	s := &search{layout: l, turn: turn, objective: newObjective(l.at, l.beside(), stages)}
	for _, stage := range stages {
		s.work(stage)
	}
	s.mend(stages)
	return s.order
}

// stages are the sets of places that are finished one after another: what lies
// inside an edge first, the corners last.
func (l *layout) stages() [][]int {
	last := l.seen.Corners
	var between []int
	for i := range l.at {
		if !slices.Contains(l.seen.Inner, i) && !slices.Contains(last, i) {
			between = append(between, i)
		}
	}
	stages := [][]int{l.seen.Inner, between, last}
	return slices.DeleteFunc(stages, func(stage []int) bool { return len(stage) == 0 })
}

// beside gives the neighbours of each place: those along the edge, and those
// that have no other between.
func (l *layout) beside() [][]int {
	beside := geometry.Related(l.at)
	for k, i := range l.seen.Edge {
		next := l.seen.Edge[(k+1)%len(l.seen.Edge)]
		beside[i], beside[next] = append(beside[i], next), append(beside[next], i)
	}
	return beside
}

// search is an order in the making.
type search struct {
	*layout
	*objective
	turn       Turn
	order      []int
	pull, bend geometry.Point
}

// work goes through one stage.
func (s *search) work(stage []int) {
	rest := slices.Clone(stage)
	for len(rest) > 0 {
		next := s.next(rest)
		s.order = append(s.order, next)
		s.pull, s.bend = s.pull.Add(s.objective.at[next]), s.bend.Add(s.square[next])
		rest = slices.DeleteFunc(rest, func(i int) bool { return i == next })
	}
}

// next picks the place that costs least.
func (s *search) next(rest []int) int {
	k, last := len(s.order), -1
	if k > 0 {
		last = s.order[k-1]
	}
	cost := make([]float64, len(rest))
	for m, i := range rest {
		cost[m] = s.step(i, last, k, s.pull.Add(s.objective.at[i]), s.bend.Add(s.square[i]))
	}
	least := slices.Min(cost)
	var alike []int
	for m, i := range rest {
		if cost[m] <= least+level {
			alike = append(alike, i)
		}
	}
	return s.pick(alike)
}

// pick chooses among places that cost alike: to begin with the first of them,
// then the next in the sense of the turn from where the work began.
func (s *search) pick(places []int) int {
	if len(s.order) == 0 || len(places) == 1 {
		return s.first(places, s.turn)
	}
	from := 0
	for from < len(s.order)-1 && s.central(s.order[from]) {
		from++
	}
	if s.central(s.order[from]) {
		return s.first(places, s.turn)
	}
	best, bestDeg := -1, 0.0
	for _, i := range places {
		if deg := s.turned(i, s.angle[s.order[from]], s.turn); best < 0 || deg < bestDeg {
			best, bestDeg = i, deg
		}
	}
	return best
}
