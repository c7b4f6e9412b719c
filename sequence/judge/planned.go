package judge

import (
	"cmp"
	"slices"

	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// ForPlan returns the input to judge an order, given as ids, for one side of a
// plan. The groups are the plan's own with the larger threads first, whatever
// the plan does, unless a maker's list or the numbers on the part say
// otherwise. A maker's list over all kinds has a single group, so its kinds are
// grouped by thread.
//
// The plan's own order is the maker's if the file lists it or follows the
// numbers on the part. It is then described and not judged, whoever enters it.
// A source of a file covers its figures, not its order.
func ForPlan(p plan.Plan, side Side, order []string) Input {
	in := Input{Joint: p.Joint, Groups: groupsOf(p), Order: order, Side: side}
	own := p.Tighten.Order
	if side == Loosen {
		own = p.Loosen.Order
	}
	in.Makers = makers(p) && slices.Equal(order, p.IDs(own))
	return in
}

// makers reports whether the order of the plan is the maker's.
func makers(p plan.Plan) bool {
	return p.Asked == (plan.Asked{}) && slices.ContainsFunc(p.Groups, plan.Group.Makers)
}

func groupsOf(p plan.Plan) []Group {
	var groups []Group
	for _, g := range p.Groups {
		if len(g.Members) > 0 {
			groups = append(groups, Group{Kinds: g.Kinds, MajorMm: p.Kind(g.Kinds[0]).MajorMm()})
		}
	}
	switch makers := slices.ContainsFunc(p.Groups, plan.Group.Makers); {
	case makers && len(groups) == 1:
		return bySizeOfThread(p, groups[0].Kinds)
	case !makers:
		largestFirst(groups)
	}
	return groups
}

// largestFirst sorts the groups with a known thread; the others keep their
// positions.
func largestFirst(groups []Group) {
	var known []Group
	for _, g := range groups {
		if g.MajorMm > 0 {
			known = append(known, g)
		}
	}
	slices.SortStableFunc(known, func(a, b Group) int { return cmp.Compare(b.MajorMm, a.MajorMm) })
	for k := range groups {
		if groups[k].MajorMm > 0 {
			groups[k], known = known[0], known[1:]
		}
	}
}

// bySizeOfThread returns one group for each thread size, the largest first.
func bySizeOfThread(p plan.Plan, kinds []string) []Group {
	var groups []Group
	for _, kind := range kinds {
		size := p.Kind(kind).MajorMm()
		k := slices.IndexFunc(groups, func(g Group) bool { return g.MajorMm == size })
		if k < 0 {
			groups = append(groups, Group{Kinds: []string{kind}, MajorMm: size})
			continue
		}
		groups[k].Kinds = append(groups[k].Kinds, kind)
	}
	slices.SortStableFunc(groups, func(a, b Group) int { return cmp.Compare(b.MajorMm, a.MajorMm) })
	return groups
}

// CastOrder returns the ids of a plan's side by the numbers on the part: over
// the whole part if the numbers are unique, otherwise group by group. Groups
// without numbers keep the order of the plan; at least one group must have
// numbers.
func CastOrder(p plan.Plan, side Side) ([]string, error) {
	order, err := sequence.Order(p.Joint, []sequence.Group{{Way: sequence.Cast}})
	sameCast := func(a, b int) bool { return p.Joint.Fasteners[a].Cast == p.Joint.Fasteners[b].Cast }
	isNumbered := func(i int) bool { return p.Joint.Fasteners[i].Cast != 0 }
	if err != nil && !slices.ContainsFunc(p.Tighten.Order, isNumbered) {
		return nil, err
	}
	if err != nil || len(slices.CompactFunc(slices.Clone(order), sameCast)) < len(order) {
		if order, err = castByGroups(p, isNumbered); err != nil {
			return nil, err
		}
	}
	if side == Loosen {
		slices.Reverse(order)
	}
	return p.IDs(order), nil
}

func castByGroups(p plan.Plan, isNumbered func(int) bool) (order []int, err error) {
	for _, g := range p.Groups {
		part := g.Members
		if slices.ContainsFunc(part, isNumbered) {
			part, err = sequence.OrderGroup(p.Joint, part, sequence.Group{Way: sequence.Cast})
		}
		if err != nil {
			return nil, err
		}
		order = append(order, part...)
	}
	return order, nil
}
