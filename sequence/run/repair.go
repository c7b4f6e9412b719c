package run

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
)

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
		add(e, ids, s.reportBehind(e))
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

// reportBehind is the report that a new fastener was for; empty for none.
func (s *State) reportBehind(e *Entry) string {
	for _, p := range slices.Backward(s.problems) {
		if p.replaced == e {
			return p.entry.ID
		}
	}
	return ""
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
// has to know: inserts, and values outside their limits.
func (s *State) jobFlags() []Flag {
	if s.job == nil {
		return nil
	}
	all := slices.DeleteFunc(insertFlags(s.repaired()), func(f Flag) bool { return s.entries[f.Entry] != nil })
	for _, r := range s.job.Outside {
		for _, found := range r.Findings() {
			if found.Severity == finding.Warning && s.entries[r.Entry] == nil {
				all = append(all, Flag{found, r.Mark, 0})
			}
		}
	}
	return inTime(all, Flag.mark)
}
