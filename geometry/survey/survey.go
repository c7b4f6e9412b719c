// Package survey calculates the positions of holes from the distances between
// them, as measured with a caliper: by least squares over all readings, with
// the standard error of each hole, the reading that does not fit the others,
// and the holes that the readings do not locate.
//
// All lengths are in millimetres. The package is pure: it knows no files and no
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
	// RoundedToMm is what one in the last digit of the readings is; 0: they are
	// not rounded.
	RoundedToMm float64
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
		len(n.Readings) > 0 && len(n.Readings) <= MostReadings && (n.AccuracyMm == 0 || unit.Sensible.Accuracy.Check("", n.AccuracyMm) == nil) &&
		n.RoundedToMm >= 0 && !math.IsInf(n.RoundedToMm, 0) &&
		slices.Min(named) >= 0 && slices.Max(named) < n.Holes
}

// stated is the standard deviation of one reading, as it is taken.
func (n Network) stated() float64 { return cmp.Or(n.AccuracyMm, UsualAccuracyMm) }

// accuracy is that of one reading as it is written. What is rounded is off by up
// to half a last digit, any error as likely as another: its variance is a twelfth
// of the square of the digit.
func (n Network) accuracy() float64 {
	return math.Sqrt(n.stated()*n.stated() + n.RoundedToMm*n.RoundedToMm/12)
}

// Solution is what the readings say.
type Solution struct {
	// Points are the places, one a hole, in the frame of the network. Those of
	// holes that are not fixed are only one of many.
	Points []geometry.Point
	// ErrorsMm are the standard errors of the places: the root of the sum of
	// the variances along x and y; infinite for a hole that is not fixed.
	ErrorsMm []float64
	// Residuals are the readings less the distances of the places, one a
	// reading, those left out among them.
	Residuals []float64
	// Out are the readings that were left out of the fit as wrong.
	Out []bool
	// Suspect are the readings that do not fit the others, the most likely
	// first. Where Rivals is set, the last ones cannot be told apart, and none
	// of them was left out.
	Suspect []int
	Rivals  bool
	// Unchecked are the readings whose errors no other reading would show.
	Unchecked []int
	// RMSMm is the root mean square of the residuals of the readings used.
	RMSMm float64
	// ScatterMm is the standard deviation of one reading that the errors are
	// worked out with: the stated accuracy, or more where the readings differ
	// by more.
	ScatterMm float64
	// Loose are the holes that the readings do not fix, in the order of their
	// numbers.
	Loose []Loose
	// Mirrored says that the mirror image of the part fits as well, as no named
	// hole tells the two apart.
	Mirrored bool
	// Straight says that all holes were taken to lie on one straight line,
	// which the readings fit. Across it they say next to nothing.
	Straight bool
}

// Loose is a hole that the readings do not fix.
type Loose struct {
	Hole  int
	Why   finding.Code   // Free, Weak or TwoPlaces
	Other geometry.Point // the second place, where there are two
	// Next are distances to measure: each is a pair of holes, the loose one
	// first.
	Next [][2]int
}

// weakShare is the standard error, in accuracies of one reading, above which a
// hole counts as not fixed.
const weakShare = 20

// Solve works the network out. The error says what is no network; whatever the
// readings leave open stands in the solution.
func Solve(n Network) (Solution, error) {
	if !n.isSound() {
		return Solution{}, finding.Failed(NoNetwork, nil)
	}
	accuracy := n.accuracy()
	// A narrow scale would let go of good readings before the places are near.
	rough := start(n.Holes, n.Readings, max(accuracy, UsualAccuracyMm))
	s := snoop(rough, n.Readings, accuracy)
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

// straightened returns the fit with all holes on one line along x. Not ok where
// they do not lie on one, as far as the readings tell.
func straightened(at []geometry.Point, used []Reading, accuracy float64) ([]geometry.Point, bool) {
	const flat = 0.1 // of the length, what lies further off is no row
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
	// The places across the line are one unknown less for each hole but two.
	fewer := float64(len(at) - 2)
	return line, squares(line, used, accuracy)-squares(at, used, accuracy) < fewer+4*math.Sqrt(2*fewer)
}
