package diagram

import (
	"cmp"
	"math"
	"slices"

	"drawdown/render/diagram/space"
	"drawdown/render/scene"
)

// search places as many texts as possible without overlaps.
//
// Each text has a list of placements in tiers, the cheap ones first in each.
// The next tier is added when a text does not find a place. Texts wait in a
// queue. The first takes a free placement. If there is none, it takes the one
// that displaces the least weight of others, and those join the queue. A
// displaced text gains weight and is less easily displaced again, so that the
// search does not loop. The limit is the number of placements looked at, not a
// clock: the same part always gives the same drawing.
type search struct {
	items []item
	more  func(item, tier int) []placement // the placements of a tier
	tiers int
	looks int // left

	grid  space.Cells
	cells [][]int32 // the items in each cell
	seen  []int     // the last query that met each item
	query int
	hits  []int32 // items in the way in the last query
	steps int
}

type item struct {
	choices []placement
	tiers   int // number of tiers in choices
	chosen  int // −1 while it has no place
	weight  float64
	failed  int // how often no place was free
	until   int // not displaced up to this step
}

const nowhere = -1

// stubborn is the number of placements per item that a search looks at without
// progress before it stops.
const stubborn = 150

// gaps between two texts, in millimetres: side by side, and above one another.
const (
	gapAside = 1.0
	gapAbove = 0.3
	gapMixed = 0.5  // if one of them is turned upward
	heldBack = 1000 // extra weight of an item that has just found its place
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

// begin puts items at their first free placement of a certain kind.
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

// run places the items that have no place yet. Those that do not fit keep none.
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
			break // no more progress
		}
	}
	if best != nil {
		q.restore(best)
	}
	q.tidy()
}

// settle finds a place for an item and returns the items that it displaced.
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
		it.weight++ // too heavy for one item; it may work on the next turn
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

// inTheWay returns the weight of the items that a placement overlaps, and
// stores them in hits. It stops when the weight exceeds most.
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

// collide reports whether two placements exclude each other.
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

// visit calls f for the cells in which neighbours must find an item, some of
// them twice.
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

// tidy moves items to cheaper free placements, and places any leftover items
// that fit now.
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
