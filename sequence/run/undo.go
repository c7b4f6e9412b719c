package run

import (
	"slices"

	"drawdown/geometry/finding"
)

// takenBack are the acts that can be a wrong tap.
var takenBack = []Act{Done, Begin, LeaveOut, Report, AnotherRound, Finished, Measure, Find, Ready}

// judgeUndo: undo takes back a wrong tap, never physical work. It is refused once
// a later step of that fastener is done (4).
func (s *State) judgeUndo(e Entry) *Refusal {
	of := s.entries[e.Of]
	switch {
	case of == nil:
		return refused(NoSuchEntry, finding.Values{"of": e.Of})
	case !slices.Contains(takenBack, of.Act):
		return refused(NotUndone, nil).because(of)
	case s.undone[e.Of]:
		return refused(UndoneAlready, nil).because(of)
	}
	switch of.Act {
	case Done, Begin, LeaveOut:
		return s.judgeUndoStep(s.numbered[of.Step])
	case Report:
		return s.judgeUndoTrouble(of)
	case AnotherRound, Finished:
		return s.judgeUndoRound(of)
	}
	return nil
}

func (s *State) judgeUndoStep(st *step) *Refusal {
	if st.Old {
		return refused(StepReplaced, s.about(st)).because(st.done)
	}
	if later := s.laterDone(st); later != nil {
		return refused(LaterStepDone, finding.Values{"id": later.ID, "later": later.Number}).because(later.done)
	}
	return nil
}

// laterDone returns a step after this one that is done on the same fastener; of
// a wait, on any.
func (s *State) laterDone(st *step) *step {
	from := slices.Index(s.steps, st) + 1
	i := slices.IndexFunc(s.steps[from:], func(later *step) bool {
		return later.done != nil && !later.Old && (len(st.IDs) == 0 || later.on(st.IDs))
	})
	if i < 0 {
		return nil
	}
	return s.steps[from+i]
}

func (s *State) applyUndo(e *Entry) {
	of := s.entries[e.Of]
	s.undone[e.Of] = true
	isOf := func(other *Entry) bool { return other == of }
	switch of.Act {
	case Done:
		s.numbered[of.Step].done = nil
	case Begin:
		s.numbered[of.Step].begun, s.numbered[of.Step].over = nil, false
	case LeaveOut:
		s.numbered[of.Step].left = nil
	case Report:
		s.problems = slices.DeleteFunc(s.problems, func(p *problem) bool { return p.entry == of })
	case AnotherRound, Finished:
		s.undoRound(of)
	}
	s.readings = slices.DeleteFunc(s.readings, isOf)
	s.seen = slices.DeleteFunc(s.seen, isOf)
	s.ready = slices.DeleteFunc(s.ready, isOf)
}
