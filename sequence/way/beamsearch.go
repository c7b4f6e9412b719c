package way

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

const (
	// level is how much two costs may differ and count as equal. Then the turn
	// decides, not a tenth of a millimetre.
	level = 0.02
	// widest and narrowest limit how many beginnings of an order are kept: more
	// if there are few places, because the search is then quick.
	widest, narrowest = 4, 1
	// views is roughly how many combinations of beginnings and places are
	// weighed for each step.
	views = 160
)

// search looks for the order with the least cost. It keeps the cheapest
// beginnings at each step (a beam search), then improves the best order
// locally.
type search struct {
	*layout
	*objective
	turn  Turn
	order []int

	rest  []candidate // reused for each step
	alike []int

	mending
}

// mending is the state while an order is improved.
type mending struct {
	mended       []int          // for each step the last pass that changed it; 0 for none
	over         []float64      // for each step of a stage, the cost of what it passes over
	tight        []bool         // what comes before the stretch
	left         []int          // sides that are not tight
	pulls, bends geometry.Point // sums over what is tight
	tried        []int          // reused for each stretch
}

// beginning is the first steps of an order, linked to the step before.
type beginning struct {
	before     *beginning
	place      int // −1: no place yet
	steps      int
	first      int // the first place with a direction; −1: none yet
	taken      []bool
	left       []int // sides that are not taken
	pull, bend geometry.Point
	cost       float64
}

// candidate is a place that may come next. Its cost is a lower bound until the
// places that it passes over are included, which is slow.
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

// follow returns the cheapest places that may follow a beginning, from a stage
// sorted by distance. Of places with equal cost it keeps the one that the turn
// prefers: the others are its images.
//
// The cost of a place includes its step and the delay of others: if all others
// came by distance from then on, those nearer than it would come one step later
// than they could.
func (s *search) follow(b *beginning, stage []int, width int) []after {
	rest := s.candidates(b, stage)
	if b.steps == 0 {
		width = 1 // the first place does not affect what follows
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

// candidates are the remaining places of a stage.
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

// least is the cost of the cheapest candidate.
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

// pick chooses among places with equal cost: at the start the first of them,
// later the next in the direction of the turn from where the order began.
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
