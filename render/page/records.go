package page

import (
	"io"

	"drawdown/sequence/run"
)

// RecordsView lists runs that are over or open, as the form asks: it gets machine,
// joint, person, from and to.
type RecordsView struct {
	Frame
	Asked RecordsAsked
	Runs  []RunLine
	Next  string // address of the next page; empty for none
}

// RecordsAsked is what the list is searched by. Dates are year-month-day.
type RecordsAsked struct{ Machine, Joint, Person, From, To string }

// Records writes the list.
func Records(w io.Writer, v RecordsView) error { return write(w, "records", v) }

// RecordView is the whole record of a run.
type RecordView struct {
	RunView
	Head   string   // of the chain
	Faults []string // what verify says, worded; none for a sound record
}

// Record writes the record of a run.
func Record(w io.Writer, v RecordView) error { return write(w, "record", v) }

// IsOpen says whether the run goes on.
func (l RunLine) IsOpen() bool { return l.Status == run.Open }
