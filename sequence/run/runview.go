package run

import (
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
)

// View is a run at one moment, as the page and GET /api/runs/ID show it. Lists go
// by the time of their entries. Names of people stand in By, DecidedBy,
// Second and Next alone.
type View struct {
	Of          string    `json:"of"`
	Title       string    `json:"title"`
	Machine     string    `json:"machine,omitempty"`
	Direction   Direction `json:"work"`
	Fingerprint string    `json:"fingerprint"`
	Job         string    `json:"job,omitempty"`
	Status      Status    `json:"state"`
	Version     int       `json:"version"` // the number of entries taken
	Next        *int      `json:"next"`    // nil where nothing can be done before something is decided
	Steps       []Step    `json:"steps"`   // in the order of work

	Measures    []measure.Value   `json:"measures,omitempty"` // to take
	ToAccept    []finding.Finding `json:"-"`                  // still to be accepted; worded by the server
	WasAccepted []finding.Finding `json:"-"`                  // by Accepted
	Accepted    *Mark             `json:"accepted,omitempty"`
	Asks        []Ask             `json:"asks,omitempty"`
	Troubles    []TroubleSeen     `json:"troubles,omitempty"`
	Condemned   []Condemned       `json:"condemned,omitempty"`
	Replaced    []Replaced        `json:"replaced,omitempty"`
	Repaired    []Repaired        `json:"repaired,omitempty"` // holes, also those of the job's other runs of the joint
	Undone      []Undone          `json:"undone,omitempty"`
	Needs       []Need            `json:"needs,omitempty"` // what must be ready for tightening, ready or not
	Readings    []Reading         `json:"readings,omitempty"`
	Flags       []Flag            `json:"-"` // worded by the server
	Findings    []Seen            `json:"findings,omitempty"`
	Notes       []Seen            `json:"notes,omitempty"`
	Corrections []Seen            `json:"corrections,omitempty"`
	Prints      []Print           `json:"prints,omitempty"`
	HandOvers   []HandedOver      `json:"hand_overs,omitempty"`
	Now         FiveLines         `json:"now"` // what a hand over would say
	Signed      *Signature        `json:"seal,omitempty"`
	VoidedBy    *Mark             `json:"voided,omitempty"`
}

// Mark says who did something, when and by which entry.
type Mark struct {
	Entry string    `json:"entry"`
	By    string    `json:"by"`
	At    time.Time `json:"at"`
	Note  string    `json:"note,omitempty"`

	DecidedBy string `json:"decided_by,omitempty"` // where somebody decided what By entered
}

// AskKind is a question that only a person answers.
type AskKind string

const (
	AskRound      AskKind = "round"      // another round, or finished?
	AskNeighbours AskKind = "neighbours" // what becomes of those beside a new fastener? Answered by a note with of
	AskReadiness  AskKind = "readiness"  // is what Needs lists there? Asked once, of a run without a job
)

// Ask is an open question.
type Ask struct {
	Kind  AskKind  `json:"ask"`
	Stage int      `json:"stage,omitempty"` // of a round
	Round int      `json:"round,omitempty"` // that was done last; 0: none yet
	Until string   `json:"until,omitempty"` // empty: until each sits
	IDs   []string `json:"ids,omitempty"`
	Of    string   `json:"of,omitempty"` // the entry that brought it up
}

// TroubleSeen is a trouble, or an angle that was interrupted.
type TroubleSeen struct {
	Mark
	Trouble Trouble  `json:"trouble,omitempty"` // empty: the angle is unsure
	Step    int      `json:"step,omitempty"`
	IDs     []string `json:"ids,omitempty"`
	Blocks  Blocks   `json:"blocks,omitempty"`
	Photo   string   `json:"photo,omitempty"`
	Settled *Mark    `json:"settled,omitempty"` // by a settle or a replace
	Decided Decision `json:"decided,omitempty"` // of an angle that was interrupted
	TurnOn  Value    `json:"turn_on_deg,omitzero"`
}

// Undone is a tap on a step that was taken back.
type Undone struct {
	Mark      // of the tap
	Act  Act  `json:"act"`
	Step int  `json:"step"`
	Back Mark `json:"back"` // of who took it back
}

// Replaced is a new fastener that went in.
type Replaced struct {
	Mark
	Step int      `json:"step,omitempty"`
	IDs  []string `json:"ids"`
	Of   string   `json:"of,omitempty"` // the trouble that it was for; empty where none was reported
}

// Repaired is the hole of a fastener that was repaired.
type Repaired struct {
	ID     string `json:"id"`
	Repair Repair `json:"repair"`
	Thread string `json:"thread,omitempty"` // of the insert
	Mark
	Of string `json:"of,omitempty"` // the trouble that it settled
}

// Blocks is what an open trouble blocks.
type Blocks string

const (
	BlocksNothing  Blocks = ""         // it is settled
	BlocksFastener Blocks = "fastener" // the steps of its fastener
	BlocksStage    Blocks = "stage"    // its stage and all that follow
)

// Condemned is a fastener that cannot be used again, or whose hole cannot.
type Condemned struct {
	ID      string  `json:"id"`
	Kind    string  `json:"kind"`
	Trouble Trouble `json:"trouble"`
	Mark
	Replaced *Mark `json:"replaced,omitempty"`
}

// Need is what must be ready before a joint is tightened: new ones of a kind
// that is used once, what replaces a condemned fastener or did so, or the repair of a
// hole.
type Need struct {
	Kind    string  `json:"kind"`
	Count   int     `json:"count"`
	Ready   int     `json:"ready"` // of them, at most Count
	ID      string  `json:"id,omitempty"`
	Trouble Trouble `json:"trouble,omitempty"` // that condemned it; empty also where a new one went in for another reason
	Gasket  string  `json:"gasket,omitempty"`  // of which kind, where it is one
	Among   bool    `json:"among,omitempty"`   // it is one of the new ones of its kind
	Counted bool    `json:"counted,omitempty"` // somebody said how many are there
}

// Met reports whether all of it is ready.
func (n Need) Met() bool { return n.Ready >= n.Count }

// Waits reports whether the work of a job waits for it. It waits for a gasket only
// where somebody said that it is not there: whether the old one is used again the
// file does not say.
func (n Need) Waits() bool { return !n.Met() && (n.Gasket == "" || n.Counted) }

// Reading is a value that was read, as it was entered.
type Reading struct {
	Mark
	Step    int    `json:"step,omitempty"`
	Place   *Place `json:"place,omitempty"`
	Measure string `json:"measure,omitempty"`
	Value   Value  `json:"value"`
	Unit    string `json:"unit,omitempty"`
	Outside bool   `json:"outside,omitempty"` // of the wrench's tolerance, or of the limits
	Fitted  Value  `json:"shim,omitzero"`     // where a clearance was measured
	Past    bool   `json:"past,omitempty"`    // the value was read again since
	measure.Result
}

// Flag is what was recorded but has to be looked at.
type Flag struct {
	Finding finding.Finding
	Mark
	Step int
}

// Seen is a finding, a note or a correction.
type Seen struct {
	Mark
	Step  int    `json:"step,omitempty"`
	Place *Place `json:"place,omitempty"`
	Photo string `json:"photo,omitempty"`
	Found Found  `json:"found,omitempty"`
	Of    string `json:"of,omitempty"`
	Value Value  `json:"value,omitzero"`
	Unit  string `json:"unit,omitempty"`
}

// Print is a sheet that was printed.
type Print struct {
	Mark
	Sheet       string `json:"sheet"`
	Fingerprint string `json:"fingerprint"`
	OutOfDate   bool   `json:"out_of_date"` // printed from another state of the file than this run
}

// FiveLines are what the next shift has to know.
type FiveLines struct {
	Done    Progress      `json:"done"`
	Open    Progress      `json:"open"`
	Found   []TroubleSeen `json:"found,omitempty"`   // troubles, settled or not
	Waiting []Awaited     `json:"waiting,omitempty"` // what the work waits for
	Next    string        `json:"next,omitempty"`    // who takes over

	NextStep int `json:"next_step,omitempty"` // that the order asks for then; 0 for none
}

// Progress counts steps, and fasteners that have none left.
type Progress struct {
	Steps     int   `json:"steps"`
	Fasteners int   `json:"fasteners"`
	Stages    []int `json:"stages,omitempty"` // whole ones
}

// Awaited is one thing that the work waits for; one of the fields is set.
type Awaited struct {
	Step   int       `json:"step,omitempty"` // a wait that was begun
	Ends   time.Time `json:"ends,omitzero"`
	Need   *Need     `json:"need,omitempty"`   // not ready
	Ask    *Ask      `json:"ask,omitempty"`    // not answered
	Accept int       `json:"accept,omitempty"` // so many warnings are not accepted
	Settle string    `json:"settle,omitempty"` // the entry of a trouble that is not settled
}

// HandedOver is a hand over with its five lines as they were.
type HandedOver struct {
	Mark
	FiveLines
}

// Signature is the seal of a run.
type Signature struct {
	Mark
	Second string `json:"second,omitempty"`
	Wrench string `json:"wrench,omitempty"` // for the stages of which no entry names one
}
