package run

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
