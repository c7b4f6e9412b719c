package meaning

import (
	"maps"
	"slices"
	"strings"

	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
)

// checkLargestFirst warns of groups that are finished before one with a larger
// thread.
func (r *reader) checkLargestFirst() {
	for i, why := range r.input.SmallBeforeLarge() {
		at := r.groups[i]
		r.Report(at.File, at.Line, at.Column, why)
	}
}

// checkSizeByHole warns that holes stand in for threads that are not stated.
func (r *reader) checkSizeByHole(f form.Fields) {
	if r.kinds.broken || slices.Contains(slices.Collect(maps.Values(r.kinds.faulty)), true) {
		return // a thread may be stated that cannot be read
	}
	if why, found := r.input.SizeByHole(); found {
		at := f.Node.KeyNode("kinds")
		r.Report(at.File, at.Line, at.Column, why)
	}
}

// star is a place in the file that asks for the way star, and for which kinds.
type star struct {
	at    *nodes.Node
	kinds []string
}

// checkStars warns of a star where no bolt circle is. Clusters count as
// one place each.
func (r *reader) checkStars() {
	if !r.fasteners.placed() || len(r.input.Joint.Clusters) > 0 {
		return
	}
	lie := map[string]bool{} // many stages go over the same kinds
	for _, s := range r.stars {
		kinds := strings.Join(s.kinds, "\n")
		if _, known := lie[kinds]; !known {
			lie[kinds] = r.input.OnBoltCircles(s.kinds)
		}
		if !lie[kinds] {
			r.Warn(s.at, StarOffCircle, nil)
		}
	}
}
