package sequence

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// Group is a set of fastener kinds that are ordered together.
type Group struct {
	Kinds []string // empty: every kind
	Way   Way
	Turn  Turn
	// Family is the family to use for the layout; "": the recognized one.
	Family family.Family
	List   []string // the maker's own sequence of ids, for Way List
}

// Order returns the fasteners of a joint, as indices into j.Fasteners, in
// tightening order: group by group, clusters together. Every fastener must
// belong to exactly one group.
func Order(j geometry.Joint, groups []Group) ([]int, error) {
	var order []int
	taken := make([]bool, len(j.Fasteners))
	for _, g := range groups {
		members := g.Members(j)
		for _, i := range members {
			if taken[i] {
				return nil, unordered(InTwoGroups, j.Fasteners[i].ID)
			}
			taken[i] = true
		}
		part, err := OrderGroup(j, members, g)
		if err != nil {
			return nil, err
		}
		order = append(order, part...)
	}
	if left := slices.Index(taken, false); left >= 0 {
		return nil, unordered(InNoGroup, j.Fasteners[left].ID)
	}
	return order, nil
}

// Members lists the fasteners of the group's kinds.
func (g Group) Members(j geometry.Joint) []int {
	var members []int
	for i, f := range j.Fasteners {
		if len(g.Kinds) == 0 || slices.Contains(g.Kinds, f.Kind) {
			members = append(members, i)
		}
	}
	return members
}

// OrderGroup orders the given fasteners of a joint by the group's way. An
// unloaded cluster comes before all others, or after them if the maker says so.
func OrderGroup(j geometry.Joint, members []int, g Group) ([]int, error) {
	switch g.Way {
	case List:
		return byList(j, members, g.List)
	case Cast:
		return byCast(j, members)
	}
	first, then := Units(j, members)
	if j.UnloadedFirstOff {
		first, then = then, first
	}
	return append(expand(j, first, g), expand(j, then, g)...), nil
}

// expand orders the units by the group's way and lists the fasteners of each.
func expand(j geometry.Joint, units [][]int, g Group) []int {
	var order []int
	for _, i := range way.PlacesAs(Centres(j, units), g.Family, g.Way, g.Turn) {
		order = append(order, orderUnit(j, units[i], g.Turn)...)
	}
	return order
}

// Numbered reports whether all of the fasteners have cast numbers.
func Numbered(j geometry.Joint, members []int) bool {
	return len(members) > 0 && !slices.ContainsFunc(members, func(i int) bool { return j.Fasteners[i].Cast == 0 })
}

func byCast(j geometry.Joint, members []int) ([]int, error) {
	order := slices.Clone(members)
	for _, i := range order {
		if j.Fasteners[i].Cast == 0 {
			return nil, unordered(NoCastNumber, j.Fasteners[i].ID)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return j.Fasteners[a].Cast - j.Fasteners[b].Cast })
	return order, nil
}

func byList(j geometry.Joint, members []int, list []string) ([]int, error) {
	index := indexOf(j, members)
	order := make([]int, 0, len(list))
	for _, id := range list {
		i, known := index[id]
		if !known {
			return nil, unordered(NotOfGroup, id)
		}
		delete(index, id)
		order = append(order, i)
	}
	for _, i := range members {
		if _, left := index[j.Fasteners[i].ID]; left {
			return nil, unordered(NotInList, j.Fasteners[i].ID)
		}
	}
	return order, nil
}
