// Package record keeps the record of the work: what was started, who did what
// and when. It appends entries to a database, and reads, searches, exports,
// backs up and verifies it. It judges nothing and draws nothing. Only this
// package and the database packages below it use SQL.
// One hash chain runs through the whole store. Each link is
//
//	hash(n) = SHA-256(hash(n-1) followed by body(n))
//
// where body(n) is the JSON of what was recorded, with its place n in the
// chain. The body refers to frozen plans, files and photos by their SHA-256,
// and to people by a salted hash of the name; name and salt are in a separate
// table and can be erased without breaking the chain.
package record

import (
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// Kind is what a record is about.
type Kind string

// The kinds of records.
const (
	Shop    Kind = "shop" // what belongs to no run or job; there is only one, ShopID
	JobKind Kind = "job"  // the teardown and rebuild of a machine, or work on a joint
	RunKind Kind = "run"  // one pass through one joint
)

// ShopID is the record of what belongs to no run or job, such as a printed
// card.
const ShopID = "shop"

// NewJob is the input for starting a job.
type NewJob struct {
	Of, Title string // the file's name and title
	Number    string // of the machine
	Order     string // the customer's or the shop's
	Note      string
	Who       string
	Time      time.Time
	Program   string            // version of the program
	Frozen    []byte            // the plan as JSON, at the time of the start
	Files     map[string][]byte // the file, its bases, the files of the joints
}

// NewRun is the input for starting a run.
type NewRun struct {
	Job       string // id of its job; empty for none
	Again     string // id of the run that this one checks; empty for none
	Of, Title string // the joint's file and its title
	Work      run.Direction
	Number    string // of the machine; empty: that of its job
	Order     string
	Note      string
	Who       string
	Time      time.Time
	Program   string
	Frozen    []byte // run.Work as JSON
	Files     map[string][]byte
}

// Subject is a run or a job in a list.
type Subject struct {
	ID      string        `json:"id"` // R12, J3
	Kind    Kind          `json:"kind"`
	Job     string        `json:"job,omitempty"`
	Again   string        `json:"again,omitempty"`
	Of      string        `json:"of"`
	Title   string        `json:"title"`
	Work    run.Direction `json:"work,omitempty"`
	Number  string        `json:"number,omitempty"`
	Order   string        `json:"order,omitempty"`
	Note    string        `json:"note,omitempty"`
	Who     string        `json:"who,omitempty"`
	Program string        `json:"program,omitempty"`
	Started time.Time     `json:"started"`
	Last    time.Time     `json:"last"`              // time of the latest entry
	LastBy  string        `json:"last_by,omitempty"` // who made it
	Version int           `json:"version"`           // entries so far
	Ended   run.Act       `json:"ended,omitempty"`   // seal, void or close; empty while the record is open
	EndedAt time.Time     `json:"ended_at,omitzero"`
	EndedBy string        `json:"ended_by,omitempty"`
}

// Started is a run or a job with what it was started from.
type Started struct {
	Subject
	Frozen []byte
	Files  map[string]string // name of a file → SHA-256, for File
}

// Kept is an entry with its place in the record.
type Kept struct {
	run.Entry
	On      string `json:"-"`       // id of its run or job
	Version int    `json:"version"` // within its run or job, from 1
	Place   int64  `json:"n"`       // in the chain
	Hash    string `json:"hash"`    // of the chain up to it
}

// Answer is the result for an entry.
type Answer struct {
	Version int          // of the run or job after the entry
	Head    string       // of the chain after the entry
	Again   bool         // the entry was answered before; this is the same answer
	Refusal *run.Refusal // nil: the entry was accepted
}

// Head is the end of the chain.
type Head struct {
	Place int64  `json:"entries"`
	Hash  string `json:"head"`
}

// Filter limits a search. An empty field sets no limit.
type Filter struct {
	Machine  string // part of the machine's number, file or title
	Joint    string // part of the joint's file or title
	Person   string // initials or number, whole
	Wrench   string // number of a wrench, whole
	Job      string // id of the job
	From, To time.Time
	Open     bool   // only records not ended
	Before   string // only records started before this one; empty: all
	Most     int    // at most this many, the latest; 0: 200
}

// EndOfDay returns the last moment of a day in the record, for To; zero for no
// day.
func EndOfDay(day time.Time) time.Time {
	if day.IsZero() {
		return day
	}
	return day.AddDate(0, 0, 1).Add(-time.Millisecond)
}

// Verdict is the result of a check of the store.
type Verdict struct {
	Head    Head
	Against int64             // place of the hash that it was compared with; 0 if none was given or none matches
	Faults  []finding.Finding // none: the chain is valid
}

// Person is a person named in the record.
type Person struct {
	Name    string `json:"name"` // empty: erased
	Records int    `json:"records"`
}
