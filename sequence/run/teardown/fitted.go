package teardown

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// UsedOnce says whether a new one is fitted, and somebody has to say that it was.
func (s Supply) UsedOnce() bool { return s.Sort == Gasket || s.Sort == NewPart }

// judgeFitted accepts what the file of the machine lists as new, once.
func (s *State) judgeFitted(e run.Entry) *run.Refusal {
	once := slices.DeleteFunc(slices.Clone(s.work.Supplies), func(one Supply) bool { return !one.UsedOnce() })
	i := slices.IndexFunc(once, func(one Supply) bool { return one.What == e.Kind })
	if e.Kind != "" && i < 0 {
		var names []string
		for _, one := range once {
			names = append(names, one.What)
		}
		return wrongly(run.NoSuchKind, finding.Values{"kind": e.Kind, "allowed": names})
	}
	if done := s.fittedBy(e.Kind); e.Kind != "" && done != nil {
		return because(FittedAlready, finding.Values{"what": finding.Term(e.Kind)}, done)
	}
	return nil
}

// fittedBy returns the entry that says that new ones of a kind were fitted; one that
// names no kind covers them all.
func (s *State) fittedBy(kind string) *run.Entry {
	for _, e := range s.order {
		if e.Act == run.Fitted && !s.undone[e.ID] && (e.Kind == "" || e.Kind == kind) {
			return e
		}
	}
	return nil
}
