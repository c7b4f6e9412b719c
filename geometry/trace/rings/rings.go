// Package rings finds circles in a picture by their edges alone: wherever the
// brightness steps along a ring, however bright both sides are. It knows nothing
// of part and background, so that it sees what one threshold cannot: holes under
// oil, in a bead of sealant, plugged or torn. Places and sizes are in pixels. It
// may import geometry.
package rings

import (
	"cmp"
	"image"
	"math"
	"slices"

	"drawdown/geometry"
)

// Ring is a circle that the brightness steps along.
type Ring struct {
	Centre geometry.Point // from the top left corner of the picture
	Radius float64
	// Bright says that the inside is the brighter side.
	Bright bool
	Round  float64          // share of the way round that the step was seen, 0 to 1
	Faint  float64          // the same, however faint the step
	Step   float64          // grey levels between inside and outside, the median
	Edge   []geometry.Point // where the step was seen
}

// Limits of what counts as a ring (common practice, no source).
const (
	leastRound = 0.5 // of the way round
	mostRings  = 400
	leastSide  = 12 // pixels of the smallest copy
)

// Find returns the rings of radii between two limits, the surest first. Each
// radius is looked for in a copy of the picture in which it is few pixels long.
func Find(picture *image.Gray, smallest, largest float64) []Ring {
	var found []Ring
	factor := max(1, int(smallest/finestRadius))
	for ; finestRadius*float64(factor) <= largest && factor*leastSide <= min(picture.Rect.Dx(), picture.Rect.Dy()); factor *= 2 {
		level := shrunk(picture, factor)
		for _, bright := range []bool{true, false} {
			for _, at := range level.centres(bright) {
				at.x, at.y, at.radius = (at.x+0.5)*float64(factor), (at.y+0.5)*float64(factor), at.radius*float64(factor)
				r, ok := measured(picture, at, bright)
				if ok && r.Round >= leastRound && r.Step >= level.leastStep() && r.Radius >= smallest && r.Radius <= largest {
					found = append(found, r)
				}
			}
		}
	}
	return distinct(found)
}

// Look measures the ring near a place, of about a radius, with less asked of it:
// where something else says that a hole must be.
func Look(picture *image.Gray, at geometry.Point, radius float64) (Ring, bool) {
	best := Ring{}
	for _, bright := range []bool{true, false} {
		if r, ok := measured(picture, centre{at.X, at.Y, radius}, bright); ok && r.Round > best.Round {
			best = r
		}
	}
	return best, best.Round >= 0.3
}

// distinct leaves of rings that lie on one another the surest.
func distinct(all []Ring) []Ring {
	slices.SortStableFunc(all, func(a, b Ring) int {
		return cmp.Or(cmp.Compare(b.sureness(), a.sureness()), cmp.Compare(a.Centre.Y, b.Centre.Y), cmp.Compare(a.Centre.X, b.Centre.X))
	})
	var kept []Ring
	for _, r := range all {
		same := func(k Ring) bool {
			return k.Bright == r.Bright && k.Centre.Distance(r.Centre) < 0.35*k.Radius && math.Abs(k.Radius-r.Radius) < 0.15*k.Radius
		}
		if !slices.ContainsFunc(kept, same) && len(kept) < mostRings {
			kept = append(kept, r)
		}
	}
	return kept
}

func (r Ring) sureness() float64 { return r.Round * math.Sqrt(r.Step) }
