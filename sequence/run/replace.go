package run

import (
	"slices"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
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

// judgeRepair: an insert has the thread of the fastener that goes into it.
func (s *State) judgeRepair(e Entry, ids []string) *Refusal {
	if e.Repair != ThreadInsert {
		return nil
	}
	fitted, err := thread.Parse(e.Thread)
	if err != nil {
		return Wrong(err)
	}
	for _, id := range ids {
		name := s.work.ThreadOf(id)
		if own, err := thread.Parse(name); err == nil && own.Name != fitted.Name {
			return refused(ThreadDiffers, finding.Values{"id": id, "thread": name, "insert": fitted.Name})
		}
	}
	return nil
}

// repaired lists the holes that were repaired, in this run and in the others of its
// job.
func (s *State) repaired() []Repaired {
	var all []Repaired
	add := func(e *Entry, ids []string, of string) {
		for _, id := range ids {
			if e.Repair != "" {
				all = append(all, Repaired{id, e.Repair, threadName(e.Thread), e.mark(), of})
			}
		}
	}
	for _, p := range s.problems {
		if p.settled != nil && p.settled.Act == Settle {
			add(p.settled, p.ids, p.entry.ID)
		}
	}
	for _, e := range s.replaced {
		_, ids := s.placeOf(e)
		add(e, ids, s.behind(e).ID)
	}
	if s.job != nil {
		for _, r := range s.job.Repaired {
			if s.entries[r.Entry] == nil && !slices.Contains(all, r) { // another run knows it from a third
				all = append(all, r)
			}
		}
	}
	return inTime(all, Repaired.mark)
}

// threadName is a thread as the standard names it, else as it is written.
func threadName(written string) string {
	if t, err := thread.Parse(written); err == nil {
		return t.Name
	}
	return written
}

// behind is the report that a new fastener was for, the latest of several; an empty
// entry where there was none.
func (s *State) behind(e *Entry) *Entry {
	for _, p := range slices.Backward(s.problems) {
		if p.replaced == e {
			return p.entry
		}
	}
	return &Entry{}
}

// repairFlags names the holes into which this run put an insert.
func (s *State) repairFlags() []Flag {
	return slices.DeleteFunc(insertFlags(s.repaired()), func(f Flag) bool { return s.entries[f.Entry] == nil })
}

// insertFlags names the holes that have an insert.
func insertFlags(list []Repaired) []Flag {
	var all []Flag
	for _, r := range list {
		if r.Repair == ThreadInsert {
			all = append(all, Flag{finding.Warned(HoleRepaired, finding.Values{"id": r.ID, "thread": r.Thread}), r.Mark, 0})
		}
	}
	return all
}

// jobFlags are what the job's other runs of this joint found and whoever tightens it
// has to know: inserts, and values that are outside their limits by what was read up to
// a moment.
func (s *State) jobFlags(until time.Time) []Flag {
	if s.job == nil {
		return nil
	}
	all := slices.DeleteFunc(insertFlags(s.repaired()), func(f Flag) bool { return s.entries[f.Entry] != nil })
	all = append(all, s.outsideFlags(false, until)...)
	return inTime(all, Flag.mark)
}

// openJobFlags are those by all that was read.
func (s *State) openJobFlags() []Flag { return s.jobFlags(lastMoment) }
