package run

import (
	"slices"

	"drawdown/geometry/finding"
)

// problem is a trouble that was reported, or an angle that was interrupted.
type problem struct {
	entry    *Entry
	step     *step // that it was met at; nil where the fastener has none in this run
	ids      []string
	region   int    // from this stage on it blocks, where it blocks stages
	settled  *Entry // by a settle or a replace
	replaced *Entry
}

// name is the fastener of the problem, or the first of them; empty for a wait.
func (p *problem) name() string {
	if len(p.ids) == 0 {
		return ""
	}
	return p.ids[0]
}

// number is that of the step; 0 where the fastener has none in this run.
func (p *problem) number() int {
	if p.step == nil {
		return 0
	}
	return p.step.Number
}

// holds reports whether the step is on the fastener in trouble.
func (p *problem) holds(st *step) bool { return p.step == st || st.on(p.ids) }

// blocks says what an open problem blocks: while tightening, every trouble but
// seized and other blocks the stage; all else only its own fastener (6).
func (p *problem) blocks(d Direction) Blocks {
	switch {
	case p.settled != nil:
		return BlocksNothing
	case d == Loosen, p.entry.Act == Unsure, p.entry.Trouble == Seized, p.entry.Trouble == OtherTrouble:
		return BlocksFastener
	}
	return BlocksStage
}

// noStage is after every stage.
const noStage = 1 << 30

// blockedFrom is the first stage that a trouble blocks; noStage where none does.
func (s *State) blockedFrom() int {
	from := noStage
	for _, p := range s.problems {
		if p.blocks(s.work.Direction) == BlocksStage {
			from = min(from, p.region)
		}
	}
	return from
}

// held reports whether an open problem holds the step.
func (s *State) held(st *step) bool {
	return slices.ContainsFunc(s.problems, func(p *problem) bool { return p.settled == nil && p.holds(st) })
}

// judgeTrouble: the same trouble is reported once (3).
func (s *State) judgeTrouble(e Entry) *Refusal {
	st, ids := s.placeOf(&e)
	if st != nil && st.Old {
		return refused(StepReplaced, s.about(st)).because(st.done)
	}
	for _, p := range s.problems {
		if p.settled == nil && p.entry.Trouble == e.Trouble && (p.step == st || slices.Equal(p.ids, ids)) {
			return refused(TroubleAlready, finding.Values{"id": p.name(), "trouble": e.Trouble.Term()}).because(p.entry)
		}
	}
	return nil
}

// judgeUnsure: only an angle can be left unsure; a torque is set again (5).
func (s *State) judgeUnsure(e Entry) *Refusal {
	st := s.numbered[e.Step]
	switch {
	case !st.turns():
		return refused(NotAnAngle, finding.Values{"step": st.Number})
	case st.Old:
		return refused(StepReplaced, s.about(st)).because(st.done)
	case st.left != nil:
		return refused(StepLeftOut, s.about(st)).because(st.left)
	}
	for _, p := range s.problems {
		if p.settled == nil && p.entry.Act == Unsure && p.step == st {
			return refused(UnsureAlready, s.about(st)).because(p.entry)
		}
	}
	return nil
}

// placeOf returns the step and the fasteners that an entry is about. An entry
// that names a fastener alone is about the step that comes next on it.
func (s *State) placeOf(e *Entry) (*step, []string) {
	st := s.numbered[e.Step]
	if e.Place == nil || e.Place.Fastener == "" {
		if st == nil {
			return nil, nil
		}
		return st, st.IDs
	}
	ids := []string{e.Place.Fastener}
	if st == nil {
		st = s.nextOf(ids)
	}
	return st, ids
}

// nextOf returns the first step that is left to do on the fasteners, else their
// last one.
func (s *State) nextOf(ids []string) *step {
	var last *step
	for _, st := range s.steps {
		if st.Old || !st.on(ids) {
			continue
		}
		if last = st; st.done == nil && st.left == nil {
			break
		}
	}
	return last
}

func (s *State) applyTrouble(e *Entry) {
	p := &problem{entry: e}
	p.step, p.ids = s.placeOf(e)
	if p.step != nil {
		p.region = p.step.at.region
	}
	s.problems = append(s.problems, p)
}

// judgeSettle: what is settled is a trouble or an unsure angle, and once.
func (s *State) judgeSettle(e Entry) *Refusal {
	of := s.entries[e.Of]
	switch {
	case of == nil:
		return refused(NoSuchEntry, finding.Values{"of": e.Of})
	case of.Act != Report && of.Act != Unsure:
		return refused(NotATrouble, nil).because(of)
	case s.undone[e.Of]:
		return refused(UndoneAlready, nil).because(of)
	}
	p := s.problemOf(e.Of)
	if p.settled != nil {
		return refused(SettledAlready, nil).because(p.settled)
	}
	return s.judgeRepair(e, p.ids)
}

// problemOf returns the problem that an entry reported; nil where it was
// undone.
func (s *State) problemOf(id string) *problem {
	i := slices.IndexFunc(s.problems, func(p *problem) bool { return p.entry.ID == id })
	if i < 0 {
		return nil
	}
	return s.problems[i]
}

// applySettle: an angle that counts as done is done by that (5).
func (s *State) applySettle(e *Entry) {
	p := s.problemOf(e.Of)
	if p == nil {
		return
	}
	p.settled = e
	if e.Decided == CountsAsDone && p.entry.Act == Unsure && p.step.done == nil {
		p.step.done = e
	}
}

// decisions are what an entry can decide: a new fastener goes in by a replace.
func (e Entry) decisions() []Decision {
	if e.Act == Replace {
		return []Decision{NewFastener}
	}
	return []Decision{CountsAsDone, TurnOn, OtherDecision}
}

// decision is what became of an angle that was interrupted; empty for a trouble, and
// where nobody said which.
func (p *problem) decision() Decision {
	switch {
	case p.settled == nil || p.entry.Act != Unsure:
		return ""
	case p.settled.Act == Replace:
		return NewFastener
	}
	return p.settled.Decided
}

// turnOn is by how much the fastener is turned on where that was decided, in degrees.
func (p *problem) turnOn() Value {
	if p.decision() != TurnOn {
		return ""
	}
	return p.settled.Value
}

// judgeUndoTrouble: a trouble that was dealt with was none by a wrong tap.
func (s *State) judgeUndoTrouble(of *Entry) *Refusal {
	if p := s.problemOf(of.ID); p != nil && p.settled != nil {
		return refused(SettledAlready, nil).because(p.settled)
	}
	return nil
}
