package way

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// balanced orders by the rules as an objective, and alternates between separate
// flanges.
func (l *layout) balanced(turn Turn) []int {
	if len(l.seen.Parts) > 1 {
		return l.byPairs(turn)
	}
	stages := l.stages()
	s := &search{layout: l, turn: turn, objective: newObjective(l.at, l.seen.Edge, l.beside(), stages)}
	s.order = s.grow(stages)
	s.mend(stages)
	return s.order
}

// byPairs alternates between separate flanges, so that none pulls the part
// askew: a pair on each, from the middle of the part outwards. Within a flange
// it keeps the order that the flange would have alone.
func (l *layout) byPairs(turn Turn) []int {
	parts := l.seen.Parts
	orders, middles := make([][]int, len(parts)), make([]geometry.Point, len(parts))
	for k, part := range parts {
		points := geometry.Picked(l.at, part)
		middles[k] = geometry.Centroid(points)
		flange := newLayout(points)
		flange.tied = func(places []int) []int { return l.tiedIn(part, flange.listed, places) }
		orders[k] = geometry.Picked(part, flange.given(flange.by(Auto, turn)))
	}
	all := newLayout(middles)
	all.tied = func(flanges []int) []int { return l.tiedFlanges(all.listed, flanges) }
	flanges := all.given(all.by(Auto, turn))
	var order []int
	for len(order) < len(l.at) {
		for _, k := range flanges {
			pair := min(2, len(orders[k]))
			order, orders[k] = append(order, orders[k][:pair]...), orders[k][pair:]
		}
	}
	return order
}

// tiedIn keeps, of places of a flange that tie there, those that the part as a
// whole prefers: first what is alone on its side of the part, then what is
// nearest to the middle.
func (l *layout) tiedIn(part, listed, places []int) []int {
	at := func(i int) int { return part[listed[i]] }
	best := l.tiedFor(l.furthestAside(geometry.Mapped(places, at)))
	return slices.DeleteFunc(slices.Clone(places), func(i int) bool { return !slices.Contains(best, at(i)) })
}

// furthestAside keeps the places furthest from the line along the part.
func (l *layout) furthestAside(places []int) []int {
	along, middle := geometry.LongAxis(l.at), geometry.Centroid(l.at)
	aside := func(i int) float64 {
		d := l.at[i].Sub(middle)
		return math.Abs(d.X*along.Y - d.Y*along.X)
	}
	most := 0.0
	for _, i := range places {
		most = max(most, aside(i))
	}
	return slices.DeleteFunc(slices.Clone(places), func(i int) bool { return aside(i) < most-l.slack })
}

// tiedFlanges keeps, of flanges equally near to the middle, the one with the
// most places, then the one whose places are furthest apart, and those that are
// its images.
func (l *layout) tiedFlanges(listed, flanges []int) []int {
	part := func(k int) []int { return l.seen.Parts[listed[k]] }
	largest := slices.MaxFunc(flanges, func(a, b int) int {
		return cmp.Or(cmp.Compare(len(part(a)), len(part(b))), cmp.Compare(l.spread(part(a)), l.spread(part(b))))
	})
	image := func(k int) bool {
		return len(part(k)) == len(part(largest)) && !slices.ContainsFunc(part(k), func(i int) bool {
			return !slices.ContainsFunc(part(largest), func(j int) bool {
				return math.Abs(l.radius[i]-l.radius[j]) <= l.slack && l.alike(i, j)
			})
		})
	}
	return slices.DeleteFunc(slices.Clone(flanges), func(k int) bool { return !image(k) })
}

// spread adds up the distances of places from their middle.
func (l *layout) spread(places []int) (sum float64) {
	points := geometry.Picked(l.at, places)
	middle := geometry.Centroid(points)
	for _, p := range points {
		sum += p.Distance(middle)
	}
	return sum
}

// stages are the sets of places that are finished one after another. What is
// inside an edge comes first, unless it pulls the part to one side; the corners
// come last, and the ends of arms just before them.
func (l *layout) stages() [][]int {
	first, last := l.seen.Inner, l.seen.Corners
	if l.pull(first) > 1 {
		first = nil
	}
	var ends, between []int
	if len(last) == 0 {
		ends, last = l.arms()
	}
	apart := slices.Concat(first, ends, last)
	for i := range l.at {
		if !slices.Contains(apart, i) {
			between = append(between, i)
		}
	}
	stages := [][]int{first, between, ends, last}
	return slices.DeleteFunc(stages, func(stage []int) bool { return len(stage) == 0 })
}

// pull is how far places pull the part to one side, in fasteners at the edge.
func (l *layout) pull(places []int) float64 {
	centre := geometry.Centroid(l.at)
	var sum geometry.Point
	for _, i := range places {
		sum = sum.Add(l.at[i].Sub(centre))
	}
	return sum.Distance(geometry.Point{}) / reachFrom(centre, l.at)
}

// reachFrom returns the distance to the farthest place, or a tiny value if
// there is none.
func reachFrom(centre geometry.Point, places []geometry.Point) float64 {
	reach := 1e-9
	for _, p := range places {
		reach = max(reach, p.Distance(centre))
	}
	return reach
}

// beside returns the neighbours of each place: the adjacent ones along an edge,
// elsewhere those with no other place between. On a narrow part, opposite
// places with none between them are not neighbours. Nor are an inner place and
// one of the edge, since that step is the way outwards. If an edge folds, it
// alternates between two rows, so adjacent places of a row are neighbours too.
func (l *layout) beside() [][]int {
	onEdge := make([]bool, len(l.at))
	for _, i := range l.seen.Edge {
		onEdge[i] = true
	}
	beside := make([][]int, len(l.at))
	if len(l.seen.Edge) < len(l.at) {
		beside = geometry.Related(l.at)
	}
	for i := range beside {
		beside[i] = slices.DeleteFunc(beside[i], func(k int) bool {
			return onEdge[i] || onEdge[k]
		})
	}
	join := func(a, b int) { beside[a], beside[b] = append(beside[a], b), append(beside[b], a) }
	n := len(l.seen.Edge)
	for k, i := range l.seen.Edge {
		last, next := l.seen.Edge[(k+n-1)%n], l.seen.Edge[(k+1)%n]
		join(i, next)
		if l.folds(last, i, next) {
			join(last, next)
		}
	}
	return beside
}

// foldShare is the largest distance between the two places beside a fold, in
// steps from it: slightly more than at a right angle.
const foldShare = 1.5

// folds reports whether an edge folds inwards at a place.
func (l *layout) folds(last, i, next int) bool {
	step := min(l.at[i].Distance(l.at[last]), l.at[i].Distance(l.at[next]))
	return l.radius[i] < min(l.radius[last], l.radius[next])-l.slack && l.at[last].Distance(l.at[next]) < foldShare*step
}
