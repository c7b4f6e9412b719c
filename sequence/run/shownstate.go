package run

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"drawdown/sequence/plan"
)

// At returns the run as it is at a moment: a wait whose end has come is done.
// It changes nothing.
func (s *State) At(now time.Time) View {
	w := s.work
	v := View{
		Of: w.Of, Title: w.Title, Machine: w.Machine, Direction: w.Direction, Fingerprint: w.Fingerprint, Job: w.Job,
		Status: s.Status(), Version: s.version, Measures: w.Measures, Steps: s.shown(now), ToAccept: s.toAccept(), Accepted: s.accepted.marked(), WasAccepted: s.wasAccepted(),
		Asks: s.asks(now), Troubles: s.troubles(), Condemned: inTime(s.condemned(), Condemned.mark), Replaced: s.shownReplaced(), Repaired: s.repaired(), Undone: s.shownUndone(), Needs: s.needs(),
		Readings: s.readingsNow(), Flags: inTime(s.flags(), Flag.mark), HandOvers: s.handOvers, Now: s.fiveLines(now), VoidedBy: s.voided.marked(),
	}
	if next, _ := s.upNext(now); next != nil && v.Status == Open {
		v.Next = &next.Number
	}
	for _, e := range s.seen {
		list := map[Act]*[]Seen{Find: &v.Findings, Remark: &v.Notes, Correct: &v.Corrections}[e.Act]
		*list = append(*list, Seen{e.mark(), e.Step, e.Place, e.Photo, e.Found, e.Of, e.Value, e.Unit})
	}
	for _, list := range []*[]Seen{&v.Findings, &v.Notes, &v.Corrections} {
		*list = inTime(*list, Seen.mark)
	}
	for _, e := range s.prints {
		v.Prints = append(v.Prints, Print{e.mark(), e.Sheet, e.Fingerprint, e.Fingerprint != w.Fingerprint})
	}
	v.Prints = inTime(v.Prints, Print.mark)
	if s.sealed != nil {
		v.Signed = &Signature{s.sealed.mark(), s.sealed.Second, s.sealed.Wrench}
	}
	return v
}

// Next is the step that comes next; 0 where there is none before something is
// decided.
func (s *State) Next(now time.Time) int {
	if next, _ := s.upNext(now); next != nil && s.Status() == Open {
		return next.Number
	}
	return 0
}

// shown returns the steps in the order of work with their state.
func (s *State) shown(now time.Time) []Step {
	total := map[string]float64{} // turned on a fastener in the angles that follow each other
	all := make([]Step, len(s.steps))
	for i, st := range s.steps {
		shown := st.Step
		shown.State = s.stateOf(st, now)
		e := cmp.Or(st.done, st.left, st.begun)
		if e != nil {
			shown.By, shown.At, shown.Wrench, shown.Reason, shown.Source, shown.Day = e.Who, e.Time, e.Wrench, e.Note, e.Source, e.Day
			shown.Tapped = e.tapped()
			shown.OutOfOrder = s.outOfOrder(i, now)
		}
		if st.begun != nil {
			shown.Ends = st.ends()
		}
		if len(st.IDs) > 0 && !st.Old {
			shown.TotalDeg = turnedOn(total, st)
		}
		all[i] = shown
	}
	return all
}

// outOfOrder reports whether a step was done with a reason, while one that comes
// before it was open (2).
func (s *State) outOfOrder(at int, now time.Time) bool {
	st := s.steps[at]
	if st.done == nil || !st.done.hasNote() {
		return false
	}
	return slices.ContainsFunc(s.steps[:at], func(before *step) bool {
		if before.Old || before.left != nil && before.left.earlier(st.done) {
			return false
		}
		return before.done != nil && st.done.earlier(before.done) || !before.closed(now)
	})
}

func (s *State) shownReplaced() []Replaced {
	var all []Replaced
	for _, e := range s.replaced {
		one := Replaced{Mark: e.mark(), Step: e.Step}
		_, one.IDs = s.placeOf(e)
		for _, p := range s.problems {
			if p.replaced == e {
				one.Of = p.entry.ID
			}
		}
		all = append(all, one)
	}
	return inTime(all, Replaced.mark)
}

// shownUndone lists the taps on steps that were taken back.
func (s *State) shownUndone() []Undone {
	var all []Undone
	for _, back := range s.entries {
		if of := s.entries[back.Of]; back.Act == Undo && of != nil && slices.Contains([]Act{Done, Begin, LeaveOut}, of.Act) {
			all = append(all, Undone{of.mark(), of.Act, of.Step, back.mark()})
		}
	}
	return inTime(all, Undone.mark)
}

// turnedOn adds an angle that was done to what its fastener was turned before.
func turnedOn(total map[string]float64, st *step) float64 {
	if !st.turns() || st.Do == plan.BackOff {
		total[st.IDs[0]] = 0
	}
	if st.turns() && st.done != nil {
		total[st.IDs[0]] += st.AngleDeg
	}
	sum := total[st.IDs[0]]
	if st.Do == plan.BackOff {
		total[st.IDs[0]] = 0
	}
	return sum
}

func (s *State) stateOf(st *step, now time.Time) StepState {
	for _, p := range s.problems {
		if p.settled == nil && p.step == st {
			if p.entry.Act == Unsure {
				return IsUnsure
			}
			return InTrouble
		}
	}
	switch {
	case st.left != nil:
		return LeftOut
	case st.closed(now):
		return IsDone
	case st.begun != nil:
		return Waiting
	}
	return ToDo
}

// asks lists the open questions.
func (s *State) asks(now time.Time) []Ask {
	if s.Status() != Open {
		return nil
	}
	var all []Ask
	if len(s.needs()) > 0 && s.work.Job == "" && len(s.ready) == 0 && s.firstDone() == nil {
		all = append(all, Ask{Kind: AskReadiness})
	}
	for _, e := range inTime(slices.Clone(s.replaced), (*Entry).mark) {
		answered := slices.ContainsFunc(s.seen, func(note *Entry) bool { return note.Act == Remark && note.Of == e.ID })
		if _, ids := s.placeOf(e); !answered {
			all = append(all, Ask{Kind: AskNeighbours, IDs: ids, Of: e.ID})
		}
	}
	if _, r := s.upNext(now); r != nil {
		all = append(all, Ask{Kind: AskRound, Stage: r.stage, Round: r.round, Until: r.until})
	}
	return all
}

func (s *State) troubles() []TroubleSeen {
	var all []TroubleSeen
	for _, p := range s.problems {
		all = append(all, TroubleSeen{
			Mark: p.entry.mark(), Trouble: p.entry.Trouble, Step: p.number(), IDs: p.ids,
			Blocks: p.blocks(s.work.Direction), Photo: p.entry.Photo, Settled: p.settled.marked(),
			Decided: p.decision(), TurnOn: p.turnOn(),
		})
	}
	return inTime(all, TroubleSeen.mark)
}

func (s *State) shownReadings() []Reading {
	var all []Reading
	for _, e := range s.readings {
		found, _ := s.readingFound(e)
		result, _ := s.result(e) // what is no value of the file was refused, or comes from an older program
		outside := found.Code == ReadingOutside || result.Verdict.Outside()
		all = append(all, Reading{e.mark(), e.Step, e.Place, e.Measure, e.Value, e.Unit, outside, e.Shim, false, result})
	}
	return inTime(all, Reading.mark)
}

// firstDone is the entry by which the work began.
func (s *State) firstDone() *Entry {
	var first *Entry
	for _, st := range s.steps {
		if st.done != nil && (first == nil || st.done.earlier(first)) {
			first = st.done
		}
	}
	return first
}

func (e *Entry) mark() Mark { return Mark{e.ID, e.Who, e.Time, e.Note, e.DecidedBy} }

// marked is the mark of an entry that may be none.
func (e *Entry) marked() *Mark {
	if e == nil {
		return nil
	}
	m := e.mark()
	return &m
}

func (e *Entry) hasNote() bool { return strings.TrimSpace(e.Note) != "" }

func (e *Entry) earlier(other *Entry) bool { return e.mark().compare(other.mark()) < 0 }

func (m Mark) compare(other Mark) int {
	return cmp.Or(m.At.Compare(other.At), cmp.Compare(m.Entry, other.Entry))
}

func (m Mark) mark() Mark { return m }

// inTime sorts a list by the time of its entries.
func inTime[T any](list []T, mark func(T) Mark) []T {
	slices.SortStableFunc(list, func(a, b T) int { return mark(a).compare(mark(b)) })
	return list
}

// CatchUp says which of its steps this is for a new fastener that catches up, and
// of how many; 0, 0 for a step of the plan or of a round.
func (v View) CatchUp(s Step) (nth, of int) {
	if s.Recovery == 0 {
		return 0, 0
	}
	for _, other := range v.Steps {
		if other.Recovery == 0 || other.NewOne != s.NewOne || !slices.Equal(other.IDs, s.IDs) {
			continue
		}
		of++
		if other.Number == s.Number {
			nth = of
		}
	}
	return nth, of
}

// DecidedAt returns the interrupted angle at a step of which somebody decided what
// becomes of it on that same fastener; nil where there is none.
func (v View) DecidedAt(step int) *TroubleSeen {
	for i, t := range slices.Backward(v.Troubles) {
		if t.Trouble != "" || t.Step != step {
			continue
		}
		if t.Settled == nil || t.Decided == NewFastener {
			return nil
		}
		return &v.Troubles[i]
	}
	return nil
}

// AsDone lists the steps as they were done, by time, with the taps that were taken
// back, the troubles that were met and the new fasteners that went in; what is still
// to do follows in the order of work.
func (v View) AsDone() []Step {
	all := slices.Clone(v.Steps)
	for _, u := range v.Undone {
		st := v.at(u.Step, u.At)
		st.State, st.By, st.At, st.Reason, st.Undone = ToDo, u.By, u.At, u.Note, &u
		all = append(all, st)
	}
	for i, t := range v.Troubles {
		st := v.at(t.Step, t.At)
		st.IDs, st.By, st.At, st.Met = t.IDs, t.By, t.At, &v.Troubles[i]
		if st.State = InTrouble; t.Trouble == "" {
			st.State = IsUnsure
		}
		all = append(all, st)
	}
	for i, r := range v.Replaced {
		all = append(all, Step{IDs: r.IDs, State: IsDone, By: r.By, At: r.At, Reason: r.Note, Fresh: &v.Replaced[i]})
	}
	slices.SortStableFunc(all, func(a, b Step) int {
		switch {
		case a.At.IsZero() && b.At.IsZero():
			return 0
		case a.At.IsZero():
			return 1
		case b.At.IsZero():
			return -1
		}
		return a.At.Compare(b.At)
	})
	return all
}

// at is what the plan says of a step, for something that happened at it; empty where
// it was over by then.
func (v View) at(number int, at time.Time) Step {
	for _, st := range v.Steps {
		if st.Number == number && (st.At.IsZero() || !st.At.Before(at)) {
			st.Wrench, st.Old, st.OutOfOrder, st.Reason, st.TotalDeg = "", false, false, "", 0
			return st
		}
	}
	return Step{}
}
