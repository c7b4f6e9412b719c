package teardown

import (
	"slices"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// RunFact is the state of a run of the job.
type RunFact struct {
	Run       string        `json:"run"`
	Of        string        `json:"of"`
	Direction run.Direction `json:"work"`
	Again     string        `json:"again,omitempty"` // the run that it checks
	Status    run.Status    `json:"state"`
}

// State is a job with the entries accepted so far. It is not safe for
// concurrent use.
type State struct {
	work    Work
	entries map[string]*run.Entry
	undone  map[string]bool
	order   []*run.Entry // in order of arrival
	closed  *run.Entry
}

// Start returns the state before the first entry.
func (w Work) Start() *State {
	return &State{work: w, entries: map[string]*run.Entry{}, undone: map[string]bool{}}
}

// Replay returns the state after entries that were accepted before, without
// judging them again.
func (w Work) Replay(entries []run.Entry) *State {
	s := w.Start()
	for _, e := range entries {
		s.apply(e)
	}
	return s
}

// Version is the number of accepted entries.
func (s *State) Version() int { return len(s.order) }

// Closed reports whether the job only accepts corrections.
func (s *State) Closed() bool { return s.closed != nil }

// Acts lists the acts on a job.
var Acts = []run.Act{run.Part, run.Undo, run.Ready, run.Measure, run.Find, run.Remark, run.Printed, run.HandOver, run.SendOut, run.Back, run.Adopt, run.Fitted, run.Accept, run.Close, run.Correct}

// Take judges an entry and applies it; runs are those of the job. Points are what its
// View lists as open: closing waits until each is accepted.
func (s *State) Take(e run.Entry, runs []RunFact, points ...Point) *run.Refusal {
	if r := e.FaultByItself(); r != nil {
		return r
	}
	if r := s.judge(e, runs, points); r != nil {
		return r
	}
	s.apply(e)
	return nil
}

func (s *State) judge(e run.Entry, runs []RunFact, points []Point) *run.Refusal {
	switch {
	case !slices.Contains(Acts, e.Act):
		return &run.Refusal{Finding: finding.Failed(ActOfARun, finding.Values{"act": string(e.Act), "allowed": textsOf(Acts)}), Malformed: true}
	case s.closed != nil && e.Act != run.Correct:
		return because(JobClosed, nil, s.closed)
	}
	switch e.Act {
	case run.Part:
		return s.judgePart(e, runs)
	case run.Undo:
		return s.judgeUndo(e)
	case run.Correct:
		return s.judgeCorrect(e)
	case run.Close:
		return s.judgeClose(runs, points)
	case run.Accept:
		return judgeAccept(e, points)
	case run.Fitted:
		return s.judgeFitted(e)
	case run.Ready:
		if e.Kind != "" && !s.work.asksFor(e.Kind) {
			return wrongly(run.NoSuchKind, finding.Values{"kind": e.Kind, "allowed": s.work.askable()})
		}
		if e.Joint != "" {
			_, r := s.jointsOf(e)
			return r
		}
	case run.SendOut:
		return s.judgeSendOut(e)
	case run.Back:
		return s.judgeBack(e)
	case run.Find, run.Measure:
		return s.judgeSeen(e)
	case run.Adopt:
		if e.Revision == nil {
			return because(NothingNewer, nil, nil)
		}
	}
	return nil
}

// judgePart accepts a line of the lists once, and out of order only with a
// reason.
func (s *State) judgePart(e run.Entry, runs []RunFact) *run.Refusal {
	line := s.line(e.Step)
	if line == nil || line.Joint != "" {
		return &run.Refusal{Finding: finding.Failed(NoPartStep, finding.Values{"step": e.Step}), Malformed: true}
	}
	if done := s.partDone(e.Step); done != nil {
		return because(PartDone, finding.Values{"step": e.Step}, done)
	}
	if out := s.outOf(line.Part); out != nil && e.Step > len(s.work.Teardown) {
		return because(PartOut, finding.Values{"part": line.Part, "to": out.To}, out)
	}
	if first := s.before(e.Step, runs, e.Source == run.OnPaper); first != nil && e.Note == "" {
		return because(PartOutOfOrder, finding.Values{"step": e.Step, "next": first.Number, "what": first.What()}, nil)
	}
	return nil
}

// judgeUndo allows taking back a wrong tap: a part step, as long as no later
// one of its list is done; a readiness; and the departure or return of a part,
// unless more was done with it since.
func (s *State) judgeUndo(e run.Entry) *run.Refusal {
	of := s.entries[e.Of]
	switch {
	case of == nil:
		return because(NoSuchEntry, finding.Values{"of": e.Of}, nil)
	case s.undone[e.Of]:
		return because(UndoneAlready, nil, nil)
	case !slices.Contains([]run.Act{run.Part, run.Ready, run.Fitted, run.Accept, run.SendOut, run.Back}, of.Act):
		return because(NotUndone, finding.Values{"act": string(of.Act)}, of)
	}
	if later := s.laterOfPart(of); later != nil {
		return because(NotUndone, finding.Values{"act": string(of.Act)}, later)
	}
	if of.Act == run.Part {
		for _, later := range s.order {
			if later.Act == run.Part && !s.undone[later.ID] && later.Step > of.Step && s.sameList(later.Step, of.Step) {
				return because(LaterPartDone, finding.Values{"step": later.Step}, later)
			}
		}
	}
	return nil
}

func (s *State) sameList(a, b int) bool {
	return (a > len(s.work.Teardown)) == (b > len(s.work.Teardown))
}

func (s *State) judgeCorrect(e run.Entry) *run.Refusal {
	if s.entries[e.Of] == nil {
		return because(NoSuchEntry, finding.Values{"of": e.Of}, nil)
	}
	return nil
}

// judgeClose requires every run of the job to be sealed or void, every part to be
// back, and somebody to have accepted each point that is open.
func (s *State) judgeClose(runs []RunFact, points []Point) *run.Refusal {
	var open []string
	for _, r := range runs {
		if r.Status == run.Open {
			open = append(open, r.Run)
		}
	}
	if len(open) > 0 {
		return because(RunsOpen, finding.Values{"runs": open}, nil)
	}
	if out := s.out(); len(out) > 0 {
		return because(PartsOut, finding.Values{"parts": s.partsOf(out)}, out[0])
	}
	return refusedFor(points)
}

func because(code finding.Code, values finding.Values, e *run.Entry) *run.Refusal {
	r := &run.Refusal{Finding: finding.Failed(code, values)}
	if e != nil {
		r.By, r.At = e.Who, e.Time
	}
	return r
}

// apply applies an entry that was judged, here or when it was first accepted.
func (s *State) apply(e run.Entry) {
	if s.entries[e.ID] != nil {
		return
	}
	s.entries[e.ID] = &e
	s.order = append(s.order, &e)
	switch e.Act {
	case run.Undo:
		s.undone[e.Of] = true
	case run.Close:
		s.closed = &e
	}
}

// line returns a line of the lists by its number.
func (s *State) line(number int) *Line {
	for _, list := range [][]Line{s.work.Teardown, s.work.Rebuild} {
		if i := slices.IndexFunc(list, func(l Line) bool { return l.Number == number }); i >= 0 {
			return &list[i]
		}
	}
	return nil
}

// partDone returns the entry that ticks a part step.
func (s *State) partDone(number int) *run.Entry {
	for _, e := range s.order {
		if e.Act == run.Part && e.Step == number && !s.undone[e.ID] {
			return e
		}
	}
	return nil
}

// Adopted returns the latest adopted revision, or nil.
func (s *State) Adopted() *run.Entry {
	for _, e := range slices.Backward(s.order) {
		if e.Act == run.Adopt {
			return e
		}
	}
	return nil
}

// AdoptedSince lists what newer files changed that were adopted from a moment on.
func (s *State) AdoptedSince(t time.Time) (all []run.Difference) {
	for _, e := range s.order {
		if e.Act == run.Adopt && e.Revision != nil && !e.Time.Before(t) {
			all = append(all, e.Revision.Differences...)
		}
	}
	return all
}

// Ready returns the entries that make something ready, in the form for the runs
// of the job.
func (s *State) Ready() []run.Entry {
	var ready []run.Entry
	for _, e := range s.order {
		if e.Act == run.Ready && !s.undone[e.ID] {
			ready = append(ready, *e)
		}
	}
	return ready
}

func textsOf(acts []run.Act) []string {
	all := make([]string, len(acts))
	for i, a := range acts {
		all[i] = string(a)
	}
	return all
}
