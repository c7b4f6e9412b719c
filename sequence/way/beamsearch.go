package way

import (
	"cmp"
	"math"
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

	rest  []candidate // used again for each step
	alike []int

	mending
}

// mending is what is known while an order is mended.
type mending struct {
	mended       []int          // for each step the pass that changed it last; 0: none
	over         []float64      // for each step of a stage what it costs by what it passes over
	tight        []bool         // what is worked before the stretch
	left         []int          // sides that are not
	pulls, bends geometry.Point // what is tight sums up to
	tried        []int          // used again for each stretch
}

// beginning is the first steps of an order, each with the one before.
type beginning struct {
	before     *beginning
	place      int // -1: nothing is worked yet
	steps      int
	first      int // the first place that has a direction; -1: none yet
	taken      []bool
	left       []int // sides that are not taken
	pull, bend geometry.Point
	cost       float64
}

// candidate is a place that may come next. Its cost is at least what is known
// until it was looked for those that it passes over, which takes long.
type candidate struct {
	place int
	cost  float64
	whole bool
}

// after is a place that may follow a beginning.
type after struct {
	*beginning
	next int
	cost float64
}

// grow returns the cheapest order through the stages.
func (s *search) grow(stages [][]int) []int {
	n := len(s.layout.at)
	s.rest, s.alike = make([]candidate, 0, n), make([]int, 0, n)
	width := min(widest, max(narrowest, views/n))
	kept := []*beginning{{place: -1, first: -1, taken: make([]bool, n), left: s.sides}}
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

// follow returns the cheapest places that may follow a beginning, of a stage that
// is sorted by distance. Of those that cost alike only the one is left that the
// turn prefers: the others are its images.
//
// A place costs its step and what it puts off: if all others came by distance
// from then on, those nearer than it would come one step later than they could.
func (s *search) follow(b *beginning, stage []int, width int) []after {
	rest := s.candidates(b, stage)
	if b.steps == 0 {
		width = 1 // where to begin is no matter of what follows
	}
	var cheapest []after
	for len(rest) > 0 && len(cheapest) < width {
		least := s.least(b, rest)
		alike, others := s.alike[:0], rest[:0]
		for _, c := range rest {
			if s.atMost(b, &c, least+level) {
				alike = append(alike, c.place)
			} else {
				others = append(others, c)
			}
		}
		cheapest = append(cheapest, after{b, s.pick(b, alike), b.cost + least})
		rest = others
	}
	return cheapest
}

// candidates are the places of a stage that are left.
func (s *search) candidates(b *beginning, stage []int) []candidate {
	rest, putOff := s.rest[:0], 0.0
	for _, i := range stage {
		if b.taken[i] {
			continue
		}
		pull, bend := b.pull.Add(s.objective.at[i]), b.bend.Add(s.square[i])
		step := s.step(i, b.place, b.steps, pull, bend) + s.closing(i, b.taken)
		inTurn := s.outOfTurn(i, b.steps+len(rest))
		rest = append(rest, candidate{place: i, cost: step + putOff - inTurn})
		putOff += s.outOfTurn(i, b.steps+len(rest)) - inTurn
	}
	return rest
}

// least is what the cheapest candidate costs.
func (s *search) least(b *beginning, rest []candidate) float64 {
	least := math.Inf(1)
	for k := range rest {
		if s.atMost(b, &rest[k], least) {
			least = rest[k].cost
		}
	}
	return least
}

// atMost reports whether a candidate costs no more than most.
func (s *search) atMost(b *beginning, c *candidate, most float64) bool {
	if !c.whole && c.cost <= most {
		c.cost += s.passedOver(c.place, b.left, b.taken, b.pull.Add(s.objective.at[c.place]))
		c.whole = true
	}
	return c.cost <= most
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
	b.left = without(slices.Clone(a.left), a.next)
	if b.first < 0 && !s.central(a.next) {
		b.first = a.next
	}
	return b
}

// without takes a place out of a list.
func without(list []int, place int) []int {
	if k := slices.Index(list, place); k >= 0 {
		return slices.Delete(list, k, k+1)
	}
	return list
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
