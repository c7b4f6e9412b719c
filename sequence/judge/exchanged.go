package judge

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// fewestForExchange is the smallest group in which two swapped entries indicate
// a slip. In smaller groups the maker may have meant it.
const fewestForExchange = 6

// exchanged finds a maker's order that departs but would be a usual one if two
// entries were swapped or one was moved. A maker's list is copied by hand, and
// this is how it goes wrong.
func exchanged(p plan.Plan) (finding.Finding, bool) {
	for _, g := range p.Groups {
		if !g.Makers() || len(g.Members) < fewestForExchange || len(p.Joint.Clusters) > 0 {
			continue
		}
		for _, usual := range usualOrders(p.Joint, g) {
			if values := slip(p, g.Members, usual); values != nil {
				return finding.Warned(StatedExchanged, values).From(finding.CommonPractice), true
			}
		}
	}
	return finding.Finding{}, false
}

// usualOrders returns the usual orders of the trade for a group, in both
// directions and from either side.
func usualOrders(j geometry.Joint, g plan.Group) (orders [][]int) {
	members := slices.Sorted(slices.Values(g.Members))
	for _, seen := range sides(j) {
		for _, way := range []sequence.Way{sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star} {
			for _, turn := range []sequence.Turn{sequence.TurnLeft, sequence.TurnRight} {
				order, err := sequence.OrderGroup(seen, members, sequence.Group{Kinds: g.Kinds, Way: way, Turn: turn})
				if err == nil {
					orders = append(orders, order)
				}
			}
		}
	}
	return orders
}

// sides returns the joint as it is, mirrored, and turned by 180°.
func sides(j geometry.Joint) (all []geometry.Joint) {
	for _, by := range []geometry.Point{{X: 1, Y: 1}, {X: -1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: -1}} {
		seen := j
		seen.Fasteners = slices.Clone(j.Fasteners)
		for i := range seen.Fasteners {
			at := &seen.Fasteners[i].At
			at.X, at.Y = at.X*by.X, at.Y*by.Y
		}
		all = append(all, seen)
	}
	return all
}

// slip returns the two entries by which an order differs from a usual one, or
// nil.
func slip(p plan.Plan, order, usual []int) finding.Values {
	var differ []int
	for k := range order {
		if order[k] != usual[k] {
			differ = append(differ, k)
		}
	}
	if len(differ) < 2 {
		return nil
	}
	first, last := differ[0], differ[len(differ)-1]
	entries := func(a, b int) finding.Values {
		ids := p.IDs([]int{order[a], order[b]})
		return finding.Values{"first": ids[0], "second": ids[1], "step": a + 1, "other": b + 1, "moved": false}
	}
	if len(differ) == 2 && order[first] == usual[last] && order[last] == usual[first] {
		return entries(first, last)
	}
	for _, m := range [][2]int{{first, last}, {last, first}} { // one entry is too late, or too early
		moved := slices.Delete(slices.Clone(order), m[0], m[0]+1)
		if moved = slices.Insert(moved, m[1], order[m[0]]); slices.Equal(moved, usual) {
			values := entries(m[0], m[1])
			values["moved"] = true
			return values
		}
	}
	return nil
}
