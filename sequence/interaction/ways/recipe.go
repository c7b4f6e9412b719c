package ways

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/sequence"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/limits"
)

// orderBy orders every group of the plan by a way.
func (t *trier) orderBy(way sequence.Way) (order []int, err error) {
	for _, g := range t.plan.Groups {
		part, err := sequence.OrderGroup(t.plan.Joint, g.Members, sequence.Group{Way: way})
		if err != nil {
			return nil, err
		}
		order = append(order, part...)
	}
	return order, nil
}

// roundOrder goes once around each group, or from one end of a row to the
// other: then each bolt has about the same number of neighbours that are
// tightened later. Caps stay together.
func (t *trier) roundOrder() (order []int, err error) {
	for _, g := range t.plan.Groups {
		if len(t.plan.Joint.Clusters) == 0 && compliance.InLine(t.placesOf(g.Members)) {
			order = append(order, t.endToEnd(g.Members)...)
			continue
		}
		part, err := sequence.OrderGroup(t.plan.Joint, g.Members, sequence.Group{Way: sequence.Circular})
		if err != nil {
			return nil, err
		}
		order = append(order, part...)
	}
	return order, nil
}

func (t *trier) placesOf(members []int) []geometry.Point {
	at := make([]geometry.Point, len(members))
	for k, i := range members {
		at[k] = t.model.At[i]
	}
	return at
}

func (t *trier) endToEnd(members []int) []int {
	first, _ := compliance.RowEnds(t.placesOf(members))
	list := slices.Clone(members)
	slices.SortStableFunc(list, func(a, b int) int {
		return cmp.Compare(t.model.At[a].Distance(first), t.model.At[b].Distance(first))
	})
	return list
}

// recipe is the work that this model recommends: snug, the plan's stages from
// the centre outwards, the last torque once around or end to end, and the same
// again. Angles are not changed.
func (t *trier) recipe(centreOut, round []int) []contact.Pass {
	var passes []contact.Pass
	for _, part := range t.parts() {
		var torques, turns []contact.Pass
		for _, pass := range part {
			if contact.IsTorque(pass) {
				torques = append(torques, pass)
			} else {
				turns = append(turns, pass)
			}
		}
		passes = append(passes, t.recipeOf(torques, len(turns) > 0, centreOut, round)...)
		for _, pass := range turns {
			passes = append(passes, arranged(pass, centreOut))
		}
	}
	return passes
}

func (t *trier) recipeOf(torques []contact.Pass, turnedOn bool, centreOut, round []int) (passes []contact.Pass) {
	if len(torques) == 0 {
		return nil
	}
	last := torques[len(torques)-1]
	levels := slices.CompactFunc(slices.Clone(torques), contact.SameFigures)
	if first := levels[0]; first[0].ForceN > 2*limits.SnugTo*last[0].ForceN {
		passes = append(passes, arranged(scaled(last, limits.SnugTo), centreOut))
	}
	for _, pass := range levels {
		if !contact.SameFigures(pass, last) {
			passes = append(passes, arranged(pass, centreOut))
		}
	}
	again := arranged(last, round)
	if turnedOn {
		return append(passes, again) // nothing is repeated on bolts that end on an angle
	}
	return append(passes, again, again)
}

// parts divides the work where the set of bolts changes.
func (t *trier) parts() (parts [][]contact.Pass) {
	for n, pass := range t.work.Passes {
		if n == 0 || !contact.SameBolts(pass, t.work.Passes[n-1]) {
			parts = append(parts, nil)
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], pass)
	}
	return parts
}

// arranged puts the steps of a pass into an order of all fasteners.
func arranged(pass contact.Pass, order []int) contact.Pass {
	place := make([]int, len(order))
	for k, i := range order {
		place[i] = k
	}
	list := slices.Clone(pass)
	slices.SortStableFunc(list, func(a, b contact.Action) int { return place[a.Fastener] - place[b.Fastener] })
	return list
}

// scaled takes a share of the forces of a pass.
func scaled(pass contact.Pass, share float64) contact.Pass {
	list := slices.Clone(pass)
	for k := range list {
		list[k].ForceN *= share
	}
	return list
}
