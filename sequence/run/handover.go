package run

import (
	"slices"
	"time"
)

func (s *State) applyHandOver(e *Entry) {
	lines := s.fiveLines(e.Time)
	lines.Next = e.To
	s.handOvers = append(s.handOvers, HandedOver{e.mark(), lines})
}

// fiveLines are what the next shift has to know: what is done, what is open, what
// was found, what the work waits for, and who takes over.
func (s *State) fiveLines(now time.Time) FiveLines {
	lines := FiveLines{Found: s.troubles(), Waiting: s.waiting(now)}
	left := map[string]int{} // steps of a fastener
	stages := map[int]int{}  // open steps of a stage
	for _, f := range s.work.Fasteners {
		left[f.ID] = 0
	}
	for _, st := range s.steps {
		if st.Old {
			continue
		}
		open := 0
		if st.closed(now) {
			lines.Done.Steps++
		} else {
			lines.Open.Steps++
			open = 1
		}
		stages[st.Stage] += open
		for _, id := range st.IDs {
			left[id] += open
		}
	}
	for _, n := range left {
		if n > 0 {
			lines.Open.Fasteners++
		} else {
			lines.Done.Fasteners++
		}
	}
	for stage, n := range stages {
		if n > 0 {
			lines.Open.Stages = append(lines.Open.Stages, stage)
		} else {
			lines.Done.Stages = append(lines.Done.Stages, stage)
		}
	}
	if next, _ := s.upNext(now); next != nil {
		lines.NextStep = next.Number
	}
	slices.Sort(lines.Open.Stages)
	slices.Sort(lines.Done.Stages)
	return lines
}

// waiting lists what the work waits for.
func (s *State) waiting(now time.Time) []Awaited {
	var all []Awaited
	if n := len(s.toAccept()); n > 0 {
		all = append(all, Awaited{Accept: n})
	}
	for _, n := range s.unmet() {
		all = append(all, Awaited{Need: &n})
	}
	for _, t := range s.troubles() {
		if t.Settled == nil {
			all = append(all, Awaited{Settle: t.Entry})
		}
	}
	for _, st := range s.steps {
		if st.begun != nil && !st.closed(now) {
			all = append(all, Awaited{Step: st.Number, Ends: st.ends()})
		}
	}
	for _, a := range s.asks(now) {
		if a.Kind != AskReadiness { // its needs are listed
			all = append(all, Awaited{Ask: &a})
		}
	}
	return all
}
