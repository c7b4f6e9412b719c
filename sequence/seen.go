package sequence

import (
	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// SettledGroup gives the way that a group's way stands for: never Auto.
func SettledGroup(j geometry.Joint, members []int, g Group) Way {
	if g.Way != Auto && g.Way != "" {
		return g.Way
	}
	return way.For(SeenGroup(j, members, g).Family)
}

// SeenGroup gives the family that a group is ordered by, with what decided for
// it. A cluster counts as one place; lists hold fasteners of the joint.
func SeenGroup(j geometry.Joint, members []int, g Group) family.Seen {
	_, loaded := units(j, members)
	points := centres(j, loaded)
	seen := family.Of(points)
	if g.Family != "" {
		seen = family.As(points, g.Family)
	}
	fasteners := func(places []int) (list []int) {
		for _, i := range places {
			list = append(list, loaded[i]...)
		}
		return list
	}
	all := func(lists [][]int) (out [][]int) {
		for _, list := range lists {
			out = append(out, fasteners(list))
		}
		return out
	}
	seen.Edge, seen.Corners, seen.Inner = fasteners(seen.Edge), fasteners(seen.Corners), fasteners(seen.Inner)
	seen.Rings, seen.Parts = all(seen.Rings), all(seen.Parts)
	return seen
}

// centres are the places by which units are ordered.
func centres(j geometry.Joint, units []unit) []geometry.Point {
	points := make([]geometry.Point, len(units))
	for k, u := range units {
		points[k] = u.centre(j)
	}
	return points
}
