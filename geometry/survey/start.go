package survey

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// The search for a start keeps several partial solutions in parallel. A hole
// that may be on either side of a line is then not decided before later
// readings are used.
const (
	keptStates  = 40
	triedBases  = 8
	keptResults = 12
	foldedCost  = 1.5
)

func (r Reading) other(hole int) int {
	if r.From == hole {
		return r.To
	}
	return r.From
}

// state is a part under construction, hole by hole.
type state struct {
	at     []geometry.Point
	placed []bool
	cost   float64
}

// start returns the best fit of all readings found by building the part from
// several first readings. Parts of the graph that no reading connects are built
// separately.
func start(holes int, readings []Reading, accuracy float64) []geometry.Point {
	g := make([][]int, holes) // the readings at each hole
	for i, r := range readings {
		g[r.From], g[r.To] = append(g[r.From], i), append(g[r.To], i)
	}
	var best []geometry.Point
	least := math.Inf(1)
	for _, base := range bases(g, readings) {
		grown := grow(g, readings, base, accuracy)
		for _, s := range grown {
			// A state with a much higher cost than the first is folded.
			if s.cost > grown[0].cost+foldedCost {
				continue
			}
			fit := robust(s.at, readings, accuracy)
			if cost := worth(fit, readings, accuracy); cost < least || best == nil {
				best, least = fit, cost
			}
		}
		if goodEnough(best, readings, accuracy) {
			break
		}
	}
	return best
}

// goodEnough reports whether a fit leaves at most one reading, plus one in
// twenty, unexplained.
func goodEnough(at []geometry.Point, readings []Reading, accuracy float64) bool {
	out := 0
	for _, r := range readings {
		if math.Abs(r.residual(at)) > 4*accuracy {
			out++
		}
	}
	return out <= 1+len(readings)/20
}

// bases lists readings to start from: those with the most holes that are
// measured from both ends first, then the longest. One wrong base does no harm
// if there are others.
func bases(g [][]int, readings []Reading) []int {
	common, order := make([]int, len(readings)), make([]int, len(readings))
	for i, r := range readings {
		order[i] = i
		seen := map[int]bool{}
		for _, k := range g[r.From] {
			seen[readings[k].other(r.From)] = true
		}
		for _, k := range g[r.To] {
			if hole := readings[k].other(r.To); hole != r.From && seen[hole] {
				common[i]++
			}
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(common[b], common[a]), cmp.Compare(readings[b].Distance, readings[a].Distance))
	})
	return order[:min(len(order), triedBases)]
}

// grow builds the part from one reading and returns the best states.
func grow(g [][]int, readings []Reading, base int, accuracy float64) []state {
	first := state{at: make([]geometry.Point, len(g)), placed: make([]bool, len(g))}
	r := readings[base]
	first.at[r.To] = geometry.Point{X: r.Distance}
	first.placed[r.From], first.placed[r.To] = true, true
	states := []state{first}
	for count := 2; count < len(g); count++ {
		hole, links := nextHole(g, readings, states[0].placed)
		var grown []state
		for _, s := range states {
			before := len(grown)
			for _, p := range s.places(hole, links, readings) {
				next := s.with(hole, p, links, readings, accuracy)
				isThere := func(other state) bool { return other.at[hole].Distance(next.at[hole]) < 0.5 }
				if !slices.ContainsFunc(grown[before:], isThere) {
					grown = append(grown, next)
				}
			}
		}
		slices.SortStableFunc(grown, func(a, b state) int { return cmp.Compare(a.cost, b.cost) })
		states = grown[:min(len(grown), keptStates)]
	}
	return states[:min(len(states), keptResults)]
}

// nextHole returns the hole with the most readings to placed holes, and these
// readings.
func nextHole(g [][]int, readings []Reading, placed []bool) (hole int, links []int) {
	hole = -1
	for h := range g {
		if placed[h] {
			continue
		}
		var found []int
		for _, k := range g[h] {
			if placed[readings[k].other(h)] {
				found = append(found, k)
			}
		}
		if hole < 0 || len(found) > len(links) {
			hole, links = h, found
		}
	}
	return hole, links
}

// places lists the possible positions of a hole: where the circles of two
// readings intersect.
func (s state) places(hole int, links []int, readings []Reading) []geometry.Point {
	const mostPairs = 15
	box := geometry.Bounds(s.at)
	switch len(links) {
	case 0:
		return []geometry.Point{{X: box.Max.X + 100, Y: box.Max.Y + 37}}
	case 1:
		r, around := readings[links[0]], []geometry.Point{}
		for k := range 7 {
			around = append(around, geometry.Polar(s.at[r.other(hole)], r.Distance, 20+360*float64(k)/7))
		}
		return around
	}
	type pair struct {
		a, b int
		wide float64
	}
	var pairs []pair
	for i, a := range links {
		for _, b := range links[:i] {
			pairs = append(pairs, pair{a, b, s.at[readings[a].other(hole)].Distance(s.at[readings[b].other(hole)])})
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(b.wide, a.wide) })
	var all []geometry.Point
	for _, p := range pairs[:min(len(pairs), mostPairs)] {
		ra, rb := readings[p.a], readings[p.b]
		for _, q := range meet(s.at[ra.other(hole)], ra.Distance, s.at[rb.other(hole)], rb.Distance) {
			if !slices.ContainsFunc(all, func(o geometry.Point) bool { return o.Distance(q) < 0.5 }) {
				all = append(all, q)
			}
		}
	}
	return all
}

// meet returns the intersections of two circles, or the point between them if
// they miss each other.
func meet(a geometry.Point, radiusA float64, b geometry.Point, radiusB float64) []geometry.Point {
	apart := a.Distance(b)
	if apart < 1e-9 {
		return []geometry.Point{a.Add(geometry.Point{X: radiusA})}
	}
	along := b.Sub(a).Scale(1 / apart)
	x := (apart*apart + radiusA*radiusA - radiusB*radiusB) / (2 * apart)
	square := radiusA*radiusA - x*x
	foot := a.Add(along.Scale(x))
	if square <= 0 {
		return []geometry.Point{foot}
	}
	across := geometry.Point{X: -along.Y, Y: along.X}.Scale(math.Sqrt(square))
	return []geometry.Point{foot.Add(across), foot.Sub(across)}
}

// with returns the state with one more hole, near p where it fits its readings
// best.
func (s state) with(hole int, p geometry.Point, links []int, readings []Reading, accuracy float64) state {
	next := state{slices.Clone(s.at), slices.Clone(s.placed), s.cost}
	next.at[hole], next.placed[hole] = p, true
	// Errors accumulate on the way from the base, so the scale is wide.
	scale := 10 * accuracy
	for range 4 {
		next.at[hole] = nudged(next.at, hole, links, readings, scale)
	}
	for _, k := range links {
		v := readings[k].residual(next.at) / scale
		next.cost += v * v / (1 + v*v)
	}
	return next
}

// nudged is one robust step of a single hole.
func nudged(at []geometry.Point, hole int, links []int, readings []Reading, scale float64) geometry.Point {
	var xx, xy, yy, gx, gy float64
	for _, k := range links {
		r := readings[k]
		u, v := r.direction(at), r.residual(at)
		if r.From == hole {
			u = u.Scale(-1)
		}
		w := 1 / ((1 + v*v/scale/scale) * (1 + v*v/scale/scale))
		xx, xy, yy = xx+w*u.X*u.X, xy+w*u.X*u.Y, yy+w*u.Y*u.Y
		gx, gy = gx+w*u.X*v, gy+w*u.Y*v
	}
	det := xx*yy - xy*xy
	if det <= 1e-3*(xx+yy)*(xx+yy) { // one direction, or none
		return at[hole]
	}
	step := geometry.Point{X: (yy*gx - xy*gy) / det, Y: (xx*gy - xy*gx) / det}
	if math.Hypot(step.X, step.Y) > 20*scale {
		return at[hole]
	}
	return at[hole].Add(step)
}
