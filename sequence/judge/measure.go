package judge

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// The angles are no whole number of steps of any usual circle, so that a hole
// measured off its place decides nothing.
const (
	// insideSpacings is how much further in a place must be to count as further
	// in, in spacings, where no grid tells its rings.
	insideSpacings = 0.25
	// sideDeg is how much narrower than a half circle a run on one side is.
	sideDeg = 3.7
	// quarterDeg is how far from the two before a bolt lies that shares the
	// circle with them.
	quarterDeg = 77
)

// measured is what an order of the places does.
type measured struct {
	Figures
	pullAt    int   // position after which the pull is greatest
	runFrom   int   // position at which the longest run begins
	inward    []int // positions that go back inwards
	beyond    []int // for each of them, the position of the outermost place worked before
	adjacent  []int // positions that follow their neighbour
	notAcross []int // positions that follow one that is not across
}

func (p places) measure(order []int) measured {
	var m measured
	m.pull(p, order)
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

func (p places) neighbours(a, b int) bool {
	return geometry.Neighbours(p.Points[a], p.Points[b], p.spacing)
}

func (m *measured) pull(p places, order []int) {
	var sum geometry.Point
	for k, i := range order {
		sum = sum.Add(p.Points[i].Sub(p.centroid))
		pull := sum.Distance(geometry.Point{}) / math.Max(p.reach, 1e-9)
		if pull > m.Pull+1e-6 {
			m.Pull, m.pullAt = pull, k
		}
		if 3*k < len(order) {
			m.PullEarly = math.Max(m.PullEarly, pull)
		}
	}
}

// run finds the longest stretch on one side. Every part of such a stretch is on
// one side too, so that a window over the order finds it.
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

// central says that a place lies so near the middle that it has no side.
func (p places) central(i int) bool { return p.radius[i] < geometry.CentralShare*p.spacing }

// oneSide says whether all places lie on one side of some line through the
// middle: whether their directions, seen from the last one's, span less than a
// half circle.
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

// inside says whether place i lies further in than another. On a long part,
// where one also works outwards by columns, the ends are no further in than
// their corners.
func (p places) inside(i, other int) bool {
	margin := insideSpacings * p.spacing
	switch {
	case p.ring[i] >= p.ring[other]:
		return false
	case p.Filled():
		return true
	case p.along != nil && p.along[other]-p.along[i] <= margin:
		return false
	}
	return p.radius[other]-p.radius[i] > margin
}

// crosses says whether the last place of an order lies across from the one
// before, or shares the circle with the two before it, as in an order that goes
// round the quarters. On an uneven circle its place in the round counts, too.
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
