package plan

import (
	"slices"
	"strconv"
)

// Called returns the number by which each fastener is found on the part: the
// cast number if every fastener of its group has one, because a technician
// looks for the number on the part. Fasteners of other groups keep their
// tightening number. If no group is numbered completely, or two fasteners would
// have the same number, it is that of the side's own order.
func (p Plan) Called(s Side) []int {
	if called, cast := p.castNumbers(); cast {
		return called
	}
	return s.Numbers()
}

// CalledByCast lists the kinds that go by their cast numbers, and reports
// whether these are all kinds.
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

// Written returns what identifies each fastener on the part: the cast number if
// all of its group go by it, otherwise the id.
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
		return names // an id equals the cast number of another fastener
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

// Stretch is a part of an order in which the numbers only rise or only fall.
type Stretch struct{ From, To int }

// Stretches divides a side's order wherever the numbers of the fasteners change
// direction. It returns none if there would be more stretches than groups: the
// order then does not follow these numbers.
func (p Plan) Stretches(s Side) []Stretch {
	called := p.Called(s)
	var all []Stretch
	way := 0 // of the last stretch: 1 up, −1 down, 0 unknown
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
