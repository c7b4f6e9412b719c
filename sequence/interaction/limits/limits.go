// Package limits has every limit by which a prediction is judged, each with its
// ground. It decides nothing and imports nothing.
package limits

// MostBolts is how many a prediction takes: the work grows with their cube, and so
// many take a quarter of a minute and 500 MB.
const MostBolts = 1000

// Classes, by the worst bolt after the last pass, in percent of its target
// (engineering judgement).
const (
	NegligibleFromPercent = 95
	NoticeableFromPercent = 85
)

// What counts as low, lost, felt, even or level.
const (
	// LowFromPercent is where a bolt counts among the lowest: what no wrench can
	// tell from the target is no news (engineering judgement).
	LowFromPercent = 99.5
	// LeastTaken is what is worth telling of a loss, in percent of the target.
	LeastTaken = 1
	// FeltPercent is what a bolt must lack before a wrench turns it at the same
	// torque again: at rest a thread holds faster than on the move (engineering
	// estimate).
	FeltPercent = 5
	// HardlyUnevenMm is what nobody sees or feels on a part.
	HardlyUnevenMm = 0.03
	// EvenMinPercent and EvenSDPercent are what a repeat is done for: no bolt below
	// the one, and an elastic scatter of a third of that of friction, or of the other
	// whatever the friction (engineering judgement).
	EvenMinPercent = 95
	EvenSDPercent  = 1
	// MostRepeats is where nobody goes on.
	MostRepeats = 50
)

// The first pass over a loose part.
const (
	// SnugTo is the share of the torque that brings the faces together (common
	// practice; the prototype of the model found a see-saw without it).
	SnugTo = 0.10
	// SnugShare is the most that the first pass should take (engineering judgement;
	// 10 % is usual).
	SnugShare = 0.5
	// SameUnevenShare and SameUnevenMm say up to which difference a part lies as
	// even as before: a tenth, or what nobody feels. SamePoints is the same for the
	// lowest bolt, in points of percent.
	SameUnevenShare = 0.1
	SameUnevenMm    = 0.02
	SamePoints      = 1
)

// ThinReach is how far a load must reach in a plate, in its thicknesses, for
// thin-plate theory: against a thick plate the neighbours came out 5 to 17 % too
// strong at 0.8 to 1.
const ThinReach = 0.8

// When another way is worth asking for.
const (
	// WorthPoints is by how much a change must lift the worst bolt on the softest
	// gasket, in percent of its target, to be worth a word to the maker
	// (engineering judgement: below it nobody finds it again behind the friction).
	WorthPoints = 3
	// WorthStrongPoints is the same where the joint is far from even all the same.
	WorthStrongPoints = 10
	// EasierPoints is by how much more a change must lift than an easier one.
	EasierPoints = 1
	// HopelessPercent is what a bolt must keep at the worst for a change to be
	// called one that helps (engineering judgement).
	HopelessPercent = 50
	// MoreUneven is how many times as uneven the part must lie on the way for that
	// to be told with the advice.
	MoreUneven = 1.25
)

// How much better the plan's order must be at every stiffness of the gasket for
// its figure to be held up as a reason (engineering judgement): so many points
// of percent more in the lowest bolt, such a share less out of true.
const (
	TellingPoints = 5
	TellingShare  = 0.8
)

// What cross-talk must come to beside friction, as a share of both together, to
// count alike, and to rule (engineering judgement).
const (
	CountsAlike = 1.0 / 3
	CountsMore  = 2.0 / 3
)

// Targets that make up for the loss.
const (
	// MostOfYield is the axial share of the yield stress that no target exceeds
	// (engineering estimate; torsion takes its part while the wrench turns).
	MostOfYield = 0.9
	// UsualCap is how far they go beyond the target (engineering judgement).
	UsualCap = 1.1
)
