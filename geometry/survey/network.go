// Package survey finds where the holes of a part lie from the distances
// between them, as a caliper gives them: by least squares over all readings,
// with the standard error of each hole, the reading that does not fit the
// others, and the holes that the readings do not fix.
//
// All lengths are in millimetres. The package is pure: it knows no file and no
// clock, and the same readings give the same places, bit for bit.
package survey

import (
	"errors"
	"fmt"
	"math"
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

// CentreFromOutside gives the centre distance of two holes from the distance
// over their far edges.
func CentreFromOutside(outside, diameterA, diameterB float64) float64 {
	return outside - (diameterA+diameterB)/2
}

// CentreFromInside gives the centre distance of two holes from the distance
// between their near edges.
func CentreFromInside(inside, diameterA, diameterB float64) float64 {
	return inside + (diameterA+diameterB)/2
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

// check refuses what is no network.
func (n Network) check() error {
	switch {
	case n.Holes < 2:
		return errors.New("a survey needs at least 2 holes")
	case n.Holes > MostHoles:
		return fmt.Errorf("a survey of %d holes is too large; allowed: up to %d", n.Holes, MostHoles)
	case len(n.Readings) == 0:
		return errors.New("a survey needs readings")
	case len(n.Readings) > MostReadings:
		return fmt.Errorf("a survey of %d readings is too large; allowed: up to %d", len(n.Readings), MostReadings)
	case n.AccuracyMm < 0 || math.IsNaN(n.AccuracyMm) || math.IsInf(n.AccuracyMm, 0):
		return fmt.Errorf("the accuracy %g is no standard deviation; allowed: more than 0", n.AccuracyMm)
	case n.Diameters != nil && len(n.Diameters) != n.Holes:
		return fmt.Errorf("%d diameters for %d holes", len(n.Diameters), n.Holes)
	}
	for i, r := range n.Readings {
		switch {
		case !n.has(r.From) || !n.has(r.To):
			return fmt.Errorf("reading %d names a hole that is not there; allowed: 0 to %d", i+1, n.Holes-1)
		case r.From == r.To:
			return fmt.Errorf("reading %d goes from hole %d to itself", i+1, r.From)
		case !(r.Distance > 0) || math.IsInf(r.Distance, 0):
			return fmt.Errorf("reading %d is %g mm; allowed: more than 0", i+1, r.Distance)
		}
	}
	for _, hole := range append(append([]int{n.Level[0], n.Level[1]}, n.Above...), n.Below...) {
		if !n.has(hole) {
			return fmt.Errorf("hole %d is not there; allowed: 0 to %d", hole, n.Holes-1)
		}
	}
	return nil
}

func (n Network) has(hole int) bool { return hole >= 0 && hole < n.Holes }

// accuracy is the standard deviation of one reading.
func (n Network) accuracy() float64 {
	if n.AccuracyMm > 0 {
		return n.AccuracyMm
	}
	return UsualAccuracyMm
}
