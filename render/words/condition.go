package words

// Condition has the words of the sheet for noting the condition of every
// fastener as it is removed.
type Condition struct {
	Badge string

	Order, Tighten, ID, Kind  string // column headings
	Ticks                     [7]string
	TicksMean                 string // meaning of each tick
	Nominal, Measured, Remark string
	Limit, Manual             string // heading of the limit column; reference to the manual

	// Stations is the heading of the parts that go back to their places,
	// followed by its column headings.
	Stations     string
	Station      string
	StationTicks [3]string
	Fitted       string // size of what is fitted there

	Values       string // heading of other values to measure
	Value        string // heading of the value column
	MeasuredHere string // the same if %s is measured at the fasteners
	OldShim      string // column heading
	NewShim      string // column heading
	Shims        string // heading of the shim tables
	ShimsSay     string // how to calculate a shim, and what the tables are
	ShimsFor     string // heading of a table: %s what, %s limits, %s wanted, %s thinnest, %s thickest, %s step
	ShimChange   string // column heading: thicker or thinner by
	ShimKeep     string // no change
	NoShim       string // no size is within the limits

	New       string // short mark of a single-use fastener
	NewMeans  string
	Measure   string // what the two lengths are, and that the limit is in the manual
	MeasureTo string // the same if the file has a limit

	Gives, Breaks Trouble
	Common        string // that it is common practice, and what takes precedence
	Where         string // a line to write on: which one broke, where, how deep
	AllThere      string // %d fasteners
	SmallDrawing  string // meaning of the numbers in the drawing
}
