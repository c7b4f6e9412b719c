package run

import "slices"

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

// AsDone lists the steps as they were done, by time; what is still to do follows
// in the order of work.
func (v View) AsDone() []Step {
	all := slices.Clone(v.Steps)
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
