package meaning

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// checkLargestFirst warns of a group with a smaller thread that is finished
// before one with a larger thread (common practice, no source). Groups that go
// by the maker's list or by the numbers on the part are the maker's word.
func (r *reader) checkLargestFirst(from []*nodes.Node) {
	if len(from) != len(r.input.Groups) {
		return
	}
	for i, early := range r.input.Groups {
		for _, late := range r.input.Groups[i+1:] {
			if early.Way.Makers() || late.Way.Makers() {
				continue
			}
			small, large := r.smallest(early), r.largest(late)
			if small.Thread == nil || large.Thread == nil || small.Thread.MajorMm >= large.Thread.MajorMm {
				continue
			}
			r.Warn(from[i], SmallFirst, finding.Values{"small": small.Name, "small_thread": small.Thread.Name, "large": large.Name, "large_thread": large.Thread.Name})
			break
		}
	}
}

// smallest gives the kind of the group with the smallest thread that is known.
func (r *reader) smallest(g sequence.Group) plan.Kind {
	return r.extreme(g, func(a, b plan.Kind) bool { return a.Thread.MajorMm < b.Thread.MajorMm })
}

func (r *reader) largest(g sequence.Group) plan.Kind {
	return r.extreme(g, func(a, b plan.Kind) bool { return a.Thread.MajorMm > b.Thread.MajorMm })
}

func (r *reader) extreme(g sequence.Group, before func(a, b plan.Kind) bool) plan.Kind {
	var found plan.Kind
	for _, k := range r.input.Kinds {
		if k.Thread == nil || !r.kinds.used[k.Name] || !slices.Contains(g.Kinds, k.Name) {
			continue
		}
		if found.Thread == nil || before(k, found) {
			found = k
		}
	}
	return found
}

// star is a place in the file that asks for the way star, and for which kinds.
type star struct {
	at    *nodes.Node
	kinds []string
}

// checkStars warns of a star where no bolt circle is. It comes after the
// clusters, which count as one place each.
func (r *reader) checkStars() {
	if r.fasteners.broken || len(r.input.Joint.Clusters) > 0 {
		return
	}
	lie := map[string]bool{} // many stages go over the same kinds
	for _, s := range r.stars {
		kinds := strings.Join(s.kinds, "\n")
		if _, known := lie[kinds]; !known {
			lie[kinds] = onBoltCircles(r.input.Joint, s.kinds)
		}
		if !lie[kinds] {
			r.Warn(s.at, StarOffCircle, nil)
		}
	}
}

// onBoltCircles says whether the fasteners of the kinds lie on one circle, or
// most of them evenly on rings round the centre of all.
func onBoltCircles(j geometry.Joint, kinds []string) bool {
	var members []int
	var points []geometry.Point
	for i, f := range j.Fasteners {
		if len(kinds) == 0 || slices.Contains(kinds, f.Kind) {
			members, points = append(members, i), append(points, f.At)
		}
	}
	centre := geometry.Enclose(points).Centre
	if geometry.OneCircle(points, centre) {
		return true
	}
	onRings := 0
	for _, ring := range sequence.Rings(j, members) {
		if isEven(j, ring, centre) {
			onRings += len(ring)
		}
	}
	return 2*onRings > len(members)
}

// isEven says whether a ring is a bolt circle, whole or with up to a fifth of
// its holes missing. With more of them missing the corners of an oblong would be
// a circle too.
func isEven(j geometry.Joint, ring []int, centre geometry.Point) bool {
	if len(ring) < 3 {
		return false
	}
	deg := make([]float64, len(ring))
	for k, i := range ring {
		deg[k] = j.Fasteners[i].At.AngleFrom(centre)
	}
	slices.Sort(deg)
	first := deg[0]
	for k := range deg {
		deg[k] -= first
	}
	places, count := geometry.EvenPlaces(deg)
	return places != nil && 5*(count-len(ring)) <= count
}

// checkMirrorTitle warns of a second bank that is called as the first: a mirror
// over a file that is built on, whose title stays.
func (r *reader) checkMirrorTitle(f form.Fields) {
	mirror, title := f.Node.Get("mirror"), f.Node.Get("title")
	if mirror != nil && title != nil && title.File.Level > mirror.File.Level {
		r.Warn(mirror, MirrorTitle, finding.Values{"title": title.Called()})
	}
}
