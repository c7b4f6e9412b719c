package survey

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// wellMeasured is the number of other holes that each hole is measured to: a
// single wrong reading can then be found.
const wellMeasured = 4

// Pairs lists which distances to measure on a part whose holes are about at the
// places, each as a hole and one of those before it. First comes a large
// triangle. The other holes follow one another along a short way, and each is
// measured to up to four of those before it: when a hole is done, all up to it
// are located.
func Pairs(at []geometry.Point) [][2]int {
	route := shortWay(at)
	partners := make([][]int, len(at)) // of each hole, those before it
	degree := make([]int, len(at))
	add := func(hole, before int) {
		partners[hole] = append(partners[hole], before)
		degree[hole]++
		degree[before]++
	}
	for k, hole := range route {
		for _, before := range wellSpread(at, hole, route[:k]) {
			add(hole, before)
		}
	}
	for k, hole := range route {
		for degree[hole] < min(wellMeasured, len(at)-1) {
			other, before := lacking(at, route, k, partners, degree)
			add(other, before)
		}
	}
	rank := make([]int, len(at))
	for k, hole := range route {
		rank[hole] = k
	}
	for _, r := range unchecked(at, partners) {
		if other := alike(at, r, partners); other >= 0 {
			low, high := min(rank[r.From], rank[other]), max(rank[r.From], rank[other])
			add(route[high], route[low])
		}
	}
	var pairs [][2]int
	for _, hole := range route {
		slices.SortFunc(partners[hole], func(a, b int) int { return cmp.Compare(rank[a], rank[b]) })
		for _, before := range partners[hole] {
			pairs = append(pairs, [2]int{before, hole})
		}
	}
	return pairs
}

// shortWay begins with a large triangle and then goes always to the nearest hole
// that is left.
func shortWay(at []geometry.Point) []int {
	var left, route []int
	for i := range at {
		left = append(left, i)
	}
	take := func(value func(hole int) float64) int {
		best := 0
		for k, hole := range left {
			if value(hole) > value(left[best])+1e-6 {
				best = k
			}
		}
		hole := left[best]
		left, route = slices.Delete(left, best, best+1), append(route, hole)
		return hole
	}
	first := take(func(hole int) float64 { return slices.Max(geometry.Mapped(at, at[hole].Distance)) })
	last := take(func(hole int) float64 { return at[hole].Distance(at[first]) })
	along := at[last].Sub(at[first])
	for len(left) > 0 {
		value := func(hole int) float64 { return -at[hole].Distance(at[last]) }
		if len(route) == 2 {
			value = func(hole int) float64 { return offLine(along, at[hole].Sub(at[first])) }
		}
		last = take(value)
	}
	return route
}

// offLine is how far off a line a place is, times the length of the line.
func offLine(along, to geometry.Point) float64 { return math.Abs(along.X*to.Y - along.Y*to.X) }

// wellSpread returns up to four of the holes before one: the nearest, the
// furthest, and the two furthest off their line. Two, because a single one would
// be all that locates the hole across that line, and nothing would check it.
func wellSpread(at []geometry.Point, hole int, before []int) []int {
	if len(before) <= wellMeasured {
		return before
	}
	var taken []int
	take := func(value func(other int) float64) int {
		best := -1
		for _, other := range before {
			if !slices.Contains(taken, other) && (best < 0 || value(other) > value(best)+1e-6) {
				best = other
			}
		}
		taken = append(taken, best)
		return best
	}
	away := func(other int) float64 { return at[hole].Distance(at[other]) }
	along := at[take(away)].Sub(at[hole])
	take(func(other int) float64 { return -away(other) })
	off := func(other int) float64 { return offLine(along, at[other].Sub(at[hole])) }
	take(off)
	take(off)
	return taken
}

// unchecked returns the pairs whose error no other pair would reveal, each from
// the hole that it locates.
func unchecked(at []geometry.Point, partners [][]int) (pairs []Reading) {
	var all []Reading
	for hole, before := range partners {
		for _, other := range before {
			all = append(all, Reading{From: hole, To: other, Distance: at[hole].Distance(at[other])})
		}
	}
	_, straight := straightened(at, all, UsualAccuracyMm)
	stiff := newStiffness(at, all, straight)
	return slices.DeleteFunc(all, func(r Reading) bool { return stiff.checked(r) >= hardlyChecked })
}

// alike returns a hole in nearly the same direction as a pair, which checks it; -1
// if all are measured.
func alike(at []geometry.Point, r Reading, partners [][]int) int {
	best, most := -1, 0.0
	along := at[r.To].Sub(at[r.From])
	for other := range at {
		if other == r.From || slices.Contains(partners[r.From], other) || slices.Contains(partners[other], r.From) {
			continue
		}
		to := at[other].Sub(at[r.From])
		if value := math.Abs(along.Dot(to)) / to.Distance(geometry.Point{}); value > most {
			best, most = other, value
		}
	}
	return best
}

// lacking returns one more pair of the hole at k of the route: with the furthest
// of the holes that also have too few, or of all.
func lacking(at []geometry.Point, route []int, k int, partners [][]int, degree []int) (hole, before int) {
	best := -1
	better := func(a, b int) bool {
		if few := degree[route[a]] < wellMeasured; few != (degree[route[b]] < wellMeasured) {
			return few
		}
		return at[route[k]].Distance(at[route[a]]) > at[route[k]].Distance(at[route[b]])+1e-6
	}
	for other := range route {
		low, high := route[min(k, other)], route[max(k, other)]
		if other != k && !slices.Contains(partners[high], low) && (best < 0 || better(other, best)) {
			best = other
		}
	}
	return route[max(k, best)], route[min(k, best)]
}

// RoundTheEdge returns places for holes of which only the order round the part is
// known.
func RoundTheEdge(holes int) []geometry.Point {
	at := make([]geometry.Point, holes)
	for i := range at {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(holes))
		at[i] = geometry.Point{X: -100 * cos, Y: 100 * sin}
	}
	return at
}

// ToMeasure lists the distances to measure on the part: those that do not fit,
// again; those that locate the loose holes; and what is left of Pairs where no
// hole may be located wrongly without notice. It is empty if none is needed.
func (r Report) ToMeasure() [][2]int {
	var all [][2]int
	listed := map[[2]int]bool{}
	add := func(a, b int) {
		if key := pair(a, b); !listed[key] {
			listed[key], all = true, append(all, key)
		}
	}
	for _, i := range r.Suspect {
		add(r.Readings[i].From, r.Readings[i].To)
	}
	for _, l := range r.Loose {
		for _, next := range l.Next {
			add(next[0], next[1])
		}
	}
	degree := make([]int, r.Holes)
	measured := map[[2]int]bool{}
	for i, reading := range r.Readings {
		if key := pair(reading.From, reading.To); !r.Out[i] && !measured[key] {
			measured[key] = true
			degree[reading.From]++
			degree[reading.To]++
		}
	}
	enough := min(wellMeasured, r.Holes-1)
	for _, p := range Pairs(r.Points) {
		if !measured[pair(p[0], p[1])] && (degree[p[0]] < enough || degree[p[1]] < enough) {
			add(p[0], p[1])
		}
	}
	return all
}
