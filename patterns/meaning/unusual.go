package meaning

import (
	"maps"
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
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

// checkSizeByHole warns that holes replace threads that are not stated.
func (r *reader) checkSizeByHole(f form.Fields) {
	if r.kinds.broken || slices.Contains(slices.Collect(maps.Values(r.kinds.faulty)), true) {
		return // a thread may be stated but unreadable
	}
	if why, found := r.input.SizeByHole(); found {
		at := f.Node.KeyNode("kinds")
		r.Report(at.File, at.Line, at.Column, why)
	}
}

// star is a place in the file that asks for the way star, and the kinds it is
// for.
type star struct {
	at    *nodes.Node
	kinds []string
}

// checkStars warns of a star without a bolt circle. A cluster counts as one
// place.
func (r *reader) checkStars() {
	if !r.fasteners.placed() || len(r.input.Joint.Clusters) > 0 {
		return
	}
	lie := map[string]bool{} // many stages are for the same kinds
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

// gap is a place that a bolt circle omits.
type gap struct {
	at     *nodes.Node // the entry of the circle
	centre geometry.Point
	place  geometry.Point
}

// checkCircleGaps warns of fasteners in the direction of a place that a bolt
// circle omits, but off the circle: its diameter, or their radius, is probably
// wrong.
func (r *reader) checkCircleGaps() {
	const (
		direction  = 2.0 // degrees
		tolerance  = 0.5 // mm
		near, away = 0.6, 1.7
	)
	found := map[*nodes.Node][]string{}
	var order []*nodes.Node
	var radius, of float64
	for _, g := range r.gaps {
		full := g.place.Distance(g.centre)
		for i, f := range r.input.Joint.Fasteners {
			d := f.At.Distance(g.centre)
			if r.fasteners.from[i] == g.at || d < near*full || d > away*full || geometry.Apart(f.At.AngleFrom(g.centre), g.place.AngleFrom(g.centre)) > direction {
				continue
			}
			if math.Abs(d-full) <= tolerance {
				continue
			}
			if found[g.at] == nil {
				order, radius, of = append(order, g.at), d, full
			}
			found[g.at] = append(found[g.at], f.ID)
		}
	}
	if len(order) > 0 {
		r.Warn(order[0], OffGap, finding.Values{"ids": found[order[0]], "radius": unit.Length(radius), "circle": unit.Length(of)})
	}
}
