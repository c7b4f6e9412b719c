package sequence

import (
	"slices"

	"drawdown/geometry"
	"drawdown/sequence/way"
)

// unit is what goes down together: one fastener, or the fasteners of a
// cluster.
type unit []int

// units parts the members into those of unloaded clusters and all others.
func units(j geometry.Joint, members []int) (free, loaded []unit) {
	index := make(map[string]int, len(members))
	for _, i := range members {
		index[j.Fasteners[i].ID] = i
	}
	for _, c := range j.Clusters {
		var u unit
		for _, id := range c.Of {
			if i, here := index[id]; here {
				u = append(u, i)
				delete(index, id)
			}
		}
		switch {
		case len(u) == 0:
		case c.Unloaded:
			free = append(free, u)
		default:
			loaded = append(loaded, u)
		}
	}
	for _, i := range members {
		if _, single := index[j.Fasteners[i].ID]; single {
			loaded = append(loaded, unit{i})
		}
	}
	return free, loaded
}

func pointsOf(j geometry.Joint, members []int) []geometry.Point {
	points := make([]geometry.Point, len(members))
	for k, i := range members {
		points[k] = j.Fasteners[i].At
	}
	return points
}

func (u unit) centre(j geometry.Joint) geometry.Point {
	if len(u) == 1 {
		return j.Fasteners[u[0]].At
	}
	return geometry.Centroid(pointsOf(j, u))
}

// order lists the fasteners of the unit: crosswise, so that a cap or clamp
// goes down level.
func (u unit) order(j geometry.Joint, turn Turn) []int {
	if len(u) == 1 {
		return slices.Clone(u)
	}
	points, by := pointsOf(j, u), Cross
	if geometry.OneLine(points) {
		by = RowWay
	}
	var order []int
	for _, k := range way.Places(points, by, turn) {
		order = append(order, u[k])
	}
	return order
}

// Units parts the given fasteners of a joint into what goes down together: the
// clusters and, each for itself, all that are in none. Those of unloaded
// clusters come apart, as they go before all others.
func Units(j geometry.Joint, members []int) (free, loaded [][]int) {
	f, l := units(j, members)
	for _, u := range f {
		free = append(free, u)
	}
	for _, u := range l {
		loaded = append(loaded, u)
	}
	return free, loaded
}
