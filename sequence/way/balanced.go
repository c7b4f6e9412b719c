package way

import (
	"slices"

	"drawdown/geometry"
)

// balanced works by the rules as an objective, and separate flanges by turns.
func (l *layout) balanced(turn Turn) []int {
	if len(l.seen.Parts) > 1 {
		return l.byPairs(turn)
	}
	stages := l.stages()
	s := &search{layout: l, turn: turn, objective: newObjective(l.at, l.beside(), stages)}
	s.order = s.grow(stages)
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

// beside gives the neighbours of each place: along an edge the next ones,
// elsewhere those that have no other between. Across a narrow part two may have
// none between and are no neighbours for that.
func (l *layout) beside() [][]int {
	onEdge := make([]bool, len(l.at))
	for _, i := range l.seen.Edge {
		onEdge[i] = true
	}
	beside := geometry.Related(l.at)
	for i := range beside {
		beside[i] = slices.DeleteFunc(beside[i], func(k int) bool {
			return onEdge[i] && onEdge[k]
		})
	}
	for k, i := range l.seen.Edge {
		next := l.seen.Edge[(k+1)%len(l.seen.Edge)]
		beside[i], beside[next] = append(beside[i], next), append(beside[next], i)
	}
	return beside
}
