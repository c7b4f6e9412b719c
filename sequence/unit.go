package sequence

import (
	"slices"

	"drawdown/geometry"
	"drawdown/sequence/way"
)

// Units parts the given fasteners of a joint into what goes down together: the
// clusters and, each for itself, all that are in none. Those of unloaded
// clusters come apart, as they go before all others or after them; where no
// others are, all are alike.
func Units(j geometry.Joint, members []int) (free, loaded [][]int) {
	index := indexOf(j, members)
	for _, c := range j.Clusters {
		var unit []int
		for _, id := range c.Of {
			if i, here := index[id]; here {
				unit = append(unit, i)
				delete(index, id)
			}
		}
		switch {
		case len(unit) == 0:
		case c.Unloaded:
			free = append(free, unit)
		default:
			loaded = append(loaded, unit)
		}
	}
	for _, i := range members {
		if _, single := index[j.Fasteners[i].ID]; single {
			loaded = append(loaded, []int{i})
		}
	}
	if len(loaded) == 0 {
		return nil, free
	}
	return free, loaded
}

// Sprung reports whether springs press under the part that the given fasteners
// hold: some of them are in a cluster, such as a cam cap, that is not told to be
// free of them.
func Sprung(j geometry.Joint, members []int) bool {
	index := indexOf(j, members)
	return slices.ContainsFunc(j.Clusters, func(c geometry.Cluster) bool {
		return !c.Unloaded && slices.ContainsFunc(c.Of, func(id string) bool { _, here := index[id]; return here })
	})
}

func indexOf(j geometry.Joint, members []int) map[string]int {
	index := make(map[string]int, len(members))
	for _, i := range members {
		index[j.Fasteners[i].ID] = i
	}
	return index
}

// Centres returns the places by which units are ordered.
func Centres(j geometry.Joint, units [][]int) []geometry.Point {
	return geometry.Mapped(units, func(unit []int) geometry.Point {
		if len(unit) == 1 {
			return j.Fasteners[unit[0]].At
		}
		return geometry.Centroid(j.PointsOf(unit))
	})
}

// orderUnit lists the fasteners of a unit: crosswise, so that a cap or clamp
// goes down level.
func orderUnit(j geometry.Joint, unit []int, turn Turn) []int {
	if len(unit) == 1 {
		return slices.Clone(unit)
	}
	points, by := j.PointsOf(unit), Cross
	if geometry.OneLine(points) {
		by = RowWay
	}
	return geometry.Picked(unit, way.Places(points, by, turn))
}
