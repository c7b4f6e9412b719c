// Package survey finds where the holes of a part lie from the distances
// between them, as a caliper gives them: by least squares over all readings,
// with the standard error of each hole, the reading that does not fit the
// others, and the holes that the readings do not fix.
//
// All lengths are in millimetres. The package is pure: it knows no file and no
// clock, and the same readings give the same places, bit for bit. It may import
// geometry and its units. What a person has to know of a solution is in Report.
package survey

import (
	"math"
	"slices"
)

// Limits of a network. A part with more holes has a drawing.
const (
	MostHoles    = 200
	MostReadings = 4000
)

// UsualAccuracyMm is the standard deviation of a caliper reading where nothing
// better is known (common practice, no source).
const UsualAccuracyMm = 0.05

// Reading is one measured distance between the centres of two holes.
type Reading struct {
	From, To int     // holes, by number from 0
	Distance float64 // centre to centre, in mm
}

// Network is a part's holes and the readings between them.
type Network struct {
	Holes     int
	Diameters []float64 // of the holes; 0 or nil where it is not known
	Readings  []Reading
	// Level are two holes that are drawn level, the first at the origin and to
	// the left of the second. Two equal numbers mean that none are named: the
	// long axis is drawn level then.
	Level [2]int
	// Above and Below list holes on either side of the line through the level
	// holes. They tell the part from its mirror image.
	Above, Below []int
	// AccuracyMm is the standard deviation of one reading; 0: UsualAccuracyMm.
	AccuracyMm float64
}

// isSound says that the network is one, as the reader of survey files makes it.
func (n Network) isSound() bool {
	named := slices.Concat(n.Level[:], n.Above, n.Below)
	for _, r := range n.Readings {
		if r.From == r.To || !(r.Distance > 0) || math.IsInf(r.Distance, 0) {
			return false
		}
		named = append(named, r.From, r.To)
	}
	return n.Holes >= 2 && n.Holes <= MostHoles && (n.Diameters == nil || len(n.Diameters) == n.Holes) &&
		len(n.Readings) > 0 && len(n.Readings) <= MostReadings && n.AccuracyMm >= 0 && !math.IsInf(n.AccuracyMm, 0) &&
		slices.Min(named) >= 0 && slices.Max(named) < n.Holes
}

func (n Network) accuracy() float64 {
	if n.AccuracyMm > 0 {
		return n.AccuracyMm
	}
	return UsualAccuracyMm
}
