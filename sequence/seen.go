package sequence

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// SettledGroup returns the way that is used for a group: never Auto.
func SettledGroup(j geometry.Joint, members []int, g Group) Way {
	if g.isSettled() {
		return g.Way
	}
	return g.SettledAs(SeenGroup(j, members, g))
}

// SettledAs returns the way of the group once the family of its layout is
// known.
func (g Group) SettledAs(seen family.Seen) Way {
	if g.isSettled() {
		return g.Way
	}
	return way.For(seen.Family)
}

func (g Group) isSettled() bool { return g.Way != Auto && g.Way != "" }

// SeenGroup returns the family used to order a group, and what decided it. A
// cluster counts as one place; lists hold fasteners of the joint.
func SeenGroup(j geometry.Joint, members []int, g Group) family.Seen {
	_, loaded := Units(j, members)
	seen := family.As(Centres(j, loaded), g.Family)
	fasteners := func(places []int) []int { return slices.Concat(geometry.Picked(loaded, places)...) }
	seen.Edge, seen.Corners, seen.Inner = fasteners(seen.Edge), fasteners(seen.Corners), fasteners(seen.Inner)
	seen.Rings, seen.Parts = geometry.Mapped(seen.Rings, fasteners), geometry.Mapped(seen.Parts, fasteners)
	return seen
}
