package words

// Card has the words of the card of a joint.
type Card struct {
	Tighten, Loosen             string // in the badges
	Stages, TickAsYouGo, Before string // headings
	Order                       string // name of the row of numbers in the tick grid
	Bolt                        string // a fastener, if the file names no kinds

	Stage  Stage
	Part   Part
	Checks Checks

	TighteningTrouble, LooseningTrouble Trouble

	Figures   string // Figures: %s. (their source)
	WorkedOut string // meaning of ≈
	NoSource  string // instead of Figures
}

// Stage has the words in the boxes of the stages.
type Stage struct {
	None string // the file gives no stages

	All    string // all %d
	AllOf  string // all %s: the fasteners of some kinds
	FromTo string // %d–%d: first and last number

	Slacken, BreakLoose, Settle string
	Longer                      string // below a stretch
	Out                         string // large word beside the picture of a bolt to remove
	ToItsPlace, Scrap           string // what happens to removed fasteners
	SomeToTheirPlace            string // if some kinds are scrap
	Share                       string // %s %% of a calculated torque

	Until   string // turned back again until %s
	AtOnce  string // %s: how many wrenches
	ByTurns string // in steps of %s up to the figure
	Rises   string // rise of the part, by %s

	Crosswise, InASpiral, MiddleOutwards, CentreOutwards string
	RoundClockwise, RoundAnticlockwise                   string
}

// Part has the words below the drawing of the part.
type Part struct {
	Unplaced      Plural // %d numbers did not fit
	SmallUnplaced Plural // %d small ones did not fit
	OnDetails     string // all numbers are on the details
	Detail        string // detail %d of %d
	SmallNumber   string // Small number: %s.
	// What the small number is; short, because it is also in the tick grid.
	// Mark is written or cast on the part.
	Cast, Mark, Tightening string
	// SmallName says that the small words are the ids of the fasteners.
	SmallName string
	// CastOrder says that the numbers cast on the part are the order;
	// CastOrderOf says so for the kinds %s.
	CastOrder, CastOrderOf string

	// LargeCast says that the large numbers are cast on the part. LargeCastOf
	// says so for the kinds %s; for the rest they are the tightening order.
	LargeCast, LargeCastOf string

	Arrows, Numbers    string // how to follow the order
	BySmall            string // if the small numbers are the order
	Along, AlongArrows string // start: black, end: double ring, order: %s; and the same with arrows
	Loosened           string // loosening order: %s
	Up, Down           string // %d up to %d
	Then               string // between two of these
	NoSpringLoad       string
	Dowel              string // how a dowel is drawn
}

// Checks has the words of the checks before the work.
type Checks struct {
	BeforeLoosening []string

	AllFasteners                       string
	ForKinds                           string // %s: %s.
	UsedOnce, InspectFirst, MayGoBack  string // endings of ForKinds
	InspectStud                        string // another ending
	InspectTo                          string // another ending, with the longest length for reuse
	Dry                                string // ending of ForKinds
	Lubricated, InState                string // endings of ForKinds, with one of Lubricants and one of States
	TappedHoles, ScrewedInByHand, Last string
	ScrewedIn                          string // by hand, if there are no stages

	Sockets     string // sockets: %s, such as 16 mm main, 13 mm side
	HeldNut     string // %s: width across flats of the nut to hold
	HeadAndNut  string // %s: width across flats of head and nut, which are equal
	Key         string // %s: width across flats of a hexagon key
	ByStandard  string // %s, %s: width across flats, and the standard it is from
	Wrench      string // calibrated torque wrench for %s
	AngleGauge  string
	LengthGauge string
	And         string // between the two
	Span        string // %s to %s: two torques in different units

	// Lubricants are the known ones, by their names in a file. Other names are
	// printed as in the file.
	Lubricants map[string]string
	States     map[string]string // of surfaces without a lubricant
}

// Trouble is the troubleshooting box.
type Trouble struct {
	Title string
	Steps []string
}
