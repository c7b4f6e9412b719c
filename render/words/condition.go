package words

// Condition is the words of the sheet on which the state of every fastener is
// noted as it comes out.
type Condition struct {
	Badge string

	Order, Tighten, ID, Kind  string // heads of the columns
	Ticks                     [7]string
	TicksMean                 string // what each of them says
	Nominal, Measured, Remark string
	Limit, Manual             string // the head of the column of limits; that the manual has it

	// Stations is the heading of the parts that go back to their places, with
	// the heads of their columns.
	Stations     string
	Station      string
	StationTicks [3]string
	Fitted       string // size of what is fitted in its place

	Values       string // the heading of what else is measured
	Value        string // the head of the column of values
	MeasuredHere string // the same where %s is measured at the fasteners
	OldShim      string // head of the column
	NewShim      string // likewise
	Shims        string // the heading of the tables of shims
	ShimsSay     string // how to work a shim out, and what the tables are
	ShimsFor     string // the heading of one: %s what, %s limits, %s wanted, %s thinnest, %s thickest, %s step
	ShimChange   string // head of the column: thicker or thinner by
	ShimKeep     string // nothing to change
	NoShim       string // no size brings it within the limits

	New       string // short mark of a fastener that is used once
	NewMeans  string
	Measure   string // what the two lengths are, and that the limit is the manual's
	MeasureTo string // the same where the file has a limit

	Gives, Breaks Trouble
	Common        string // that it is common practice, and who goes before it
	Where         string // a line to write on: which broke, where, how deep
	AllThere      string // %d fasteners
	SmallDrawing  string // what the numbers in the drawing are
}
