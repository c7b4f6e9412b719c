package meaning

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
)

// gap is a place that a bolt circle leaves out.
type gap struct {
	at     *nodes.Node // the entry of the circle
	centre geometry.Point
	place  geometry.Point
}

// checkCircleGaps warns of fasteners that stand in the direction of a place that a bolt circle
// leaves out, but not on the circle: its diameter, or their radius, is probably wrong.
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
