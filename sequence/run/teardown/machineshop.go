package teardown

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// SentOut is a part that went to the machine shop.
type SentOut struct {
	run.Mark           // who sent it and when; the note is what is asked for
	Step     int       `json:"step"` // of the lists
	Part     string    `json:"part"` // else the title of the joint
	Joint    string    `json:"joint,omitempty"`
	To       string    `json:"to"`
	Kept     string    `json:"kept,omitempty"` // where its small parts are, which way round it goes back
	Back     *run.Mark `json:"back,omitempty"` // the note is what was done; nil while it is out
}

// judgeSendOut: what is fitted is not sent, nor what is out already.
func (s *State) judgeSendOut(e run.Entry) *run.Refusal {
	line := s.line(e.Step)
	if line == nil || line.Part == "" && line.Joint == "" {
		return &run.Refusal{Finding: finding.Failed(NoPartStep, finding.Values{"step": e.Step}), Malformed: true}
	}
	if e.Joint != "" {
		if _, r := s.jointsOf(e); r != nil {
			return r
		}
	}
	if out := s.outOf(line.name()); out != nil {
		return because(PartOut, finding.Values{"part": line.name(), "to": out.To}, out)
	}
	off, on := s.handled(line.Part)
	if line.Part != "" && (off == nil || on != nil) {
		return because(PartFitted, finding.Values{"part": line.Part}, on)
	}
	return nil
}

func (s *State) judgeBack(e run.Entry) *run.Refusal {
	of := s.entries[e.Of]
	if of == nil || of.Act != run.SendOut || !slices.Contains(s.out(), of) {
		return because(NotSentOut, nil, s.backOf(e.Of))
	}
	return nil
}

// laterOfPart returns what was done with a part since an entry sent it out or took
// it back: that entry is then not undone.
func (s *State) laterOfPart(e *run.Entry) *run.Entry {
	switch e.Act {
	case run.Part:
		return s.outOf(s.line(e.Step).name())
	case run.SendOut:
		return s.backOf(e.ID)
	case run.Back:
		part := s.line(s.entries[e.Of].Step).name()
		if _, on := s.handled(part); on != nil {
			return on
		}
		return s.outOf(part)
	}
	return nil
}

// handled returns the entries by which a part came out, and went back in.
func (s *State) handled(part string) (off, on *run.Entry) {
	for _, l := range s.work.Teardown {
		if part != "" && l.Part == part {
			off = s.partDone(l.Number)
		}
	}
	for _, l := range s.work.Rebuild {
		if part != "" && l.Part == part {
			on = s.partDone(l.Number)
		}
	}
	return off, on
}

// out are the entries by which a part went out that is not back.
func (s *State) out() []*run.Entry {
	var all []*run.Entry
	for _, e := range s.order {
		if e.Act == run.SendOut && !s.undone[e.ID] && s.backOf(e.ID) == nil {
			all = append(all, e)
		}
	}
	return all
}

// outOf returns the entry by which a part is out; nil where it is here.
func (s *State) outOf(part string) *run.Entry {
	for _, e := range s.out() {
		if part != "" && s.line(e.Step).name() == part {
			return e
		}
	}
	return nil
}

// OutOfJoint are the entries by which parts of a joint are out: the tightening waits
// for them.
func (s *State) OutOfJoint(of string) []run.Entry {
	var all []run.Entry
	for _, e := range s.out() {
		line := s.line(e.Step)
		if e.Joint == of || line != nil && line.Joint == of {
			all = append(all, *e)
		}
	}
	return all
}

// backOf returns the entry by which what another sent out is back; nil for none.
func (s *State) backOf(id string) *run.Entry {
	for _, e := range s.order {
		if e.Act == run.Back && e.Of == id && !s.undone[e.ID] {
			return e
		}
	}
	return nil
}

// sentOut lists what went out, also what is back.
func (s *State) sentOut() []SentOut {
	var all []SentOut
	for _, e := range s.order {
		if e.Act != run.SendOut || s.undone[e.ID] {
			continue
		}
		line := s.line(e.Step)
		if line == nil {
			continue // an entry of an older program may name what is not there
		}
		one := SentOut{Mark: markOf(e), Step: e.Step, Part: line.name(), Joint: e.Joint, To: e.To, Kept: e.Kept}
		if one.Joint == "" {
			one.Joint = line.Joint
		}
		if back := s.backOf(e.ID); back != nil {
			mark := markOf(back)
			one.Back = &mark
		}
		all = append(all, one)
	}
	return all
}

func markOf(e *run.Entry) run.Mark {
	return run.Mark{Entry: e.ID, By: e.Who, At: e.Time, Note: e.Note}
}

// partsOf names what entries sent out.
func (s *State) partsOf(list []*run.Entry) []string {
	var all []string
	for _, e := range list {
		all = append(all, s.line(e.Step).name())
	}
	return all
}

// name is the part of a line, else the title of its joint; empty where there is no
// line.
func (l *Line) name() string {
	switch {
	case l == nil:
		return ""
	case l.Part != "":
		return l.Part
	}
	return l.Title
}

// isOut reports whether a part of a line is at the machine shop.
func (s *State) isOut(l Line) bool {
	return s.outOf(l.Part) != nil || l.Joint != "" && len(s.OutOfJoint(l.Joint)) > 0
}
