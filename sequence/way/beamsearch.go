package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
)

const (
	// level is how far two costs may differ and count as equal. Then the sense
	// of the turn decides, not a tenth of a millimetre.
	level = 0.02
	// widest and narrowest are how many beginnings of an order are kept in view:
	// more where places are few, since there all of it is soon done.
	widest, narrowest = 4, 1
	// views is how many beginnings and places are weighed for each step, at
	// about the most.
	views = 160
)

// search looks for the order that costs least: step by step it keeps the
// cheapest beginnings (a beam search), then mends the best.
type search struct {
	*layout
	*objective
	turn  Turn
	order []int

	rest, alike []int // used again for each step
	cost        []float64
	tight       []bool // while mending: what is worked before the stretch
}

// beginning is the first steps of an order, each with the one before.
type beginning struct {
	before     *beginning
	place      int // -1: nothing is worked yet
	steps      int
	first      int // the first place that has a direction; -1: none yet
	taken      []bool
	pull, bend geometry.Point
	cost       float64
}

// after is a place that may follow a beginning.
type after struct {
	*beginning
	next int
	cost float64
}

// grow gives the cheapest order through the stages.
func (s *search) grow(stages [][]int) []int {
	n := len(s.layout.at)
	s.rest, s.alike, s.cost = make([]int, 0, n), make([]int, 0, n), make([]float64, 0, n)
	width := min(widest, max(narrowest, views/n))
	kept := []*beginning{{place: -1, first: -1, taken: make([]bool, n)}}
	for _, stage := range stages {
		stage = s.byDistance(stage)
		for range stage {
			var all []after
			for _, b := range kept {
				all = append(all, s.follow(b, stage, width)...)
			}
			slices.SortStableFunc(all, func(a, b after) int { return cmp.Compare(a.cost, b.cost) })
			kept = kept[:0]
			for _, a := range all[:min(width, len(all))] {
				kept = append(kept, s.extend(a))
			}
		}
	}
	var order []int
	for b := kept[0]; b.before != nil; b = b.before {
		order = append(order, b.place)
	}
	slices.Reverse(order)
	return order
}

// follow gives the cheapest places that may follow a beginning, of a stage that
// is sorted by distance. Of those that cost alike only the one is left that the
// turn prefers: the others are its images.
//
// A place costs its step and what it puts off: if all others came by distance
// from then on, those nearer than it would come one step later than they could.
func (s *search) follow(b *beginning, stage []int, width int) []after {
	rest, cost := s.rest[:0], s.cost[:0]
	putOff := 0.0
	for _, i := range stage {
		if b.taken[i] {
			continue
		}
		pull, bend := b.pull.Add(s.objective.at[i]), b.bend.Add(s.square[i])
		step := s.step(i, b.place, b.steps, pull, bend) + s.unfinished(i, b.taken, pull)
		inTurn := s.outOfTurn(i, b.steps+len(rest))
		cost = append(cost, step+putOff-inTurn)
		putOff += s.outOfTurn(i, b.steps+len(rest)+1) - inTurn
		rest = append(rest, i)
	}
	if b.steps == 0 {
		width = 1 // where to begin is no matter of what follows
	}
	var cheapest []after
	for len(rest) > 0 && len(cheapest) < width {
		least, left := slices.Min(cost), 0
		alike := s.alike[:0]
		for k, i := range rest {
			if cost[k] <= least+level {
				alike = append(alike, i)
				continue
			}
			rest[left], cost[left] = i, cost[k]
			left++
		}
		cheapest = append(cheapest, after{b, s.pick(b, alike), b.cost + least})
		rest, cost = rest[:left], cost[:left]
	}
	return cheapest
}

// byDistance sorts places by their distance from the middle.
func (s *search) byDistance(places []int) []int {
	sorted := slices.Clone(places)
	slices.SortStableFunc(sorted, func(a, b int) int { return cmp.Compare(s.far[a], s.far[b]) })
	return sorted
}

func (s *search) extend(a after) *beginning {
	b := &beginning{
		before: a.beginning, place: a.next, steps: a.steps + 1, first: a.first, taken: slices.Clone(a.taken),
		pull: a.pull.Add(s.objective.at[a.next]), bend: a.bend.Add(s.square[a.next]), cost: a.cost,
	}
	b.taken[a.next] = true
	if b.first < 0 && !s.central(a.next) {
		b.first = a.next
	}
	return b
}

// pick chooses among places that cost alike: to begin with the first of them,
// then the next in the sense of the turn from where the work began.
func (s *search) pick(b *beginning, alike []int) int {
	if len(alike) == 1 {
		return alike[0]
	}
	if b.first < 0 {
		return s.layout.first(alike, s.turn)
	}
	best, bestDeg := -1, 0.0
	for _, i := range alike {
		if deg := s.turned(i, s.angle[b.first], s.turn); best < 0 || deg < bestDeg {
			best, bestDeg = i, deg
		}
	}
	return best
}
