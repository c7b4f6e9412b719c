package way

import (
	"slices"

	"drawdown/geometry"
)

// star goes through each bolt circle, from the inside out, in the cross-pattern
// of ASME PCC-1: the opposite place follows, then the two at right angles.
// Places are counted in the direction of the turn from the first.
func (l *layout) star(turn Turn) []int {
	var order []int
	for _, ring := range l.circles() {
		round := l.roundFrom(ring, l.first(ring, turn), turn)
		places, count := l.evenPlaces(round, turn)
		byPlace := make(map[int]int, len(round))
		for k, i := range round {
			byPlace[places[k]] = i
		}
		here := slices.DeleteFunc(starPlaces(count), func(place int) bool {
			_, here := byPlace[place]
			return !here
		})
		for _, place := range loneLast(here, count) {
			order = append(order, byPlace[place])
		}
	}
	return order
}

// circles are the recognized circles, or for other layouts the rings.
func (l *layout) circles() [][]int {
	if l.seen.Rings != nil {
		return l.seen.Rings
	}
	return l.Rings(l.centre)
}

// evenPlaces numbers the members of a ring by the even places of their circle,
// from 0, and returns the number of places. The place of a missing bolt keeps
// its number. Uneven places are simply counted.
func (l *layout) evenPlaces(round []int, turn Turn) (places []int, count int) {
	deg := make([]float64, len(round))
	for k, i := range round[1:] {
		deg[k+1] = l.turned(i, l.angle[round[0]], turn)
	}
	if places, count = geometry.EvenPlaces(deg); places != nil {
		return places, count
	}
	return geometry.Count(len(round)), len(round)
}

// starPlaces returns the cross-pattern for a circle of n even places, from 0.
//
// For a multiple of four: quarters, each of four places s, s+n/2, s+n/4, s+3n/4
// (ASME PCC-1, Table 4). For another even count: diameters, each of two places
// s, s+n/2. For an odd count up to seven: single places. The start places s are
// taken by halves; see scattered. A longer star of single places would go
// around in pairs, neighbour after neighbour, so an odd count from nine on uses
// the objective.
func starPlaces(n int) []int {
	if n >= 9 && n%2 == 1 {
		return oddPlaces(n)
	}
	var offsets []int
	switch {
	case n%4 == 0:
		offsets = []int{0, n / 2, n / 4, 3 * n / 4}
	case n%2 == 0:
		offsets = []int{0, n / 2}
	default:
		offsets = []int{0}
	}
	var order []int
	for _, s := range scattered(n / len(offsets)) {
		for _, o := range offsets {
			order = append(order, s+o)
		}
	}
	return order
}

// loneLast delays a bolt without an opposite if it would pull the circle
// further to one side than a single bolt does. The bolt comes as late as
// possible between pairs, with a wide step before and after it.
func loneLast(order []int, count int) []int {
	if count%2 == 1 {
		return order
	}
	var pull geometry.Point
	var waiting, early []int
	for _, place := range order {
		with := pull.Add(geometry.Polar(geometry.Point{}, 1, 360*float64(place)/float64(count)))
		switch {
		case slices.Contains(order, (place+count/2)%count):
			early = append(early, place)
		case with.Distance(geometry.Point{}) > 1+1e-9:
			waiting = append(waiting, place)
		default:
			early, pull = append(early, place), with
		}
	}
	for _, place := range waiting {
		at := latest(early, place, count)
		early = slices.Insert(early, at, place)
	}
	return early
}

// latest returns the last position where a place fits, or the end if it fits
// nowhere.
func latest(order []int, place, count int) int {
	apart := func(a, b int) int {
		d := (a - b + count) % count
		return min(d, count-d)
	}
	wide := func(other int) bool { return 4*apart(place, other) >= count }
	if wide(order[len(order)-1]) {
		return len(order)
	}
	for at := len(order) - 1; at > 0; at-- {
		if wide(order[at-1]) && wide(order[at]) && apart(order[at-1], order[at]) < count/2 {
			return at
		}
	}
	return len(order)
}

// oddPlaces orders an odd number of even places by the objective.
func oddPlaces(n int) []int {
	l := newLayout(geometry.Circle(n, 2, geometry.Point{}, 90, true))
	return l.given(l.balanced(TurnRight))
}

// scattered returns the numbers 0..n-1 so that each is far from the one before.
// An even n alternates between the halves. An odd n steps by (n-1)/2, which
// meets every number once, since (n-1)/2 and n have no common factor. For n = 5
// this is the five-pointed star 1 3 5 2 4.
func scattered(n int) []int {
	if n <= 1 {
		return make([]int, n)
	}
	order := make([]int, 0, n)
	if n%2 == 1 {
		for k := range n {
			order = append(order, k*((n-1)/2)%n)
		}
		return order
	}
	for _, s := range scattered(n / 2) {
		order = append(order, s, s+n/2)
	}
	return order
}
