package diagram

import (
	"cmp"
	"math"
	"slices"

	"drawdown/render/diagram/space"
	"drawdown/render/scene"
)

// search places texts so that as many as possible stand and none meets another.
//
// Each text has a list of places, in tiers and within those cheap ones first;
// the next tier is added when the text turns out to be in a tight spot. Texts wait in a queue. The first takes a
// place that is free; where there is none, it takes the one from which the
// fewest others must go, and those join the queue. Whoever had to go grows
// heavier and is ejected less readily, so that the search does not run in a
// ring. It is bounded by the number of places looked at, not by a clock: the
// same part is always drawn the same way.
type search struct {
	items []item
	more  func(item, tier int) []placement // the places of a tier
	tiers int
	looks int // left

	grid  space.Cells
	cells [][]int32 // the items that stand in a cell
	seen  []int     // the last query that came across an item
	query int
	hits  []int32 // those in the way, of the last query
	steps int
}

type item struct {
	choices []placement
	tiers   int // how many of the tiers are in choices
	chosen  int // -1 while it stands nowhere
	weight  float64
	failed  int // how often no place was free
	until   int // the step up to which it may not be ejected
}

const nowhere = -1

// stubborn is how many places for each item a search looks at without finding
// room for one more before it gives up.
const stubborn = 150

// gaps between two texts, in millimetres: side by side, and above one another.
const (
	gapAside = 1.0
	gapAbove = 0.3
	gapMixed = 0.5  // where one of them is turned upward
	heldBack = 1000 // the extra weight of an item that has only just found its place
)

func newSearch(box scene.Box, count, tiers, looks int, more func(item, tier int) []placement) *search {
	q := &search{more: more, tiers: tiers, looks: looks, grid: space.NewCells(box, 5), seen: make([]int, count), items: make([]item, count)}
	q.cells = make([][]int32, q.grid.Count())
	for i := range q.items {
		q.items[i] = item{chosen: nowhere, weight: 1}
		q.widen(i)
	}
	return q
}

func (q *search) widen(i int) bool {
	it := &q.items[i]
	if it.tiers == q.tiers {
		return false
	}
	more := q.more(i, it.tiers)
	slices.SortStableFunc(more, func(a, b placement) int { return cmp.Compare(a.cost, b.cost) })
	it.choices = append(it.choices, more...)
	it.tiers++
	return true
}

// begin stands items at the first of their places of a certain kind, where that
// is free.
func (q *search) begin(kind func(p *placement) bool) {
	for i := range q.items {
		choices := q.items[i].choices
		for k := range choices {
			if kind(&choices[k]) && q.inTheWay(int32(i), &choices[k], 0) == 0 {
				q.put(int32(i), k)
				break
			}
		}
	}
}

// run places the items that stand nowhere yet. Those left over are nowhere at the end.
func (q *search) run() {
	var queue []int32
	for i := range q.items {
		if q.items[i].chosen == nowhere {
			queue = append(queue, int32(i))
		}
	}
	slices.SortStableFunc(queue, func(a, b int32) int {
		return cmp.Compare(len(q.items[a].choices), len(q.items[b].choices))
	})
	best, fewest := []int(nil), len(queue)+1
	stale := q.looks
	for len(queue) > 0 && q.looks > 0 {
		i := queue[0]
		queue = append(queue[1:], q.settle(i)...)
		if len(queue) < fewest {
			fewest, stale = len(queue), q.looks-stubborn*len(q.items)
			best = q.chosen(best)
		}
		if q.looks < stale {
			break // it gets no better
		}
	}
	if best != nil {
		q.restore(best)
	}
	q.tidy()
}

// settle finds a place for an item and returns those that must look for
// another.
func (q *search) settle(i int32) (gone []int32) {
	it := &q.items[i]
	q.steps++
	choice, least, from := nowhere, math.Inf(1), 0
	for {
		for k := from; k < len(it.choices); k++ {
			p := &it.choices[k]
			w := q.inTheWay(i, p, least)
			if w == 0 {
				q.put(i, k)
				return nil
			}
			if w += p.cost / 100; w < least {
				choice, least = k, w
			}
		}
		it.failed++
		const patience = 2
		from = len(it.choices)
		if it.failed <= patience*it.tiers && from > 0 || !q.widen(int(i)) {
			break
		}
	}
	if choice == nowhere {
		return nil
	}
	if least > it.weight+0.9 {
		it.weight++ // too many for one; perhaps when it comes round again
		return []int32{i}
	}
	q.inTheWay(i, &it.choices[choice], math.Inf(1))
	gone = slices.Clone(q.hits)
	for _, j := range gone {
		q.items[j].weight++
		q.take(j)
	}
	q.put(i, choice)
	it.until = q.steps + len(gone) + 2
	return gone
}

func (q *search) cheapestFree(i int32, before int) (choice int, ok bool) {
	it := &q.items[i]
	for k := range before {
		if q.inTheWay(i, &it.choices[k], 0) == 0 {
			return k, true
		}
	}
	return nowhere, false
}

// inTheWay returns the weight of the items that a place meets, and leaves them
// in hits; it stops where the weight passes what the caller can use.
func (q *search) inTheWay(i int32, p *placement, most float64) float64 {
	q.looks--
	q.query++
	q.hits = q.hits[:0]
	weight := 0.0
	look := func(cell int) bool {
		for _, j := range q.cells[cell] {
			if j == i || q.seen[j] == q.query {
				continue
			}
			q.seen[j] = q.query
			other := &q.items[j]
			if !collide(p, &other.choices[other.chosen]) {
				continue
			}
			q.hits = append(q.hits, j)
			weight += other.weight
			if q.steps < other.until {
				weight += heldBack
			}
			if weight > most {
				return false
			}
		}
		return true
	}
	if q.grid.InBox(p.box, look) {
		p.everyLine(func(from, to scene.Point) bool { return q.grid.OnLine(from, to, leaderAir, look) })
	}
	return weight
}

// collide reports whether two places cannot both be taken.
func collide(a, b *placement) bool {
	aside, above := gapAside, gapAbove
	switch {
	case a.upward && b.upward:
		aside, above = gapAbove, gapAside
	case a.upward || b.upward:
		aside, above = gapMixed, gapMixed
	}
	return a.box.Left-aside < b.box.Right && b.box.Left-aside < a.box.Right &&
		a.box.Top-above < b.box.Bottom && b.box.Top-above < a.box.Bottom ||
		a.leadsThrough(b.box.Grown(leaderAir)) || b.leadsThrough(a.box.Grown(leaderAir)) || leadersNear(a, b)
}

func (p *placement) leadsThrough(b scene.Box) bool {
	return !p.everyLine(func(from, to scene.Point) bool { return !b.Cut(from, to) })
}

func leadersNear(a, b *placement) bool {
	return !a.everyLine(func(p, q scene.Point) bool {
		return b.everyLine(func(r, s scene.Point) bool { return !scene.LinesNear(p, q, r, s, leaderAir) })
	})
}

func (q *search) put(i int32, choice int) {
	q.items[i].chosen = choice
	q.visit(i, func(cell int) bool {
		q.cells[cell] = append(q.cells[cell], i)
		return true
	})
}

func (q *search) take(i int32) {
	q.visit(i, func(cell int) bool {
		if k := slices.Index(q.cells[cell], i); k >= 0 {
			last := len(q.cells[cell]) - 1
			q.cells[cell][k] = q.cells[cell][last]
			q.cells[cell] = q.cells[cell][:last]
		}
		return true
	})
	q.items[i].chosen = nowhere
}

// visit goes over the cells in which its neighbours must come across an item,
// some of them twice.
func (q *search) visit(i int32, f func(cell int) bool) {
	p := &q.items[i].choices[q.items[i].chosen]
	q.grid.InBox(p.box.Grown(gapAside), f)
	p.everyLine(func(from, to scene.Point) bool { return q.grid.OnLine(from, to, leaderAir, f) })
}

func (q *search) chosen(into []int) []int {
	into = into[:0]
	for i := range q.items {
		into = append(into, q.items[i].chosen)
	}
	return into
}

func (q *search) restore(chosen []int) {
	for c := range q.cells {
		q.cells[c] = q.cells[c][:0]
	}
	for i := range q.items {
		q.items[i].chosen = nowhere
	}
	for i, k := range chosen {
		if k != nowhere {
			q.put(int32(i), k)
		}
	}
}

// tidy moves items to cheaper places that are free, and places any left over
// for which there is room after all.
func (q *search) tidy() {
	const rounds = 3
	for range rounds {
		moved := false
		for i := range q.items {
			it := &q.items[i]
			before := it.chosen
			if before == nowhere {
				before = len(it.choices)
			}
			if k, ok := q.cheapestFree(int32(i), before); ok {
				if it.chosen != nowhere {
					q.take(int32(i))
				}
				q.put(int32(i), k)
				moved = true
			}
		}
		if !moved {
			return
		}
	}
}
