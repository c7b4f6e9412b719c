package run

import (
	"encoding/json"
	"strconv"
	"strings"
	"time"

	"drawdown/sequence/measure"
)

// Entry is one thing that somebody did or saw. Which fields an act needs is said
// at its constant; ID, Act and Who are needed by all.
type Entry struct {
	ID          string       `json:"entry"` // made by the sender
	Act         Act          `json:"act"`
	Step        int          `json:"step,omitempty"`
	Who         string       `json:"who"`
	Time        time.Time    `json:"time,omitzero"` // the server's, when it took the entry
	DeviceTime  string       `json:"device_time,omitempty"`
	Of          string       `json:"of,omitempty"` // the entry undone, settled or corrected
	Trouble     Trouble      `json:"trouble,omitempty"`
	Place       *Place       `json:"place,omitempty"`
	Measure     string       `json:"measure,omitempty"` // what was measured
	Value       Value        `json:"value,omitzero"`    // as it was entered
	Unit        string       `json:"unit,omitempty"`
	Shim        Value        `json:"shim,omitzero"`    // that is fitted where a clearance was measured
	Found       Found        `json:"found,omitempty"`  // what a finding is
	Joint       string       `json:"joint,omitempty"`  // of a job, that a finding or a value is of
	Photo       string       `json:"photo,omitempty"`  // its SHA-256
	Wrench      string       `json:"wrench,omitempty"` // its number
	Note        string       `json:"note,omitempty"`
	Decided     Decision     `json:"decided,omitempty"`    // of an unsure angle; TurnOn has its Value, in degrees
	DecidedBy   string       `json:"decided_by,omitempty"` // where another person than Who decided, or did so for them
	Repair      Repair       `json:"repair,omitempty"`     // of the hole, by a settle or a replace
	Thread      string       `json:"thread,omitempty"`     // of the insert that was fitted, such as M10x1.5
	Source      Source       `json:"source,omitempty"`
	Day         string       `json:"day,omitempty"`          // year-month-day, as the paper states it; empty: not known
	Kind        string       `json:"kind,omitempty"`         // of fastener, that is ready
	To          string       `json:"to,omitempty"`           // who takes over; the machine shop
	Kept        string       `json:"kept,omitempty"`         // of a part sent out: where its small parts are, which way round it goes back
	Second      string       `json:"second,omitempty"`       // the second signature of a seal
	Sheet       string       `json:"sheet,omitempty"`        // that was printed: card, tray, condition
	Fingerprint string       `json:"fingerprint,omitempty"`  // that was printed on it
	WrenchFacts *WrenchFacts `json:"wrench_facts,omitempty"` // set by the server from the shop's list
	Revision    *Revision    `json:"revision,omitempty"`     // set by the server when it is adopted
}

// Revision is a newer state of the files of a job.
type Revision struct {
	Differences []Difference      `json:"differences"` // from what the job went by until then
	Files       map[string]string `json:"files"`       // name → SHA-256
}

// Difference is one thing that a newer revision changes.
type Difference struct {
	Joint  string  `json:"joint,omitempty"` // empty: the whole file
	What   Changed `json:"what"`
	Before string  `json:"before,omitempty"` // ids, figures: as in the file
	After  string  `json:"after,omitempty"`
}

// ChangedPart is what differs in one stage, or in the order.
type ChangedPart struct {
	Stage         int // 0: the order, or all of it
	Before, After string
}

// Parts gives of a change of the work only what differs; all of it where stages were
// added or left out, and of any other change.
func (d Difference) Parts() []ChangedPart {
	before, after := strings.Split(d.Before, "; "), strings.Split(d.After, "; ")
	if d.What != ChangedLoosen && d.What != ChangedTighten || len(before) != len(after) {
		return []ChangedPart{{Before: d.Before, After: d.After}}
	}
	var all []ChangedPart
	for i := range before { // the order, then the stages
		if before[i] != after[i] {
			all = append(all, ChangedPart{i, before[i], after[i]})
		}
	}
	return all
}

// Changed is what a newer revision can change.
type Changed string

// What a newer revision can change.
const (
	ChangedFile     Changed = "file" // its fingerprint; there in any case
	ChangedRevision Changed = "revision"
	ChangedBolts    Changed = "fasteners"
	ChangedLoosen   Changed = "loosening" // order and stages
	ChangedTighten  Changed = "tightening"
	ChangedList     Changed = "list" // of the joints
)

// Changes lists them.
var Changes = []Changed{ChangedFile, ChangedRevision, ChangedBolts, ChangedLoosen, ChangedTighten, ChangedList}

// Place is where something was seen. One of the fields is set.
type Place struct {
	Fastener string      `json:"fastener,omitempty"`
	Station  string      `json:"station,omitempty"`
	Label    string      `json:"label,omitempty"` // of a bore; on a job any place that its file measures at
	At       *[2]float64 `json:"at,omitempty"`    // mm, as in the pattern file
}

// Measured is the place as the values of a file name it.
func (p *Place) Measured() measure.Place {
	if p == nil {
		return measure.Place{}
	}
	return measure.Place{Fastener: p.Fastener, Station: p.Station, Label: p.Label}
}

// Written is what was read, as it was entered.
func (e Entry) Written() measure.Written {
	return measure.Written{What: e.Measure, Value: string(e.Value), Unit: e.Unit, Shim: string(e.Shim), At: e.Place.Measured()}
}

// WrenchFacts are what the shop's list says of a wrench when an entry names it.
// They stay with the entry, so that a record can be read when the list has
// changed. The server fills them in on every entry that has a Wrench, and never
// takes them from a client.
type WrenchFacts struct {
	Listed     bool    `json:"listed"`               // false: the number is not in the list
	FromNm     float64 `json:"from_Nm,omitempty"`    // usable range; both 0: not known
	ToNm       float64 `json:"to_Nm,omitempty"`      //
	Tolerance  float64 `json:"tolerance,omitempty"`  // share to either side; 0: that of Work
	Calibrated string  `json:"calibrated,omitempty"` // year-month-day; empty: not known
}

// Value is a number as somebody wrote it: its digits are kept.
type Value string

// MarshalJSON writes a number where the text is one in JSON.
func (v Value) MarshalJSON() ([]byte, error) {
	if json.Valid([]byte(v)) && strings.Trim(string(v), "+-.0123456789eE") == "" {
		return []byte(v), nil
	}
	return json.Marshal(string(v))
}

// UnmarshalJSON takes a number or a text, and keeps its digits.
func (v *Value) UnmarshalJSON(data []byte) error {
	var number json.Number
	if err := json.Unmarshal(data, &number); err == nil && data[0] != '"' {
		*v = Value(number)
		return nil
	}
	return json.Unmarshal(data, (*string)(v))
}

// Number reads the value; a comma is a decimal sign.
func (v Value) Number() (float64, bool) {
	n, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(string(v)), ",", ".", 1), 64)
	return n, err == nil && n-n == 0 // neither infinite nor no number
}

// An entry that was held on a device counts as late from lateAfter on; beyond mostLate
// the clock of the device is wrong.
const (
	lateAfter = 5 * time.Second
	mostLate  = 24 * time.Hour
)

// tapped is when an entry that came late was tapped, by the clock of its device; zero
// for one that came in time.
func (e *Entry) tapped() time.Time {
	at, err := time.Parse(time.RFC3339, e.DeviceTime)
	if late := e.Time.Sub(at); err != nil || e.Source == OnPaper || late < lateAfter || late > mostLate {
		return time.Time{}
	}
	return at
}
