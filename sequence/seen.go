package sequence

import (
	"slices"

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
	_, loaded := Units(j, members)
	seen := family.As(Centres(j, loaded), g.Family)
	fasteners := func(places []int) []int { return slices.Concat(geometry.Picked(loaded, places)...) }
	seen.Edge, seen.Corners, seen.Inner = fasteners(seen.Edge), fasteners(seen.Corners), fasteners(seen.Inner)
	seen.Rings, seen.Parts = geometry.Mapped(seen.Rings, fasteners), geometry.Mapped(seen.Parts, fasteners)
	return seen
}
