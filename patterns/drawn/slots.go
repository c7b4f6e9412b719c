package drawn

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/patterns/dxf"
)

// slot is a long hole: a closed line of two straight sides and two half circles.
type slot struct {
	middle            geometry.Point
	widthMm, lengthMm float64
}

// slotOf reports whether the closed line is a slot. All its points must be half
// the width from the line between the middles of its ends.
func slotOf(path []geometry.Point) (slot, bool) {
	const fewest = 8 // points; a rectangle has fewer
	if len(path) < fewest {
		return slot{}, false
	}
	side := func(i int) float64 { return path[i].Distance(path[(i+1)%len(path)]) }
	first := 0
	for i := range path {
		if side(i) > side(first) {
			first = i
		}
	}
	along := path[(first+1)%len(path)].Sub(path[first]).Scale(1 / side(first))
	across := geometry.Point{X: -along.Y, Y: along.X}
	low, high := geometry.Point{X: math.Inf(1), Y: math.Inf(1)}, geometry.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range path {
		u, v := dot(p, along), dot(p, across)
		low = geometry.Point{X: min(low.X, u), Y: min(low.Y, v)}
		high = geometry.Point{X: max(high.X, u), Y: max(high.Y, v)}
	}
	// The points of flattened ends may all miss the tips, by less than FlatMm.
	s := slot{widthMm: high.Y - low.Y, lengthMm: high.X - low.X}
	s.middle = along.Scale((low.X + high.X) / 2).Add(across.Scale((low.Y + high.Y) / 2))
	straight := s.lengthMm - s.widthMm
	const shortest = 0.1 // of the width; else it is a hole that is not quite round
	if straight < shortest*s.widthMm {
		return slot{}, false
	}
	for _, p := range path {
		off := p.Sub(s.middle)
		beyond := max(0, math.Abs(dot(off, along))-straight/2)
		if math.Abs(math.Hypot(beyond, dot(off, across))-s.widthMm/2) > 2*dxf.FlatMm {
			return slot{}, false
		}
	}
	return s, true
}

func dot(a, b geometry.Point) float64 { return a.X*b.X + a.Y*b.Y }

// reportSlots names the openings that may be long holes for fasteners.
func (d *drawn) reportSlots() {
	if d.ours {
		return
	}
	for _, p := range d.Paths {
		if s, ok := slotOf(p.Points); ok && s.widthMm <= holes.BoreFromMm {
			d.report(p.Line, finding.Warned(SlotRead, finding.Values{
				"width": unit.Length(s.widthMm), "length": unit.Length(s.lengthMm), "x": unit.Length(s.middle.X + 0), "y": unit.Length(s.middle.Y + 0),
			}))
		}
	}
}
