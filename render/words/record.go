package words

// Record is the words of the sheet that prints the record of a run. What the page
// shows too is said in the words of Page.
type Record struct {
	Badge, BadgeOpen, BadgeVoid string

	Work    map[string]string // by run.Direction
	About   string            // head of what the record is about
	Started string            // head: who started it, and when
	Ended   string            // head: the latest entry
	Order   string
	Job     string
	Again   string // head: the run that this one checks
	Program string
	Times   string // head: the time zone
	Open    string // %[1]d steps of %[2]d are open

	Drawing  string // what the letters in the drawing are
	Ref      string // head of the column of letters
	What     string
	Where    string
	Settled  string // head: what was done about it
	ReadyFor string // a new one for %s
	NotYet   string // not settled
	Photo    string // photo %s: the start of its SHA-256
	Scrapped string // not to be used again
	New      string // a new one was fitted: %[1]s, %[2]s

	Remark        string
	Wrenches      string
	Tool          string // head: its number
	Range         string // head: usable from and to
	NoRange       string // it is not known
	Last          string // head: day of the last calibration
	Used          string // head: for which torques, for how many angles
	Angles        string // %d angles
	NoNumber      string
	NotCalibrated string // the day is not known
	People        string
	Entries       string // head: how many
	First         string // head: of the entries
	Accepted      string // accepted by %[1]s, %[2]s
	ToEntry       string // on %[1]s (%[2]s, %[3]s)

	Chain   string // entries %[1]d to %[2]d of the store; the head covers %[3]d
	Against string // check with %s
}
