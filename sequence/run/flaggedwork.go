package run

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// leftFlags names the waits that were left out and, while tightening, the fasteners
// of which steps were.
func (s *State) leftFlags() []Flag {
	var all []Flag
	for _, st := range s.steps {
		switch {
		case st.left == nil || st.Old:
		case st.Do == plan.Wait:
			found := finding.Warned(WaitLeftOut, finding.Values{"step": st.Number, "wait": unit.Duration(st.WaitMin)})
			all = append(all, Flag{found, st.left.mark(), st.Number})
		case s.work.Direction == Tighten:
			all = countLeft(all, st)
		}
	}
	return all
}

// countLeft counts a step that was left out to those of its fastener.
func countLeft(all []Flag, st *step) []Flag {
	i := slices.IndexFunc(all, func(f Flag) bool {
		ids, ofFastener := f.Finding.Values["ids"].([]string)
		return ofFastener && slices.Equal(ids, st.IDs)
	})
	if i < 0 {
		return append(all, Flag{finding.Warned(StepsLeftOut, finding.Values{"ids": st.IDs, "steps": 1}), st.left.mark(), st.Number})
	}
	n := all[i].Finding.Values["steps"].(int)
	all[i].Finding.Values["steps"] = n + 1
	return all
}

// gasketFlags says where nobody reported a new gasket before tightening began.
func (s *State) gasketFlags() []Flag {
	first := s.firstDone()
	if s.work.Gasket == "" || first == nil {
		return nil
	}
	before, pieces, last := 0, 0, first
	for _, e := range s.readyEntries() {
		if e.Kind != GasketKind && (e.Kind != "" || e.Place != nil) {
			continue
		}
		pieces += e.pieces(1)
		if e.Time.Before(first.Time) {
			before += e.pieces(1)
		}
		if last == first || last.earlier(e) {
			last = e
		}
	}
	code := GasketLate
	switch {
	case before > 0:
		return nil
	case pieces == 0 && last == first:
		code = GasketNotSaid
	case pieces == 0:
		code = GasketMissing
	}
	return []Flag{{finding.Warned(code, finding.Values{"gasket": finding.Term(s.work.Gasket)}), last.mark(), 0}}
}

// toolFlags counts, once tightening is sealed, the torques and angles of which nobody
// says what they were done with.
func (s *State) toolFlags() []Flag {
	if s.work.Direction == Loosen || s.sealed == nil {
		return nil
	}
	var torques, angles []*step
	for _, st := range s.steps {
		switch {
		case st.done == nil || st.done.Act != Done || st.Old || st.done.Wrench != "":
		case st.TorqueNm > 0 && s.sealed.Wrench == "":
			torques = append(torques, st)
		case st.Do == plan.Advance:
			angles = append(angles, st)
		}
	}
	return slices.Concat(toolFlag(TorqueNoTool, torques), toolFlag(AngleNoTool, angles))
}

func toolFlag(code finding.Code, bare []*step) []Flag {
	if len(bare) == 0 {
		return nil
	}
	first, stages := bare[0], []int{}
	for _, st := range bare {
		if st.done.earlier(first.done) {
			first = st
		}
		stages = append(stages, st.Stage)
	}
	slices.Sort(stages)
	found := finding.Warned(code, finding.Values{"count": len(bare), "stages": slices.Compact(stages)})
	return []Flag{{found, first.done.mark(), first.Number}}
}

// correctedFlags names the corrections.
func (s *State) correctedFlags() []Flag {
	var all []Flag
	for _, e := range s.seen {
		if e.Act == Correct {
			all = append(all, Flag{finding.Warned(Corrected, finding.Values{"note": e.Note}), e.mark(), e.Step})
		}
	}
	return all
}
