// Package survey calculates the positions of holes from the distances between
// them, as measured with a caliper. It uses least squares over all readings. It
// also reports the standard error of each hole, the reading that does not fit
// the others, and the holes that the readings do not locate.
//
// All lengths are in millimetres. The package is pure: it uses no files and no
// clock, and the same readings give the same places, bit for bit. It may import
// geometry and its units. Report has what a person needs to know about a
// solution.
package survey

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Limits of a network. A part with more holes has a drawing.
const (
	MostHoles    = 200
	MostReadings = 4000
)

// UsualAccuracyMm is the default standard deviation of a caliper reading
// (common practice, no source).
const UsualAccuracyMm = 0.05

// Reading is one measured distance between the centres of two holes.
type Reading struct {
	From, To int     // indices of the holes, from 0
	Distance float64 // centre to centre, in mm
}

// Network is the holes of a part and the readings between them.
type Network struct {
	Holes     int
	Diameters []float64 // of the holes; 0 or nil if unknown
	Readings  []Reading
	Ways      []Way // how each reading was taken; nil: centre to centre
	// Level are two holes that are drawn level, the first at the origin and
	// left of the second. Two equal indices mean that none are named; then the
	// long axis is drawn level.
	Level [2]int
	// Above and Below list holes on either side of the line through the level
	// holes. They distinguish the part from its mirror image.
	Above, Below []int
	// AccuracyMm is the standard deviation of one reading; 0 means
	// UsualAccuracyMm.
	AccuracyMm float64
	// RoundedToMm is the unit of the last digit of the readings; 0 means not
	// rounded.
	RoundedToMm float64
}

// isSound reports whether the network is valid, as the reader of survey files
// ensures.
func (n Network) isSound() bool {
	named := slices.Concat(n.Level[:], n.Above, n.Below)
	for _, r := range n.Readings {
		if r.From == r.To || !(r.Distance > 0) || math.IsInf(r.Distance, 0) {
			return false
		}
		named = append(named, r.From, r.To)
	}
	return n.Holes >= 2 && n.Holes <= MostHoles && (n.Diameters == nil || len(n.Diameters) == n.Holes) && (n.Ways == nil || len(n.Ways) == len(n.Readings)) &&
		len(n.Readings) > 0 && len(n.Readings) <= MostReadings && (n.AccuracyMm == 0 || unit.Sensible.Accuracy.Check("", n.AccuracyMm) == nil) &&
		n.RoundedToMm >= 0 && !math.IsInf(n.RoundedToMm, 0) &&
		slices.Min(named) >= 0 && slices.Max(named) < n.Holes
}

// stated is the standard deviation of one reading as measured.
func (n Network) stated() float64 { return cmp.Or(n.AccuracyMm, UsualAccuracyMm) }

// accuracy is the standard deviation of one reading as written. Rounding adds
// an error of up to half a digit, uniformly distributed: its variance is a
// twelfth of the square of the digit.
func (n Network) accuracy() float64 {
	return math.Sqrt(n.stated()*n.stated() + n.RoundedToMm*n.RoundedToMm/12)
}

// Solution is the result of a survey.
type Solution struct {
	// Points are the places, one per hole, in the frame of the network. For
	// holes that are not fixed they are only one of many possibilities.
	Points []geometry.Point
	// ErrorsMm are the standard errors of the places: the root of the sum of
	// the variances along x and y; infinite for a hole that is not fixed.
	ErrorsMm []float64
	// Residuals are the readings minus the distances between the places, one
	// per reading, including those left out.
	Residuals []float64
	// Out marks the readings that were left out of the fit as wrong.
	Out []bool
	// Suspect lists the readings that do not fit the others, most likely first.
	// If Rivals is set, the last ones cannot be told apart, and none of them
	// was left out.
	Suspect []int
	Rivals  bool
	// WrongDiameters lists the stated diameters that do not fit. The readings over
	// the edges of these holes are used with the diameters that do.
	WrongDiameters []WrongDiameter
	// Disputed lists the readings of each hole at which several were left out
	// and too few of the others agree to say which are wrong.
	Disputed map[int][]int
	// Unchecked lists the readings whose errors no other reading would reveal.
	Unchecked []int
	// RMSMm is the root mean square of the residuals of the readings used.
	RMSMm float64
	// ScatterMm is the standard deviation of one reading used for the errors:
	// the stated accuracy, or more if the readings differ by more.
	ScatterMm float64
	// Loose lists the holes that the readings do not fix, in order of index.
	Loose []Loose
	// Mirrored reports that the mirror image of the part fits equally well,
	// because no named hole distinguishes the two.
	Mirrored bool
	// Straight reports that all holes were assumed to be on one straight line,
	// which fits the readings. The readings say almost nothing about positions
	// across it.
	Straight bool
}

// Loose is a hole that the readings do not fix.
type Loose struct {
	Hole  int
	Why   finding.Code   // Free, Weak, Disputed or TwoPlaces
	Other geometry.Point // the second position for TwoPlaces
	// Next lists distances to measure, each a pair of holes with the loose one
	// first.
	Next [][2]int
}

// weakShare is the standard error, in accuracies of one reading, above which a
// hole counts as not fixed.
const weakShare = 20

// Solve calculates the network. The error says why the input is not a network.
// Whatever the readings leave open is in the solution.
func Solve(n Network) (Solution, error) {
	if !n.isSound() {
		return Solution{}, finding.Failed(NoNetwork, nil)
	}
	accuracy := n.accuracy()
	// With a narrow scale, good readings would lose their influence before the
	// places are close.
	rough := start(n.Holes, n.Readings, max(accuracy, UsualAccuracyMm))
	n, wrong := n.correctDiameters(rough, accuracy)
	if len(wrong) > 0 && !wrong[0].OrReading {
		rough = start(n.Holes, n.Readings, max(accuracy, UsualAccuracyMm))
	}
	s := snoop(rough, n.Readings, accuracy)
	s.WrongDiameters = wrong
	used, _ := s.used(n.Readings)
	at := s.Points
	if line, ok := straightened(at, used, s.ScatterMm); ok {
		at, s.Straight = line, true
	}
	stiff := newStiffness(at, used, s.Straight)
	core := stiff.core(used, n.Level, s.Straight)
	at, decided := n.oriented(at, core)
	var folded []fold
	if !s.Straight {
		at, folded = n.unfold(at, used, core, s.ScatterMm)
		at, decided = n.oriented(at, core)
		stiff = newStiffness(at, used, false)
	}
	s.Points, s.Mirrored = at, !decided && !s.Straight
	s.ErrorsMm = errorsMm(at, used, core, s.Straight, s.ScatterMm)
	s.measure(n, used, stiff)
	s.Disputed = s.disputed(n.Readings, wrong)
	s.widen(n.Readings, s.rivals(), s.Disputed, stiff, n.Diameters)
	s.Loose = loose(s, used, core, folded)
	return s, nil
}

func (s *Solution) measure(n Network, used []Reading, stiff stiffness) {
	for i, r := range n.Readings {
		s.Residuals = append(s.Residuals, r.residual(s.Points))
		if !s.Out[i] && stiff.checked(r) < hardlyChecked {
			s.Unchecked = append(s.Unchecked, i)
		}
	}
	s.RMSMm = math.Sqrt(squares(s.Points, used, 1) / float64(len(used)))
}

// straightened returns the fit with all holes on a line along x. ok is false if
// the readings do not fit a line.
func straightened(at []geometry.Point, used []Reading, accuracy float64) ([]geometry.Point, bool) {
	const flat = 0.1 // of the length: holes further off are not a row
	axis, middle := geometry.LongAxis(at), geometry.Centroid(at)
	low, high := math.Inf(1), math.Inf(-1)
	line := make([]geometry.Point, len(at))
	for i, p := range at {
		line[i].X = p.Sub(middle).Dot(axis)
		low, high = math.Min(low, line[i].X), math.Max(high, line[i].X)
	}
	if len(at) < 3 {
		return line, true
	}
	if geometry.OffLine(at, axis) > flat*(high-low) {
		return nil, false
	}
	line = adjust(line, used, nil, fully)
	// There is one unknown fewer across the line for each hole but two.
	fewer := float64(len(at) - 2)
	return line, squares(line, used, accuracy)-squares(at, used, accuracy) < fewer+4*math.Sqrt(2*fewer)
}
