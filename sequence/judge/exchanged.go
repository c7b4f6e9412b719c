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
	return pairsExchanged(p)
}

// pairsExchanged finds a maker's order by pairs with two entries swapped.
func pairsExchanged(p plan.Plan) (finding.Finding, bool) {
	for _, g := range p.Groups {
		if !g.Makers() || len(g.Members) < fewestForExchange || len(p.Joint.Clusters) > 0 {
			continue
		}
		if a, b, found := pairBroken(p.Joint, g.Members); found {
			ids := p.IDs([]int{g.Members[a], g.Members[b]})
			return finding.Warned(StatedExchanged, finding.Values{"first": ids[0], "second": ids[1], "step": a + 1, "other": b + 1, "moved": false}).From(finding.CommonPractice), true
		}
	}
	return finding.Finding{}, false
}

// pairBroken finds an order that goes by pairs, all mirrored in one way, but for two pairs
// that exchanging one step of each with the other would mend.
func pairBroken(j geometry.Joint, order []int) (first, second int, found bool) {
	const tolerance, fewestRight = 0.5, 2 // mm; pairs
	if len(order)%2 != 0 {
		return 0, 0, false
	}
	middle := geometry.Centroid(j.PointsOf(order))
	for _, by := range []geometry.Point{{X: 1, Y: -1}, {X: -1, Y: 1}, {X: -1, Y: -1}} {
		paired := func(a, b int) bool {
			p, q := j.Fasteners[a].At.Sub(middle), j.Fasteners[b].At.Sub(middle)
			return geometry.Point{X: p.X * by.X, Y: p.Y * by.Y}.Distance(q) <= tolerance
		}
		var broken []int // first steps of pairs
		for k := 0; k < len(order); k += 2 {
			if !paired(order[k], order[k+1]) {
				broken = append(broken, k)
			}
		}
		if len(broken) != 2 || len(order)/2-2 < fewestRight {
			continue
		}
		for _, m := range [][2]int{{broken[0] + 1, broken[1]}, {broken[0], broken[1]}, {broken[0] + 1, broken[1] + 1}, {broken[0], broken[1] + 1}} {
			swapped := slices.Clone(order)
			swapped[m[0]], swapped[m[1]] = swapped[m[1]], swapped[m[0]]
			if paired(swapped[broken[0]], swapped[broken[0]+1]) && paired(swapped[broken[1]], swapped[broken[1]+1]) {
				return m[0], m[1], true
			}
		}
	}
	return 0, 0, false
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
