package run

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// JobFacts are what the job of a run says about what must be ready. The server
// hands them to the state of a tightening run, after a replay and whenever the
// job changes; they are no part of the run's record.
type JobFacts struct {
	Condemned []Condemned // in the job's other runs of this joint
	Repaired  []Repaired  // the same
	Measured  []Reading   // the same, and on the job: values of this joint
	Ready     []Entry     // entries of the job with the act ready
	Out       []Entry     // by which a part of the joint went to the machine shop and is not back
}

// FactsOf is what the runs of a joint found that a run of it has to know. A void run
// does not count.
func FactsOf(others []View) (facts JobFacts) {
	for _, v := range others {
		if v.Status == Voided {
			continue
		}
		facts.Condemned, facts.Repaired = append(facts.Condemned, v.Condemned...), append(facts.Repaired, v.Repaired...)
		facts.Measured = append(facts.Measured, v.values()...)
	}
	return facts
}

// InJob tells the state what its job knows.
func (s *State) InJob(facts JobFacts) { s.job = &facts }

// GasketKind is the kind by which an entry says that the gasket is ready.
const GasketKind = "gasket"

// needs lists what must be ready before tightening: the new ones of each kind
// that is used once, a gasket, what replaced others since, and what replaces the
// condemned (8).
func (s *State) needs() []Need {
	if s.work.Direction != Tighten {
		return nil
	}
	var needs []Need
	for _, k := range s.work.Kinds {
		if k.Reuse == plan.ReuseOnce {
			needs = append(needs, s.covered(Need{Kind: k.Name, Count: k.Count}, nil))
		}
	}
	if s.work.Gasket != "" {
		needs = append(needs, s.covered(Need{Kind: GasketKind, Count: 1, Gasket: s.work.Gasket}, nil))
	}
	for _, e := range inTime(slices.Clone(s.replaced), (*Entry).mark) {
		_, ids := s.placeOf(e)
		for _, id := range ids {
			needs = append(needs, Need{Kind: s.fastener(id).Kind, Count: 1, Ready: 1, ID: id, Trouble: s.behind(e).Trouble})
		}
	}
	known := len(needs)
	for _, c := range s.condemned() {
		if c.Replaced == nil && !s.mended(c) && !slices.ContainsFunc(needs[known:], c.isNeeded) {
			needs = append(needs, s.among(s.covered(Need{Kind: c.Kind, Count: 1, ID: c.ID, Trouble: c.Trouble}, &c), c, needs))
		}
	}
	return needs
}

// mended reports whether it was a hole, and it was repaired.
func (s *State) mended(c Condemned) bool {
	return c.Trouble == HoleThread && slices.ContainsFunc(s.repaired(), func(r Repaired) bool { return r.ID == c.ID && !r.At.Before(c.At) })
}

// isNeeded reports whether a need is that of the same fastener, or of the same hole.
func (c Condemned) isNeeded(n Need) bool {
	return n.ID == c.ID && (n.Trouble == HoleThread) == (c.Trouble == HoleThread)
}

// among covers what another run condemned of a kind that is used once: its new one is
// among those of the kind.
func (s *State) among(n Need, c Condemned, needs []Need) Need {
	i := slices.IndexFunc(needs, func(kind Need) bool { return kind.ID == "" && kind.Kind == c.Kind })
	if i < 0 || c.Trouble == HoleThread || s.entries[c.Entry] != nil {
		return n
	}
	n.Among = true
	if needs[i].Met() {
		n.Ready = n.Count
	}
	return n
}

// covered counts what the entries say is ready. One that names neither a kind nor
// a fastener covers all that was listed when it came.
func (s *State) covered(n Need, c *Condemned) Need {
	for _, e := range s.readyEntries() {
		if c != nil && e.Time.Before(c.At) {
			continue
		}
		fastener := ""
		if e.Place != nil {
			fastener = e.Place.Fastener
		}
		switch {
		case e.Kind == "" && fastener == "", n.ID != "" && fastener == n.ID:
			n.Ready = n.Count
		case n.ID == "" && e.Kind == n.Kind && fastener == "":
			n.Ready, n.Counted = n.Ready+e.pieces(n.Count), true
		}
	}
	n.Ready = min(n.Ready, n.Count)
	return n
}

// pieces is how many an entry says are ready; all where it gives no number.
func (e *Entry) pieces(all int) int {
	if v, ok := e.Value.Number(); ok {
		return int(min(max(v, 0), float64(all)))
	}
	return all
}

func (s *State) readyEntries() []*Entry {
	all := slices.Clone(s.ready)
	if s.job != nil {
		for i := range s.job.Ready {
			all = append(all, &s.job.Ready[i])
		}
	}
	return all
}

// condemned lists what was found broken, stretched or with a bad thread, in this
// run and in the others of its job (8).
func (s *State) condemned() []Condemned {
	var all []Condemned
	add := func(c Condemned) {
		if slices.ContainsFunc(all, func(other Condemned) bool { return other.Entry == c.Entry && other.ID == c.ID }) {
			return // another run of the job knows it from a third
		}
		if c.Replaced == nil {
			c.Replaced = s.replacedAfter(c)
		}
		all = append(all, c)
	}
	for _, p := range s.problems {
		if !p.entry.Trouble.Condemns() {
			continue
		}
		for _, id := range p.ids {
			add(Condemned{ID: id, Kind: s.fastener(id).Kind, Trouble: p.entry.Trouble, Mark: p.entry.mark(), Replaced: p.replaced.marked()})
		}
	}
	if s.job != nil {
		for _, c := range s.job.Condemned {
			add(c)
		}
	}
	return all
}

// replacedAfter returns the replace in this run of a fastener that another run
// of the job condemned.
func (s *State) replacedAfter(c Condemned) *Mark {
	for _, e := range s.replaced {
		if _, ids := s.placeOf(e); slices.Contains(ids, c.ID) && !e.Time.Before(c.At) {
			return e.marked()
		}
	}
	return nil
}

// judgeReady: in a job, tightening waits for what must be ready (8), and for a part
// that is at the machine shop. A run without a job only asks.
func (s *State) judgeReady(Entry, *step) *Refusal {
	if s.work.Job == "" {
		return nil
	}
	if s.job != nil && len(s.job.Out) > 0 {
		out := s.job.Out[0]
		return refused(PartOut, finding.Values{"to": out.To}).because(&out)
	}
	if unmet := s.unmet(); len(unmet) > 0 {
		return refused(NotReady, finding.Values{"needs": named(unmet)})
	}
	return nil
}

// unmet lists what the work waits for.
func (s *State) unmet() []Need {
	return slices.DeleteFunc(s.needs(), func(n Need) bool { return !n.Waits() })
}

// Finding says what is needed.
func (n Need) Finding() finding.Finding {
	switch {
	case n.Trouble == HoleThread:
		return finding.Failed(NeedHole, finding.Values{"id": n.ID})
	case n.ID != "":
		v := finding.Values{"id": n.ID, "kind": n.Kind}
		if n.Trouble != "" {
			v["trouble"] = n.Trouble.Term()
		}
		if n.Among {
			v["among"] = n.Kind
		}
		return finding.Failed(NeedFastener, v)
	case n.Gasket != "":
		return finding.Failed(NeedGasket, finding.Values{"gasket": finding.Term(n.Gasket), "count": n.Count, "ready": n.Ready})
	}
	return finding.Failed(NeedKind, finding.Values{"kind": n.Kind, "count": n.Count, "ready": n.Ready})
}

func named(needs []Need) []finding.Finding {
	var all []finding.Finding
	for _, n := range needs {
		all = append(all, n.Finding())
	}
	return all
}
