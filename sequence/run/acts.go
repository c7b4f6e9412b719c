package run

import (
	"slices"

	"drawdown/geometry/finding"
)

// Act is what an entry does to a run, or to a job.
type Act string

// Acts on a run.
const (
	Accept       Act = "accept"        // the warnings that To accept lists
	Done         Act = "done"          // a step
	Begin        Act = "begin"         // a wait
	Undo         Act = "undo"          // takes back a wrong tap: of
	Report       Act = "trouble"       // something is wrong: step or place, trouble
	Settle       Act = "settle"        // what was done about a trouble or an unsure angle: of, and note, repair or decided
	Unsure       Act = "unsure"        // an angle was interrupted: step
	Replace      Act = "replace"       // a new fastener goes in: step or place
	AnotherRound Act = "another round" // of a stage that repeats
	Finished     Act = "finished"      // a stage that repeats
	LeaveOut     Act = "leave out"     // a step: note
	Measure      Act = "measure"       // a value read: measure, value, unit
	Find         Act = "finding"       // something seen at a place: note, place
	Remark       Act = "note"          // note
	Printed      Act = "printed"       // a sheet: sheet, fingerprint
	Ready        Act = "ready"         // what must be ready: kind and value, place, or all of it
	HandOver     Act = "hand over"     // to the next shift: to, note
	Seal         Act = "seal"          // closes the run: second
	Correct      Act = "correct"       // adds to an entry and changes nothing: of, note
	Void         Act = "void"          // the run does not count: note
)

// Acts on a job alone.
const (
	Part    Act = "part"     // one part step
	SendOut Act = "send out" // a part goes to the machine shop: step, to, note
	Back    Act = "back"     // it is back from there: of, note
	Fitted  Act = "fitted"   // new ones of a kind that is used once are in: kind, or all of them
	Adopt   Act = "adopt"    // a newer revision
	Close   Act = "close"    // the job
)

// ofJobs lists them.
var ofJobs = []Act{Part, SendOut, Back, Fitted, Adopt, Close}

// Acts lists the acts on a run.
var Acts = []Act{
	Accept, Done, Begin, Undo, Report, Settle, Unsure, Replace, AnotherRound, Finished, LeaveOut,
	Measure, Find, Remark, Printed, Ready, HandOver, Seal, Correct, Void,
}

// Trouble is what can be wrong with a fastener.
type Trouble string

const (
	Seized       Trouble = "seized"     // will not turn
	GivingWay    Trouble = "giving way" // turns too easily: it may break
	Broken       Trouble = "broken"     // in two
	Stretched    Trouble = "stretched"  // longer, or waisted
	TurnsOn      Trouble = "turns on"   // without getting tighter
	BoltThread   Trouble = "thread of the bolt"
	HoleThread   Trouble = "thread of the hole"
	TurnedTwice  Trouble = "turned twice" // the same angle, by two people
	Missing      Trouble = "missing"      // the fastener is not there
	OtherTrouble Trouble = "other"
)

// Troubles lists them in the order in which a person is asked.
var Troubles = []Trouble{
	Seized, GivingWay, Broken, Stretched, TurnsOn, BoltThread, HoleThread, TurnedTwice, Missing, OtherTrouble,
}

// Condemns reports whether the fastener, or its hole, cannot be used again as
// it is.
func (t Trouble) Condemns() bool {
	return slices.Contains([]Trouble{Broken, Stretched, BoltThread, HoleThread}, t)
}

// Term is the trouble as a word of the trade.
func (t Trouble) Term() finding.Term { return finding.Term("trouble " + t) }

// Decision is what becomes of an angle that was interrupted.
type Decision string

const (
	CountsAsDone  Decision = "counts as done" // nobody turns it again
	TurnOn        Decision = "turn on"        // by what was decided, in place of the angle
	NewFastener   Decision = "new fastener"   // by a replace
	OtherDecision Decision = "other"          // the note says what
)

// Decisions lists them in the order in which a person is asked.
var Decisions = []Decision{CountsAsDone, TurnOn, NewFastener, OtherDecision}

// Repair is what was done to the hole of a fastener.
type Repair string

const (
	ThreadInsert  Repair = "thread insert"  // Thread says which
	ThreadCleaned Repair = "thread cleaned" // cut or brushed, and used as it is
)

// Repairs lists them in the order in which a person is asked.
var Repairs = []Repair{ThreadInsert, ThreadCleaned}

// Found is what a finding is.
type Found string

const (
	BlownThrough Found = "blown through" // a gasket
	Crack        Found = "crack"
	Corrosion    Found = "corrosion"
	Scoring      Found = "scoring"
	Warp         Found = "warp"
	DamagedHole  Found = "damaged hole"
	OtherFound   Found = "other"
)

// Founds lists them in the order in which a person is asked.
var Founds = []Found{BlownThrough, Crack, Corrosion, Scoring, Warp, DamagedHole, OtherFound}

// Direction is the work of a run.
type Direction string

const (
	Loosen  Direction = "loosen"
	Tighten Direction = "tighten"
)

// StepState is how far a step is.
type StepState string

const (
	ToDo      StepState = "todo"
	Waiting   StepState = "waiting" // a wait that was begun and is not over
	IsDone    StepState = "done"
	InTrouble StepState = "trouble"
	IsUnsure  StepState = "unsure"
	LeftOut   StepState = "left out"
)

// Status is how far a run is.
type Status string

const (
	Open   Status = "open"
	Sealed Status = "sealed"
	Voided Status = "void"
)

// Turn is which way a fastener is turned, seen from above its head or nut.
// Threads are right-handed: patterns take no others.
type Turn string

const (
	Clockwise     Turn = "clockwise"
	Anticlockwise Turn = "anticlockwise"
)

// Source says where an entry comes from when it was not tapped at the bench.
type Source string

const (
	AtTheBench Source = ""
	OnPaper    Source = "paper" // ticked on a printed sheet and entered afterwards
)

// rule is what an act needs, when it is refused and what it does. Which rule of
// the bench it is stands at the functions.
type rule struct {
	needs []need
	judge func(*State, Entry) *Refusal // nil: never refused
	apply func(*State, *Entry)
}

// need is a field, or one of two, that an act needs.
type need string

const (
	needID            need = "entry"
	needAct           need = "act"
	needWho           need = "who"
	needStep          need = "step"
	needOf            need = "of"
	needTrouble       need = "trouble"
	needNote          need = "note"
	needValue         need = "value"
	needSheet         need = "sheet"
	needFingerprint   need = "fingerprint"
	needStepOrPlace   need = "step / place.fastener"
	needMeasureOrStep need = "measure / step"
	needFoundOrNote   need = "found / note"
	needDecision      need = "decided / note"
	needDecidedBy     need = "decided_by"
	needThread        need = "thread"
	needTo            need = "to"
)

var rules = map[Act]rule{
	Accept:       {nil, (*State).judgeAccept, func(s *State, e *Entry) { s.accepted = e }},
	Done:         {[]need{needStep}, (*State).judgeDone, (*State).applyDone},
	Begin:        {[]need{needStep}, (*State).judgeBegin, func(s *State, e *Entry) { s.numbered[e.Step].begun = e }},
	LeaveOut:     {[]need{needStep, needNote}, (*State).judgeLeaveOut, func(s *State, e *Entry) { s.numbered[e.Step].left = e }},
	Undo:         {[]need{needOf}, (*State).judgeUndo, (*State).applyUndo},
	Report:       {[]need{needTrouble, needStepOrPlace}, (*State).judgeTrouble, (*State).applyTrouble},
	Unsure:       {[]need{needStep}, (*State).judgeUnsure, (*State).applyTrouble},
	Settle:       {[]need{needOf, needDecision}, (*State).judgeSettle, (*State).applySettle},
	Replace:      {[]need{needStepOrPlace}, (*State).judgeReplace, (*State).applyReplace},
	AnotherRound: {nil, (*State).judgeRound, (*State).applyAnotherRound},
	Finished:     {nil, (*State).judgeRound, (*State).applyFinished},
	Measure:      {[]need{needMeasureOrStep, needValue}, nil, func(s *State, e *Entry) { s.readings = append(s.readings, e) }},
	Find:         {[]need{needFoundOrNote}, nil, (*State).see},
	Remark:       {[]need{needNote}, nil, (*State).see},
	Correct:      {[]need{needOf, needNote}, (*State).judgeCorrect, (*State).see},
	Printed:      {[]need{needSheet, needFingerprint}, nil, func(s *State, e *Entry) { s.prints = append(s.prints, e) }},
	Ready:        {nil, nil, func(s *State, e *Entry) { s.ready = append(s.ready, e) }},
	HandOver:     {nil, nil, (*State).applyHandOver},
	Seal:         {nil, (*State).judgeSeal, func(s *State, e *Entry) { s.sealed = e }},
	SendOut:      {[]need{needStep, needTo, needNote}, nil, nil}, // judged by the job
	Back:         {[]need{needOf, needNote}, nil, nil},
	Void:         {[]need{needNote}, nil, func(s *State, e *Entry) { s.voided = e }},
}

func (s *State) see(e *Entry) { s.seen = append(s.seen, e) }
