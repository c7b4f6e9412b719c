package judge

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// measured holds the figures of an order.
type measured struct {
	Figures
	pullAt    int     // position with the greatest pull
	saddleAt  int     // position with the greatest bending
	outwards  float64 // see way.Weighed
	runFrom   int     // start of the longest run
	inward    []int   // positions of steps back inwards
	beyond    []int   // for each of them, the position of the outermost place tightened before
	adjacent  []int   // positions right after their neighbour
	notAcross []int   // positions after one that is not across
}

func (p places) measure(order []int) measured {
	var m measured
	m.weigh(p, order)
	m.run(p, order)
	m.inwards(p, order)
	for k := 1; k < len(order); k++ {
		a, b := order[k-1], order[k]
		m.TravelMm += p.given[a].Distance(p.given[b])
		if p.neighbours(a, b) {
			m.adjacent = append(m.adjacent, k)
		}
		if !p.crosses(order[:k+1]) {
			m.notAcross = append(m.notAcross, k)
		}
	}
	m.Neighbours = len(m.adjacent)
	return m
}

// neighbours reports whether two places are next to each other: along the edge
// if there is one.
func (p places) neighbours(a, b int) bool {
	if x, y := p.along[a], p.along[b]; x.of > 0 && y.of > 0 {
		apart := (x.number - y.number + x.of) % x.of
		return x.edge == y.edge && (apart == 1 || apart == x.of-1)
	}
	if len(p.seen.Edge) > 0 {
		return false // inside an edge there is no sequence
	}
	return geometry.Neighbours(p.Points[a], p.Points[b], p.spacing)
}

// weigh calculates the figures of the objective.
func (m *measured) weigh(p places, order []int) {
	w := way.Weigh(p.Points, order)
	m.outwards = w.Outwards
	for k, pull := range w.Pull {
		if pull > m.Pull+1e-6 {
			m.Pull, m.pullAt = pull, k
		}
		if 3*k < len(order) {
			m.PullEarly = math.Max(m.PullEarly, pull)
		}
		if w.Saddle[k] > m.Saddle+1e-6 {
			m.Saddle, m.saddleAt = w.Saddle[k], k
		}
	}
}

// run finds the longest stretch on one side. Every part of such a stretch is on
// one side too, so a sliding window over the order finds it.
func (m *measured) run(p places, order []int) {
	from := 0
	for k, i := range order {
		if p.central(i) {
			from = k + 1
			continue
		}
		for !p.oneSide(order[from : k+1]) {
			from++
		}
		if k+1-from > m.Run {
			m.Run, m.runFrom = k+1-from, from
		}
	}
}

// central reports whether a place is too close to the middle to have a side.
func (p places) central(i int) bool { return p.radius[i] < geometry.CentralShare*p.spacing }

// oneSide reports whether all places are on one side of some line through the
// middle: their directions, measured from that of the last one, span less than
// a half circle.
func (p places) oneSide(units []int) bool {
	last := p.deg[units[len(units)-1]]
	low, high := 0.0, 0.0
	for _, i := range units {
		off := p.deg[i] - last
		if off > 180 {
			off -= 360
		} else if off < -180 {
			off += 360
		}
		low, high = min(low, off), max(high, off)
	}
	return high-low < 180-sideDeg
}

func (m *measured) inwards(p places, order []int) {
	outermost := 0
	for k, i := range order {
		switch far := order[outermost]; {
		case p.inside(i, far):
			m.inward, m.beyond = append(m.inward, k), append(m.beyond, outermost)
		case p.ring[i] > p.ring[far]:
			outermost = k
		}
	}
	m.Inwards = len(m.inward)
}

// inside reports whether place i is further in than another. On a long part,
// which may also be tightened outwards by columns, the places at the ends are
// not further in than the corners.
func (p places) inside(i, other int) bool {
	margin := insideSpacings * p.spacing
	switch {
	case p.ring[i] >= p.ring[other]:
		return false
	case p.narrow() && p.length != nil && p.length[other]-p.length[i] <= margin:
		return false
	case p.seen.Family == family.Grid || p.seen.Family == family.Row || p.seen.Family == family.Circles:
		return true
	case p.length != nil && p.length[other]-p.length[i] <= margin:
		return false
	}
	return p.radius[other]-p.radius[i] > margin
}

// narrow reports whether a grid has so few rows that tightening by columns is
// usual too.
func (p places) narrow() bool {
	return p.seen.Family == family.Grid && min(p.Columns, p.Rows) <= mostNarrow
}

// crosses reports whether the last place of an order is across from the one
// before, or shares the circle with the two before it, as in an order by
// quarters. On an uneven circle its number along the circle counts too.
func (p places) crosses(order []int) bool {
	return crossesBy(p.deg, order) || crossesBy(p.turn, order)
}

func crossesBy(deg []float64, order []int) bool {
	last := order[len(order)-1]
	before := order[max(0, len(order)-3) : len(order)-1]
	if geometry.Across(deg[last], deg[before[len(before)-1]]) {
		return true
	}
	return !slices.ContainsFunc(before, func(i int) bool { return geometry.Apart(deg[last], deg[i]) < quarterDeg })
}
