package run

import (
	"slices"

	"drawdown/geometry/finding"
)

// judgeReplace: a new fastener goes in while tightening (7).
func (s *State) judgeReplace(e Entry) *Refusal {
	_, ids := s.placeOf(&e)
	switch {
	case s.work.Direction == Loosen:
		return refused(NotWhileLoosen, finding.Values{"id": ids[0]})
	case len(s.toAccept()) > 0:
		return s.judgeAccepted(e, nil)
	}
	return s.judgeRepair(e, ids)
}

// applyReplace starts a new fastener from its first stage. Its earlier steps no
// longer count, and each is there to be done again before the work goes on at
// the stage that the old one had reached (7).
func (s *State) applyReplace(e *Entry) {
	_, ids := s.placeOf(e)
	s.replaced = append(s.replaced, e)
	for _, p := range s.problems {
		if slices.ContainsFunc(p.ids, func(id string) bool { return slices.Contains(ids, id) }) {
			p.replaced = e
			if p.settled == nil {
				p.settled = e
			}
		}
	}
	reached, newOne := s.reached(ids), s.newOnes(ids)
	var again []*step
	for _, st := range s.steps {
		if st.Old || !st.on(ids) {
			continue
		}
		if st.done == nil && st.left == nil || st.Stage > reached {
			if st.Recovery > 0 { // the newest catches up by it
				st.NewOne = newOne
			}
			continue
		}
		if len(st.IDs) == len(ids) {
			st.Old = true
		}
		if st.at.part == asPlanned || st.at.part == recovery {
			again = append(again, s.again(st, ids, reached, newOne))
		}
	}
	s.add(again...)
}

// reached is the last stage that is done on the fasteners; 0 where none is.
func (s *State) reached(ids []string) int {
	stage := 0
	for _, st := range s.steps {
		if st.done != nil && !st.Old && st.on(ids) {
			stage = max(stage, st.Stage)
		}
	}
	return stage
}

// newOnes counts the new fasteners that went in at the place of the first.
func (s *State) newOnes(ids []string) int {
	n := 0
	for _, e := range s.replaced {
		if _, at := s.placeOf(e); slices.Contains(at, ids[0]) {
			n++
		}
	}
	return n
}

// again is a step of the plan once more, for a new fastener.
func (s *State) again(st *step, ids []string, region, newOne int) *step {
	plan := s.work.Steps[st.at.index]
	plan.Recovery, plan.NewOne, plan.IDs, plan.ID = plan.Number, newOne, ids, ids[0]
	return &step{Step: plan, at: position{region: region, part: recovery, stage: plan.Stage, index: st.at.index}}
}
