package run

import (
	"maps"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// repeat is a stage that is gone through again until something holds: caps under
// springs come down by small turns before their torque, or a stage goes on until
// what the file says.
type repeat struct {
	stage    int
	part     part   // before: rounds of turns, then the stage; after: the stage itself again
	until    string // empty: until each sits
	round    int    // that is on, or was last
	rounds   []*Entry
	finished *Entry
}

// mostRounds is more than any thread has turns.
const mostRounds = 100

func repeats(steps []Step) []*repeat {
	var all []*repeat
	for i, st := range steps {
		if i > 0 && steps[i-1].Stage == st.Stage {
			continue
		}
		if st.ByTurnsDeg > 0 {
			all = append(all, &repeat{stage: st.Stage, part: before})
		}
		if st.Until != "" {
			all = append(all, &repeat{stage: st.Stage, part: after, until: st.Until, round: 1})
		}
	}
	return all
}

// comesBefore reports whether the rounds are to be finished before a step.
func (r *repeat) comesBefore(at position) bool {
	return at.region > r.stage || at.region == r.stage && at.part > r.part
}

// judgeRound: whether a stage goes on is decided when its round is done.
func (s *State) judgeRound(e Entry) *Refusal {
	for _, judge := range []func(Entry, *step) *Refusal{s.judgeAccepted, s.judgeReady} {
		if r := judge(e, nil); r != nil {
			return r
		}
	}
	next, asked := s.upNext(e.Time)
	open := s.unfinished()
	switch {
	case open == nil:
		return refused(NoRounds, nil)
	case next != nil:
		return refused(RoundOpen, finding.Values{"stage": open.stage, "round": open.round, "next": next.Number})
	case asked == nil: // a trouble blocks the stage
		return s.judgeBlocked(e, &step{at: position{region: open.stage}})
	case e.Act == AnotherRound && asked.round >= mostRounds:
		return refused(TooManyRounds, finding.Values{"stage": asked.stage, "most": mostRounds})
	}
	return nil
}

// unfinished is the first stage that still repeats; nil where there is none.
func (s *State) unfinished() *repeat {
	i := slices.IndexFunc(s.repeats, func(r *repeat) bool { return r.finished == nil })
	if i < 0 {
		return nil
	}
	return s.repeats[i]
}

func (s *State) applyFinished(e *Entry) {
	if r := s.unfinished(); r != nil {
		r.finished = e
	}
}

func (s *State) applyAnotherRound(e *Entry) {
	r := s.unfinished()
	if r == nil {
		return
	}
	r.round++
	r.rounds = append(r.rounds, e)
	var added []*step
	for i, planned := range s.work.Steps {
		if planned.Stage == r.stage {
			added = append(added, &step{Step: r.once(planned), from: e, at: position{region: r.stage, part: r.part, round: r.round, stage: r.stage, index: i}})
		}
	}
	s.add(added...)
}

// once is a step of the round that is on.
func (r *repeat) once(st Step) Step {
	st.Round = r.round
	if r.part == before {
		st.Do, st.AngleDeg, st.Figure = plan.TurnBack, st.ByTurnsDeg, unit.Angle(st.ByTurnsDeg).String()
		st.TorqueNm, st.Percent, st.ByTurnsDeg, st.WorkedOut = 0, 0, 0, false
	}
	if st.turns() {
		st.FromDeg += float64(r.round-1) * st.AngleDeg
		st.ToDeg = st.FromDeg + st.AngleDeg
	}
	return st
}

// judgeUndoRound: a round is taken back as long as nothing of it was done, and
// the end of the rounds as long as nothing after them was.
func (s *State) judgeUndoRound(of *Entry) *Refusal {
	for _, r := range s.repeats {
		for _, st := range s.steps {
			touched := st.done != nil || st.left != nil || s.held(st)
			if touched && (st.from == of || r.finished == of && r.comesBefore(st.at)) {
				by := st.done
				if by == nil {
					by = st.left
				}
				return refused(LaterStepDone, finding.Values{"id": st.ID, "later": st.Number}).because(by)
			}
		}
		if i := slices.Index(r.rounds, of); i >= 0 && (r.finished != nil || i < len(r.rounds)-1) {
			return refused(RoundOver, finding.Values{"stage": r.stage}).because(r.finished)
		}
	}
	return nil
}

func (s *State) undoRound(of *Entry) {
	for _, r := range s.repeats {
		if r.finished == of {
			r.finished = nil
		}
		if i := slices.Index(r.rounds, of); i >= 0 {
			r.rounds = slices.Delete(r.rounds, i, i+1)
			r.round--
		}
	}
	s.steps = slices.DeleteFunc(s.steps, func(st *step) bool { return st.from == of })
	maps.DeleteFunc(s.numbered, func(_ int, st *step) bool { return st.from == of })
}
