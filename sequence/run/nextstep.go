package run

import (
	"cmp"
	"slices"
	"time"
)

// position is where a step stands in the order of work. It depends on the plan
// and on the step's own fastener alone, so that entries on different fasteners
// give the same order whichever came first.
type position struct {
	region int // the stage at whose place the step is done
	part   part
	round  int
	stage  int // that it is of
	index  int // in the plan
}

// part orders what is done at the place of one stage.
type part int

const (
	recovery  part = iota // a new fastener catches up first
	before                // rounds that bring the caps down
	asPlanned             // the steps of the plan
	after                 // rounds until something holds
)

func (p position) compare(q position) int {
	return cmp.Or(cmp.Compare(p.region, q.region), cmp.Compare(p.part, q.part), cmp.Compare(p.round, q.round), cmp.Compare(p.stage, q.stage), cmp.Compare(p.index, q.index))
}

// add puts further steps into the order. The number of a copy is that of its step
// in the plan with the length of the plan added, as often as there are copies.
func (s *State) add(added ...*step) {
	for _, st := range added {
		origin := st.at.index
		s.copies[origin]++
		st.Number = origin + 1 + s.copies[origin]*len(s.work.Steps)
		s.numbered[st.Number] = st
	}
	s.steps = append(s.steps, added...)
	slices.SortStableFunc(s.steps, func(a, b *step) int { return a.at.compare(b.at) })
}

// upNext is what the order asks for: a step, or the answer whether a stage goes on.
// Both are nil where nothing is left or all that is left is blocked.
func (s *State) upNext(now time.Time) (*step, *repeat) {
	blocked := s.blockedFrom()
	var next *step
	for _, st := range s.steps {
		if st.at.region >= blocked {
			break
		}
		if !st.closed(now) && !st.Old && !s.held(st) {
			next = st
			break
		}
	}
	for _, r := range s.repeats {
		if r.finished == nil && r.stage < blocked && (next == nil || r.comesBefore(next.at)) {
			return nil, r
		}
	}
	return next, nil
}
