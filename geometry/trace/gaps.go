package trace

import (
	"image"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace/gaps"
	"drawdown/geometry/trace/rings"
	"drawdown/geometry/unit"
)

// lookInGaps doubts the places where the layout of the holes for bolts has a gap,
// and looks there again with less asked of an edge.
func (f *Found) lookInGaps(picture *image.Gray) {
	var places []geometry.Point
	var diameters []float64
	for _, s := range f.Shapes {
		if s.Role == Fastener {
			places, diameters = append(places, s.At), append(diameters, s.DiameterMm)
		}
	}
	usual := median(diameters)
	for _, s := range f.candidates() { // as sure as a hole where the size is right
		if math.Abs(s.DiameterMm-usual) < agreedShare*usual {
			places = append(places, s.At)
		}
	}
	for _, gap := range gaps.Find(places) {
		if i := f.at(gap.At, usual/2); i >= 0 {
			if s := &f.Shapes[i]; s.Role == Candidate {
				s.doubt(Gap, finding.Values{"by": string(gap.By), "diameter": unit.Length(usual), "seen": s.Kept})
			}
			continue
		}
		s := Shape{Role: Candidate, Group: -1, At: gap.At, DiameterMm: usual, Pixel: f.View.Pixel(gap.At)}
		if seen, ok := rings.Look(picture, s.Pixel, usual/2/f.PixelMm); ok {
			s.Kept = seen.Round
		}
		s.doubt(Gap, finding.Values{"by": string(gap.By), "diameter": unit.Length(usual), "seen": s.Kept})
		f.Shapes = append(f.Shapes, s)
	}
}

// at returns the shape that lies within a distance of a place, or the opening round
// it; -1 for none.
func (f *Found) at(p geometry.Point, nearMm float64) int {
	return slices.IndexFunc(f.Shapes, func(s Shape) bool {
		return s.At.Distance(p) < max(nearMm, math.Min(s.DiameterMm/2, 3*nearMm)) || (s.Role == Bore || s.Role == Port) && geometry.Inside(p, s.Edge)
	})
}
