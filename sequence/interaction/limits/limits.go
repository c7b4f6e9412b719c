// Package limits has all limits for judging a prediction, each with its reason.
// It decides nothing and imports nothing.
package limits

// MostBolts is the most that a prediction accepts: the work grows with the
// cube, and this many take a quarter of a minute and 500 MB.
const MostBolts = 1000

// Classes, by the worst bolt after the last pass, in percent of its target
// (engineering judgement).
const (
	NegligibleFromPercent = 95
	NoticeableFromPercent = 85
)

// What counts as low, lost, noticeable, even or level.
const (
	// LowFromPercent is where a bolt counts among the lowest: a difference that
	// no wrench can measure is not reported (engineering judgement).
	LowFromPercent = 99.5
	// LeastTaken is the smallest reported loss, in percent of the target.
	LeastTaken = 1
	// FeltPercent is what a bolt must lack before a wrench turns it at the same
	// torque again: static friction in the thread is higher than sliding
	// friction (engineering estimate).
	FeltPercent = 5
	// HardlyUnevenMm is what nobody notices on a part.
	HardlyUnevenMm = 0.03
	// EvenMinPercent and EvenSDPercent are the aim of repeat passes: no bolt
	// below the first, and an elastic scatter of a third of that of friction,
	// or of the second whatever the friction (engineering judgement).
	EvenMinPercent = 95
	EvenSDPercent  = 1
	// MostRepeats is more than anyone would do.
	MostRepeats = 50
)

// The first pass over a loose part.
const (
	// SnugTo is the share of the torque that brings the faces together (common
	// practice; the model's prototype showed the part rocking without it).
	SnugTo = 0.10
	// SnugShare is the most that the first pass should use (engineering
	// judgement; 10 % is usual).
	SnugShare = 0.5
	// SameUnevenShare and SameUnevenMm are the difference up to which a part
	// counts as equally even: a tenth, or what nobody notices. SamePoints is
	// the same for the lowest bolt, in percentage points.
	SameUnevenShare = 0.1
	SameUnevenMm    = 0.02
	SamePoints      = 1
)

// ThinReach is how far a load must spread in a plate, in its thicknesses, for
// thin-plate theory: compared with a thick plate, neighbours were 5 to 17 % too
// strong at 0.8 to 1.
const ThinReach = 0.8

// When another way is worth asking for.
const (
	// WorthPoints is the least by which a change must raise the worst bolt on
	// the softest gasket, in percent of its target, to ask the maker about it
	// (engineering judgement: less is hidden by friction).
	WorthPoints = 3
	// WorthStrongPoints is the same if the joint stays far from even.
	WorthStrongPoints = 10
	// EasierPoints is how much more a change must gain than an easier one.
	EasierPoints = 1
	// HopelessPercent is the least that a bolt must keep in the worst case for
	// a change to count as helpful (engineering judgement).
	HopelessPercent = 50
	// MoreUneven is the ratio of unevenness during the work from which the
	// advice mentions it.
	MoreUneven = 1.25
)

// How much better the plan's order must be at every stiffness of the gasket for
// its figure to be given as a reason (engineering judgement): percentage points
// of the lowest bolt, and share of the unevenness.
const (
	TellingPoints = 5
	TellingShare  = 0.8
)

// Share of cross-talk in the scatter of cross-talk and friction together from
// which it counts equally, and from which it dominates (engineering judgement).
const (
	CountsAlike = 1.0 / 3
	CountsMore  = 2.0 / 3
)

// Targets that compensate for the loss.
const (
	// MostOfYield is the axial share of the yield stress that no target exceeds
	// (engineering estimate; torsion takes its share while the wrench turns).
	MostOfYield = 0.9
	// UsualCap is how far they may exceed the target (engineering judgement).
	UsualCap = 1.1
)
