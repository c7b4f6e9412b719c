package plan

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence"
)

// SmallBeforeLarge finds the groups with a smaller thread that are finished
// before one with a larger thread, by their indices. If no thread is stated the
// hole is used. Groups in a maker's list or by the numbers on the part are not
// judged.
func (in Input) SmallBeforeLarge() map[int]finding.Finding {
	found := map[int]finding.Finding{}
	for i, early := range in.Groups {
		small, known := in.sized(early, slices.MinFunc[[]Kind])
		for _, late := range in.Groups[i+1:] {
			large, knownToo := in.sized(late, slices.MaxFunc[[]Kind])
			if known && knownToo && small.SizeMm() < large.SizeMm() && !early.Way.IsMakers() && !late.Way.IsMakers() {
				found[i] = finding.Warned(SmallFirst, finding.Values{
					"small": small.Name, "small_thread": small.ThreadName(), "small_hole": small.Hole,
					"large": large.Name, "large_thread": large.ThreadName(), "large_hole": large.Hole,
				}).From(finding.CommonPractice)
				break
			}
		}
	}
	return found
}

// sized picks a kind of a group by size, among those that have fasteners and a
// known thread or hole.
func (in Input) sized(g sequence.Group, pick func([]Kind, func(a, b Kind) int) Kind) (Kind, bool) {
	kinds := slices.DeleteFunc(slices.Clone(in.Kinds), func(k Kind) bool {
		return k.SizeMm() == 0 || !slices.Contains(g.Kinds, k.Name) || !in.has(k.Name)
	})
	if len(kinds) == 0 {
		return Kind{}, false
	}
	return pick(kinds, func(a, b Kind) int { return cmp.Compare(a.SizeMm(), b.SizeMm()) }), true
}

func (in Input) has(kind string) bool {
	return slices.ContainsFunc(in.Joint.Fasteners, func(f geometry.Fastener) bool { return f.Kind == kind })
}

// OnBoltCircles reports whether the fasteners of the kinds, or all if none is
// named, are on one circle, or mostly evenly spaced on rings around the centre
// of all. The trade uses a star only there.
func (in Input) OnBoltCircles(kinds []string) bool {
	members := sequence.Group{Kinds: kinds}.Members(in.Joint)
	points := in.Joint.PointsOf(members)
	centre := geometry.Enclose(points).Centre
	if geometry.OneCircle(points, centre) {
		return true
	}
	onRings := 0
	for _, ring := range sequence.Rings(in.Joint, members) {
		if in.isBoltCircle(ring, centre) {
			onRings += len(ring)
		}
	}
	return 2*onRings > len(members)
}

// isBoltCircle reports whether a ring is even, with at most a fifth of its
// holes missing. With more missing, the corners of an oblong would count as a
// circle.
func (in Input) isBoltCircle(ring []int, centre geometry.Point) bool {
	if len(ring) < 3 {
		return false
	}
	deg := geometry.Mapped(in.Joint.PointsOf(ring), func(p geometry.Point) float64 { return p.AngleFrom(centre) })
	first := slices.Min(deg)
	deg = geometry.Mapped(slices.Sorted(slices.Values(deg)), func(d float64) float64 { return d - first })
	places, count := geometry.EvenPlaces(deg)
	return places != nil && 5*(count-len(ring)) <= count
}
