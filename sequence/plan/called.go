package plan

import (
	"slices"
	"strconv"
)

// Called assigns each fastener the number by which it is found at the part: the
// one cast beside it where every fastener of its group has one, since a hand goes
// to what is cast. Fasteners of other groups then have their tightening number.
// Where no group is numbered so, or two would be called the same, the number is
// that of the side's own order.
func (p Plan) Called(s Side) []int {
	if called, cast := p.castNumbers(); cast {
		return called
	}
	return s.Numbers()
}

// CalledByCast lists the kinds that are called by their cast numbers, and says
// whether that is all of them.
func (p Plan) CalledByCast() (kinds []string, all bool) {
	if _, cast := p.castNumbers(); !cast {
		return nil, false
	}
	groups := 0
	for _, g := range p.Groups {
		if p.numbered(g) {
			kinds, groups = append(kinds, g.Kinds...), groups+1
		}
	}
	return kinds, groups == len(p.Groups)
}

// Written returns, for each fastener, what tells it on the part itself: the
// number cast there, where all of its group are called so, else its id.
func (p Plan) Written() []string {
	called, cast := p.castNumbers()
	names := make([]string, len(p.Joint.Fasteners))
	for i, f := range p.Joint.Fasteners {
		names[i] = f.ID
	}
	if !cast {
		return names
	}
	written := slices.Clone(names)
	for _, g := range p.Groups {
		for _, i := range g.Members {
			if p.numbered(g) {
				written[i] = strconv.Itoa(called[i])
			}
		}
	}
	if sorted := slices.Sorted(slices.Values(written)); len(slices.Compact(sorted)) < len(written) {
		return names // an id is the number cast for another
	}
	return written
}

func (p Plan) castNumbers() (called []int, cast bool) {
	called = p.Tighten.Numbers()
	for _, g := range p.Groups {
		if !p.numbered(g) {
			continue
		}
		cast = true
		for _, i := range g.Members {
			called[i] = p.Joint.Fasteners[i].Cast
		}
	}
	sorted := slices.Sorted(slices.Values(called))
	return called, cast && len(slices.Compact(sorted)) == len(called)
}

func (p Plan) numbered(g Group) bool {
	return len(g.Members) > 0 && !slices.ContainsFunc(g.Members, func(i int) bool { return p.Joint.Fasteners[i].Cast == 0 })
}

// Stretch is a part of an order in which the numbers only rise, or only fall.
type Stretch struct{ From, To int }

// Stretches parts a side's order at each place where the numbers by which
// fasteners are called turn about. There are none where that would be more
// stretches than groups: the order then does not go along these numbers.
func (p Plan) Stretches(s Side) []Stretch {
	called := p.Called(s)
	var all []Stretch
	way := 0 // of the last stretch: 1 up, −1 down, 0 not known yet
	for k, i := range s.Order {
		n := called[i]
		if k > 0 {
			last := &all[len(all)-1]
			up := 1
			if n < last.To {
				up = -1
			}
			if way == 0 || way == up {
				last.To, way = n, up
				continue
			}
		}
		all, way = append(all, Stretch{n, n}), 0
	}
	if len(all) > len(p.Groups) {
		return nil
	}
	return all
}
