package words

// Card is the words of the card of a joint.
type Card struct {
	Tighten, Loosen             string // in the badges
	Stages, TickAsYouGo, Before string // headings
	Order                       string // names the row of numbers in the tick grid
	Bolt                        string // a fastener, where the file names no kinds

	Stage  Stage
	Part   Part
	Checks Checks

	TighteningTrouble, LooseningTrouble Trouble

	Figures   string // Figures: %s. (who states them)
	WorkedOut string // what ≈ means
	NoSource  string // in place of Figures
}

// Stage is the words in the boxes of the stages.
type Stage struct {
	None string // the file gives no stages

	All    string // all %d
	AllOf  string // all %s: the fasteners of some kinds
	FromTo string // %d–%d: first and last number

	Slacken, BreakLoose, Settle string
	Out                         string // the large word beside the picture of a bolt that comes out
	ToItsPlace, Scrap           string // what happens to what comes out
	SomeToTheirPlace            string // where some kinds are scrap
	Share                       string // %s %% of a worked-out torque

	Until   string // turned back again until %s
	ByTurns string // to the figure by %s at a time
	Rises   string // the part, by %s

	Crosswise, InASpiral, MiddleOutwards, CentreOutwards string
	RoundClockwise, RoundAnticlockwise                   string
}

// Part is the words under the drawing of the part.
type Part struct {
	Unplaced      Plural // %d numbers found no room
	SmallUnplaced Plural // %d small ones did not
	OnDetails     string // all numbers stand on the details
	Detail        string // detail %d of %d
	SmallNumber   string // Small number: %s.
	// What the small number is; short, since it stands in the tick grid too.
	// Mark is written on the part, or cast.
	Cast, Mark, Tightening string
	// SmallName says that the small words are the fasteners' ids.
	SmallName string
	// CastOrder says that the order is that of the numbers cast on the part, and
	// CastOrderOf that it is for the kinds %s.
	CastOrder, CastOrderOf string

	// LargeCast says that the large numbers are cast on the part; LargeCastOf
	// that they are so for the kinds %s, and the tightening order for the rest.
	LargeCast, LargeCastOf string

	Arrows, Numbers    string // how the order is followed
	BySmall            string // where the small numbers are the order
	Along, AlongArrows string // start: black, end: double ring, order: %s; and the arrows besides
	Loosened           string // order of loosening: %s
	Up, Down           string // %d up to %d
	Then               string // between two of these
	NoSpringLoad       string
	Dowel              string // how one is drawn
}

// Checks is the words of what to see to first.
type Checks struct {
	BeforeLoosening []string

	AllFasteners                       string
	ForKinds                           string // %s: %s.
	UsedOnce, InspectFirst, MayGoBack  string // ends of ForKinds
	InspectStud                        string // another
	InspectTo                          string // another, with the longest that goes back
	Dry                                string // end of ForKinds
	Lubricated, InState                string // ends of ForKinds, with one of Lubricants and one of States
	TappedHoles, ScrewedInByHand, Last string
	ScrewedIn                          string // by hand, where there are no stages

	Sockets    string // sockets: %s, such as 16 mm main, 13 mm side
	HeldNut    string // %s: across flats of the nut behind
	HeadAndNut string // %s: across flats of head and nut behind, which are alike
	Key        string // %s: across flats of a hexagon key
	ByStandard string // %s, %s: across flats, and the standard that states it
	Wrench     string // calibrated torque wrench for %s
	AngleGauge string
	And        string // between the two
	Span       string // %s to %s: two torques in different units

	// Lubricants are those that drawdown knows, by the words that a file may
	// say for them. Other words stay as the file has them.
	Lubricants map[string]string
	States     map[string]string // of surfaces that nothing is put on
}

// Trouble is the box for when it goes wrong.
type Trouble struct {
	Title string
	Steps []string
}
