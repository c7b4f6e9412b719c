package run

import (
	"math"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// judgeDone: steps go in the plan's order (2), a step is done once (3), what is
// blocked is not done (5, 6), tightening waits for what was not accepted (11) or
// is not ready (8).
func (s *State) judgeDone(e Entry) *Refusal {
	st := s.numbered[e.Step]
	for _, judge := range []func(Entry, *step) *Refusal{
		s.judgeOnce, s.judgeAccepted, s.judgeReady, s.judgeBlocked, s.judgeWait, s.judgeOrder, s.judgeWrench,
	} {
		if r := judge(e, st); r != nil {
			return r
		}
	}
	return nil
}

// judgeOnce: a step is done once (3). Of an angle the person is asked whether
// they turned it too.
func (s *State) judgeOnce(_ Entry, st *step) *Refusal {
	switch {
	case st.Old:
		return refused(StepReplaced, s.about(st)).because(st.done)
	case st.done != nil && st.turns():
		v := s.about(st)
		v["angle"] = unit.Angle(st.AngleDeg)
		return refused(AngleDone, v).because(st.done)
	case st.done != nil:
		return refused(StepDone, s.about(st)).because(st.done)
	case st.left != nil:
		return refused(StepLeftOut, s.about(st)).because(st.left)
	}
	return nil
}

func (s *State) about(st *step) finding.Values {
	v := finding.Values{"step": st.Number}
	if len(st.IDs) > 0 { // a wait is on none
		v["ids"] = st.IDs
	}
	return v
}

func (s *State) judgeAccepted(Entry, *step) *Refusal {
	if n := len(s.toAccept()); n > 0 {
		return refused(AcceptFirst, finding.Values{"count": n})
	}
	return nil
}

// judgeBlocked: an open trouble blocks its fastener and, while tightening, its
// stage and all that follow (5, 6).
func (s *State) judgeBlocked(_ Entry, st *step) *Refusal {
	for _, p := range s.problems {
		if p.settled != nil {
			continue
		}
		switch {
		case !p.holds(st) && !(p.blocks(s.work.Direction) == BlocksStage && st.at.region >= p.region):
		case p.holds(st) && p.entry.Act == Unsure:
			return refused(FastenerUnsure, finding.Values{"id": p.name(), "step": p.step.Number}).because(p.entry)
		case p.holds(st):
			return refused(FastenerBlocked, finding.Values{"id": p.name(), "trouble": p.entry.Trouble.Term()}).because(p.entry)
		default:
			return refused(StageBlocked, finding.Values{"stage": p.region, "id": p.name(), "trouble": p.entry.Trouble.Term()}).because(p.entry)
		}
	}
	return nil
}

// judgeWait: a wait is over when the server's clock says so (9). One that was
// ticked on paper needs no begin.
func (s *State) judgeWait(e Entry, st *step) *Refusal {
	switch {
	case st.Do != plan.Wait || e.Source == OnPaper && st.begun == nil:
		return nil
	case st.begun == nil:
		return refused(NotBegun, finding.Values{"step": st.Number, "wait": unit.Duration(st.WaitMin)})
	case e.Time.Before(st.ends()):
		left := unit.Duration(math.Ceil(st.ends().Sub(e.Time).Minutes()))
		return refused(NotOver, finding.Values{"step": st.Number, "left": left}).because(st.begun)
	}
	return nil
}

// judgeOrder: a step out of order needs a note with the reason (2).
func (s *State) judgeOrder(e Entry, st *step) *Refusal {
	next, asked := s.upNext(e.Time)
	switch {
	case next == st, st.isOver(e.Time), e.hasNote():
		return nil
	case asked != nil:
		return refused(RoundsOpen, finding.Values{"step": st.Number, "stage": asked.stage, "until": asked.until})
	case next == nil: // nothing is left before this step
		return nil
	}
	v := s.about(next)
	v["step"], v["next"] = st.Number, next.Number
	return refused(OutOfOrder, v)
}

func (s *State) applyDone(e *Entry) {
	s.numbered[e.Step].done = e
	if e.Value != "" {
		s.readings = append(s.readings, e)
	}
}

// judgeBegin starts a wait (9). It may not start before its turn either (2).
func (s *State) judgeBegin(e Entry) *Refusal {
	st := s.numbered[e.Step]
	if st.Do != plan.Wait {
		return refused(NotAWait, finding.Values{"step": st.Number})
	}
	if st.begun != nil {
		return refused(BegunAlready, finding.Values{"step": st.Number}).because(st.begun)
	}
	for _, judge := range []func(Entry, *step) *Refusal{s.judgeOnce, s.judgeAccepted, s.judgeReady, s.judgeBlocked, s.judgeOrder} {
		if r := judge(e, st); r != nil {
			return r
		}
	}
	return nil
}

// judgeLeaveOut: only what is still to do is left out, and never an angle that
// nobody is sure of (5).
func (s *State) judgeLeaveOut(e Entry) *Refusal {
	st := s.numbered[e.Step]
	if r := s.judgeOnce(e, st); r != nil {
		if r.Finding.Code == AngleDone {
			return refused(StepDone, s.about(st)).because(st.done)
		}
		return r
	}
	for _, p := range s.problems {
		if p.settled == nil && p.entry.Act == Unsure && p.step == st {
			return refused(FastenerUnsure, finding.Values{"id": p.name(), "step": st.Number}).because(p.entry)
		}
	}
	return nil
}

// ends is when a wait that was begun is over.
func (st *step) ends() time.Time { return st.begun.Time.Add(st.wait()) }
