package words

// Record has the words of the sheet that prints the record of a run. What the
// page shows too is in the words of Page.
type Record struct {
	Badge, BadgeOpen, BadgeVoid string

	Work    map[string]string // by run.Direction
	About   string            // heading: subject of the record
	Started string            // heading: who started it, and when
	Ended   string            // heading: the latest entry
	Order   string
	Job     string
	Again   string // heading: the run that this one checks
	Program string
	Times   string // heading: the time zone
	Open    string // %[1]d steps of %[2]d are open

	Drawing  string // meaning of the letters in the drawing
	Ref      string // heading of the column of letters
	What     string
	Where    string
	Settled  string // heading: what was done about it
	ReadyFor string // a new one for %s
	NotYet   string // not settled
	Photo    string // photo %s: the start of its SHA-256
	Scrapped string // not to be used again
	New      string // a new one was fitted: %[1]s, %[2]s

	Remark        string
	Wrenches      string
	Tool          string // heading: its number
	Range         string // heading: usable from and to
	NoRange       string // it is not known
	Last          string // heading: date of the last calibration
	Used          string // heading: for which torques, for how many angles
	Angles        string // %d angles
	NoNumber      string
	NotCalibrated string // the date is not known
	People        string
	Entries       string // heading: number of entries
	First         string // heading: first entry
	Accepted      string // accepted by %[1]s, %[2]s
	ToEntry       string // on %[1]s (%[2]s, %[3]s)

	// Of a job.
	JobOpen       string
	Result        string
	CountOf       string // %[1]d of %[2]d
	JointsOff     string
	JointsOn      string
	CondemnedDone string
	ValuesWithin  string
	OpenPoints    string
	NotAccepted   string
	AcceptedWhy   string // heading: why it was accepted
	FoundAndDone  string
	NewAmong      string // %[1]d: of how many new ones, %[2]s: the run, %[3]s, %[4]s: sealed by
	NewIn         string // %[1]s: the run, %[2]s, %[3]s: sealed by
	NoNew         string
	FittedNew     string // %[1]s: what, %[2]s, %[3]s
	Before        string // heading: the first reading
	AtLast        string // heading: the last one
	ShimWas       string // %s
	NewParts      string
	Joints        string
	FromPaper     string
	Tapped        string // %s: when, by the device, of an entry that came late
	Revision      string
	OlderThanWork string // %d values
	NeverTaken    string // %d values
	JointsNotDone string // heading
	NeverLoosened string // of a joint that was tightened
	ReadAgain     string // of a value
	NotSince      string // the value was not measured since
	SignSays      string // what a signature confirms
	SignShop      string
	SignCustomer  string
	SignName      string // heading
	SignHere      string // heading

	Chain   string // entries %[1]d to %[2]d of the store; the head covers %[3]d
	Against string // check with %s
}
