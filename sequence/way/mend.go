package way

import (
	"math"
	"slices"

	"drawdown/geometry"
)

const (
	// mendReach limits how many steps apart two places may be that are swapped.
	mendReach = 8
	// mendPasses limits the number of passes.
	mendPasses = 3
)

// mend goes through the stretches of each stage. It swaps their ends, or moves
// one end to the other, as long as that makes the order clearly cheaper.
func (s *search) mend(stages [][]int) {
	n := len(s.order)
	s.tight, s.over, s.mended = make([]bool, n), make([]float64, n), make([]int, n)
	from := 0
	for _, stage := range stages {
		to := from + len(stage)
		for pass := 1; pass <= mendPasses && s.mendStage(from, to, pass); pass++ {
		}
		from = to
	}
}

func (s *search) mendStage(from, to, pass int) (better bool) {
	s.loosen()
	for _, i := range s.order[:from] {
		s.tighten(i)
	}
	s.look(from, to)
	for a := from; a < to; a++ {
		for b := a + 1; b < min(to, a+1+mendReach); b++ {
			if a > 0 && s.fresh(a, b, pass) { // the first place is settled
				better = s.mendStretch(a, b, pass) || better
			}
		}
		s.tighten(s.order[a])
	}
	return better
}

// mendStretch swaps the ends of one stretch.
func (s *search) mendStretch(a, b, pass int) (better bool) {
	stretch := s.order[a : b+1]
	now := s.steps(a, stretch, math.Inf(1))
	for k := range stretch {
		now += s.over[a+k]
	}
	for _, change := range []func([]int){swapEnds, firstToEnd, lastToFront} {
		s.tried = append(s.tried[:0], stretch...)
		change(s.tried)
		if cost := s.passing(s.steps(a, s.tried, now-level), s.tried, now-level); cost < now-level {
			copy(stretch, s.tried)
			now, better = cost, true
		}
	}
	if better {
		s.look(a, b+1)
		for k := a; k <= b; k++ {
			s.mended[k] = pass
		}
	}
	return better
}

// look records what each of some steps passes over. All steps before them are
// tight.
func (s *search) look(from, to int) {
	pull, places := s.pulls, s.order[from:to]
	for k, i := range places {
		pull = pull.Add(s.objective.at[i])
		s.over[from+k] = s.passedOver(i, s.left, s.tight, pull)
		s.tight[i] = true
	}
	for _, i := range places {
		s.tight[i] = false
	}
}

// loosen starts again with nothing tight; tighten adds a place.
func (s *search) loosen() {
	clear(s.tight)
	s.left = append(s.left[:0], s.sides...)
	s.pulls, s.bends = geometry.Point{}, geometry.Point{}
}

func (s *search) tighten(i int) {
	s.tight[i] = true
	s.left = without(s.left, i)
	s.pulls, s.bends = s.pulls.Add(s.objective.at[i]), s.bends.Add(s.square[i])
}

// fresh reports whether a stretch, or a step next to it, changed since it was
// last examined.
func (s *search) fresh(a, b, pass int) bool {
	return slices.Max(s.mended[max(0, a-1):min(len(s.mended), b+2)]) >= pass-1
}

// steps is the cost of these places from step a on, and of the step after them,
// without what they pass over. If it reaches most, it returns at least most.
func (s *search) steps(a int, places []int, most float64) float64 {
	cost, last, pull, bend := 0.0, s.order[a-1], s.pulls, s.bends
	for k, i := range places {
		if cost >= most {
			break
		}
		pull, bend = pull.Add(s.objective.at[i]), bend.Add(s.square[i])
		cost += s.step(i, last, a+k, pull, bend) + s.closing(i, s.tight)
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

// passing adds to a cost, as long as it is below most, the cost of what the
// places of a stretch pass over.
func (s *search) passing(cost float64, places []int, most float64) float64 {
	pull := s.pulls
	for _, i := range places {
		if cost >= most {
			break
		}
		pull = pull.Add(s.objective.at[i])
		cost += s.passedOver(i, s.left, s.tight, pull)
		s.tight[i] = true
	}
	for _, i := range places {
		s.tight[i] = false
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
