package way

import (
	"slices"

	"drawdown/geometry"
)

const (
	// mendReach is how many steps apart two places are at the most that a mend
	// changes about.
	mendReach = 8
	// mendPasses ends the mending, should it go on.
	mendPasses = 3
)

// mend goes through the stretches of each stage and changes their ends about,
// or moves one end to the other, while that makes the order cost clearly less.
func (s *search) mend(stages [][]int) {
	s.tight = make([]bool, len(s.order))
	from := 0
	for _, stage := range stages {
		to := from + len(stage)
		for pass := 0; pass < mendPasses && s.mendStage(from, to); pass++ {
		}
		from = to
	}
}

func (s *search) mendStage(from, to int) (better bool) {
	var pull, bend geometry.Point
	clear(s.tight)
	for _, i := range s.order[:from] {
		s.tight[i] = true
		pull, bend = pull.Add(s.objective.at[i]), bend.Add(s.square[i])
	}
	tried := make([]int, 0, mendReach+1)
	for a := from; a < to; a++ {
		if a == 0 { // where the work begins is settled
			s.tight[s.order[0]] = true
			pull, bend = s.objective.at[s.order[0]], s.square[s.order[0]]
			continue
		}
		for b := a + 1; b < min(to, a+1+mendReach); b++ {
			stretch := s.order[a : b+1]
			now := s.stretch(a, stretch, pull, bend)
			for _, change := range []func([]int){swapEnds, firstToEnd, lastToFront} {
				tried = append(tried[:0], stretch...)
				change(tried)
				if cost := s.stretch(a, tried, pull, bend); cost < now-level {
					copy(stretch, tried)
					now, better = cost, true
				}
			}
		}
		s.tight[s.order[a]] = true
		pull, bend = pull.Add(s.objective.at[s.order[a]]), bend.Add(s.square[s.order[a]])
	}
	return better
}

// stretch is what the steps from a on cost with these places, and the step
// after them.
func (s *search) stretch(a int, places []int, pull, bend geometry.Point) float64 {
	cost, last := 0.0, -1
	if a > 0 {
		last = s.order[a-1]
	}
	for k, i := range places {
		pull, bend = pull.Add(s.objective.at[i]), bend.Add(s.square[i])
		cost += s.step(i, last, a+k, pull, bend) + s.unfinished(i, s.tight, pull)
		last, s.tight[i] = i, true
	}
	for _, i := range places {
		s.tight[i] = false
	}
	if end := a + len(places); end < len(s.order) {
		cost += s.succession(last, s.order[end])
	}
	return cost
}

func swapEnds(places []int) {
	last := len(places) - 1
	places[0], places[last] = places[last], places[0]
}

func firstToEnd(places []int) {
	first := places[0]
	copy(places, places[1:])
	places[len(places)-1] = first
}

func lastToFront(places []int) {
	slices.Reverse(places)
	slices.Reverse(places[1:])
}
