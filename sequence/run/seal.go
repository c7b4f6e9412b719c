package run

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// judgeSeal: a seal needs every step done or left out, every trouble settled and a
// wrench number where a torque was set (12). The second signature is another
// person's.
func (s *State) judgeSeal(e Entry) *Refusal {
	var open []int
	for _, st := range s.steps {
		if !st.Old && !st.closed(e.Time) {
			open = append(open, st.Number)
		}
	}
	var ids []string
	for _, p := range s.problems {
		if p.settled == nil {
			ids = append(ids, p.name())
		}
	}
	stages := s.stagesWithoutWrench()
	unfinished := s.unfinished()
	switch {
	case len(ids) > 0:
		return refused(SealTroubles, finding.Values{"count": len(ids), "ids": ids})
	case len(open) > 0:
		return refused(SealSteps, finding.Values{"steps": len(open), "first": open[0]})
	case unfinished != nil:
		return refused(SealRounds, finding.Values{"stage": unfinished.stage})
	case len(stages) > 0 && e.Wrench == "":
		return refused(SealWrench, finding.Values{"stages": stages})
	case e.Second != "" && strings.EqualFold(strings.TrimSpace(e.Second), strings.TrimSpace(e.Who)):
		return refused(SealSecond, nil)
	}
	return nil
}

// stagesWithoutWrench are the stages in which a torque was set and no entry names
// the wrench.
func (s *State) stagesWithoutWrench() []int {
	named := map[int]bool{}
	for _, st := range s.steps {
		if st.done != nil && !st.Old && st.TorqueNm > 0 {
			named[st.Stage] = named[st.Stage] || st.done.Wrench != ""
		}
	}
	var without []int
	for stage, has := range named {
		if !has {
			without = append(without, stage)
		}
	}
	slices.Sort(without)
	return without
}

// judgeCorrect: a correction belongs to an entry of this run.
func (s *State) judgeCorrect(e Entry) *Refusal {
	if s.entries[e.Of] == nil {
		return refused(NoSuchEntry, finding.Values{"of": e.Of})
	}
	return nil
}

// judgeAccept: what is asked for is accepted once (11).
func (s *State) judgeAccept(Entry) *Refusal {
	if s.accepted != nil {
		return refused(AcceptedAlready, nil).because(s.accepted)
	}
	return nil
}

// toAccept is what is still to be accepted before tightening starts (11).
func (s *State) toAccept() []finding.Finding {
	if s.accepted != nil {
		return nil
	}
	if s.firstDone() != nil {
		return s.work.ToAccept
	}
	return slices.Concat(s.work.ToAccept, foundOf(s.openJobFlags()))
}

// wasAccepted is what was asked for when somebody accepted it.
func (s *State) wasAccepted() []finding.Finding {
	if s.accepted == nil {
		return nil
	}
	told := slices.DeleteFunc(s.jobFlags(s.accepted.Time), func(f Flag) bool { return f.At.After(s.accepted.Time) })
	return slices.Concat(s.work.ToAccept, foundOf(told))
}

func foundOf(flags []Flag) (all []finding.Finding) {
	for _, f := range flags {
		all = append(all, f.Finding)
	}
	return all
}
