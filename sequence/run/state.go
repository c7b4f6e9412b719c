package run

import (
	"slices"
	"time"

	"drawdown/sequence/plan"
)

// State is a run with the entries that were taken so far. It is not safe for use
// by several goroutines at once.
type State struct {
	work     Work
	steps    []*step // in the order of work
	waits    []*step // those of them that wait
	numbered map[int]*step
	copies   map[int]int // of a step of the plan: how many times it was added again
	repeats  []*repeat

	entries map[string]*Entry
	undone  map[string]bool
	version int

	accepted  *Entry
	problems  []*problem
	replaced  []*Entry
	ready     []*Entry
	readings  []*Entry
	seen      []*Entry // findings, notes, corrections
	prints    []*Entry
	handOvers []HandedOver
	sealed    *Entry
	voided    *Entry

	job *JobFacts // nil: nothing is known of a job
}

// step is a step of the plan, or one that was added, with what was done to it.
type step struct {
	Step
	at    position
	done  *Entry
	begun *Entry
	left  *Entry
	over  bool   // of a wait: an entry came after its end
	from  *Entry // that added it as one of another round
}

// Start returns the state before the first entry.
func (w Work) Start() *State {
	s := &State{
		work: w, numbered: map[int]*step{}, copies: map[int]int{},
		entries: map[string]*Entry{}, undone: map[string]bool{},
	}
	for i, planned := range w.Steps {
		st := &step{Step: planned, at: position{region: planned.Stage, part: asPlanned, stage: planned.Stage, index: i}}
		s.steps, s.numbered[planned.Number] = append(s.steps, st), st
		if st.Do == plan.Wait {
			s.waits = append(s.waits, st)
		}
	}
	s.repeats = repeats(w.Steps)
	return s
}

// Replay returns the state after entries that were taken before. It does not
// judge them again: what a rule of today would refuse was taken then, and
// stays.
func (w Work) Replay(entries []Entry) *State {
	s := w.Start()
	for _, e := range entries {
		s.apply(e)
	}
	return s
}

// Take judges an entry by the rules and applies it. e.Time is the server's clock
// as it takes the entry. An entry that was taken before gets the same answer and
// changes nothing.
func (s *State) Take(e Entry) *Refusal {
	if before, seen := s.entries[e.ID]; seen {
		if !before.same(e) {
			return refused(IDUsed, nil).because(before)
		}
		return nil
	}
	if r := s.fault(e); r != nil {
		return r
	}
	if r := s.judge(e); r != nil {
		return r
	}
	s.apply(e)
	return nil
}

// judge says why a rule refuses a well-formed entry.
func (s *State) judge(e Entry) *Refusal {
	switch {
	case e.Act == Correct:
	case s.sealed != nil:
		return refused(RunSealed, nil).because(s.sealed)
	case s.voided != nil:
		return refused(RunVoid, nil).because(s.voided)
	}
	if judge := rules[e.Act].judge; judge != nil {
		return judge(s, e)
	}
	return nil
}

// apply takes an entry that was judged, here or when it was first taken. In a
// record that somebody changed, an entry may be about what is not there: it
// counts, and does nothing.
func (s *State) apply(e Entry) {
	if s.entries[e.ID] != nil {
		return
	}
	s.entries[e.ID] = &e
	s.version++
	s.passTime(e.Time)
	if apply := rules[e.Act].apply; apply != nil && s.applies(&e) {
		apply(s, &e)
	}
}

// applies reports whether all that the act needs is there.
func (s *State) applies(e *Entry) bool {
	if e.Place != nil && e.Place.Fastener != "" && s.fastener(e.Place.Fastener) == nil {
		return false
	}
	switch e.Act {
	case Done, Begin, LeaveOut, Unsure:
		return s.numbered[e.Step] != nil
	case Report, Replace:
		st, ids := s.placeOf(e)
		return len(ids) > 0 || e.Act == Report && st != nil
	case Undo:
		of := s.entries[e.Of]
		return of != nil && of.Act != Undo && s.applies(of)
	}
	return true
}

// Version is the number of entries taken.
func (s *State) Version() int { return s.version }

// Work is what the state began with.
func (s *State) Work() Work { return s.work }

// Status reports whether the run is open, sealed or void.
func (s *State) Status() Status {
	switch {
	case s.sealed != nil:
		return Sealed
	case s.voided != nil:
		return Voided
	}
	return Open
}

// passTime marks the waits whose end has come, so that a clock set back later
// does not begin them again.
func (s *State) passTime(now time.Time) {
	for _, st := range s.waits {
		st.over = st.isOver(now)
	}
}

// same reports whether an entry is the one that was taken; the server's own
// fields do not count.
func (e *Entry) same(other Entry) bool {
	a, b := *e, other
	a, b = a.AsSent(), b.AsSent()
	samePlace := a.Place.same(b.Place)
	a.Place, b.Place = nil, nil
	return a == b && samePlace
}

// AsSent is the entry without what the server adds.
func (e Entry) AsSent() Entry {
	e.Time, e.WrenchFacts, e.Revision = time.Time{}, nil, nil
	return e
}

func (p *Place) same(other *Place) bool {
	if p == nil || other == nil {
		return p == other
	}
	sameAt := (p.At == nil) == (other.At == nil) && (p.At == nil || *p.At == *other.At)
	return p.Fastener == other.Fastener && p.Station == other.Station && p.Label == other.Label && sameAt
}

// on reports whether the step is on one of the fasteners.
func (st *step) on(ids []string) bool {
	return slices.ContainsFunc(st.IDs, func(id string) bool { return slices.Contains(ids, id) })
}

// closed reports whether nothing is left to do at the step.
func (st *step) closed(now time.Time) bool {
	return st.done != nil || st.left != nil || st.isOver(now)
}

// isOver reports whether a wait that was begun is over (9).
func (st *step) isOver(now time.Time) bool {
	return st.over || st.begun != nil && !now.Before(st.ends())
}
