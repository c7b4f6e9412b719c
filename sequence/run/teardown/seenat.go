package teardown

import (
	"errors"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

// Measured is a value that was read, held against the limits of the file.
type Measured struct {
	run.Entry
	measure.Result
}

// Reading is the value as a run shows it.
func (m Measured) Reading() run.Reading {
	e := m.Entry
	return run.Reading{
		Mark: run.Mark{Entry: e.ID, By: e.Who, At: e.Time, Note: e.Note, DecidedBy: e.DecidedBy}, Step: e.Step, Place: e.Place, Measure: e.Measure,
		Value: e.Value, Unit: e.Unit, Outside: m.Verdict.Outside(), Fitted: e.Shim, Result: m.Result,
	}
}

// MeasuredOn are the values of a joint that were entered on the job.
func (s *State) MeasuredOn(joint string) (all []run.Reading) {
	for _, e := range s.order {
		if e.Act != run.Measure || s.undone[e.ID] || s.ofMachine(*e) {
			continue
		}
		if on, _ := s.jointsOf(*e); len(on) == 1 && on[0].Of == joint {
			result, _ := s.result(*e) // an entry of an older program may name what is not there
			all = append(all, Measured{*e, result}.Reading())
		}
	}
	return all
}

// judgeSeen checks of a finding, or of a value that was read, that its joint and
// its place are there, and that the value can be held against its limits.
func (s *State) judgeSeen(e run.Entry) *run.Refusal {
	if _, r := s.jointsOf(e); r != nil {
		return r
	}
	if e.Act == run.Measure {
		if _, err := s.result(e); err != nil {
			return run.Wrong(err)
		}
	}
	return nil
}

// jointsOf gives the joints that an entry can be about: the one that it names,
// else those that have its place and its value. An entry without a place is about
// the whole job.
func (s *State) jointsOf(e run.Entry) ([]Joint, *run.Refusal) {
	joints := s.work.Joints
	if e.Joint != "" {
		i := slices.IndexFunc(joints, func(j Joint) bool { return j.Of == e.Joint })
		if i < 0 {
			return nil, wrongly(NoSuchJoint, finding.Values{"joint": e.Joint, "allowed": names(joints)})
		}
		joints = joints[i : i+1]
	}
	if s.ofMachine(e) {
		return nil, nil
	}
	at := e.Place.Measured()
	if at != (measure.Place{}) {
		joints = slices.DeleteFunc(slices.Clone(joints), func(j Joint) bool { return !j.has(at) })
	}
	if len(joints) == 0 {
		return nil, wrongly(NoSuchPlace, finding.Values{"place": at.Name(), "joint": e.Joint})
	}
	measured := measuredIn(joints, e)
	if len(measured) > 0 {
		joints = measured
	}
	if len(joints) > 1 && joints[0].known() && (e.Place != nil || len(measured) > 0) {
		return nil, wrongly(WhichJoint, finding.Values{"place": at.Name(), "what": e.Measure, "allowed": names(joints)})
	}
	return joints, nil
}

// measuredIn gives those of the joints that measure what an entry has.
func measuredIn(joints []Joint, e run.Entry) []Joint {
	return slices.DeleteFunc(slices.Clone(joints), func(j Joint) bool {
		_, known, err := measure.Take(j.Measures, e.Written())
		return !known || err != nil && errors.Is(err, measure.WrongPlace)
	})
}

// ofMachine says whether an entry has a value of the whole machine.
func (s *State) ofMachine(e run.Entry) bool {
	return e.Act == run.Measure && e.Joint == "" && slices.ContainsFunc(s.work.Measures, func(v measure.Value) bool { return strings.EqualFold(v.What, e.Measure) })
}

// result holds what was read against the file of the job, or of its joint.
func (s *State) result(e run.Entry) (measure.Result, error) {
	if s.ofMachine(e) {
		r, _, err := measure.Take(s.work.Measures, e.Written())
		return r, err
	}
	joints, _ := s.jointsOf(e)
	for _, j := range joints {
		if r, known, err := measure.Take(j.Measures, e.Written()); known {
			return r, err
		}
	}
	return measure.Result{}, nil
}

// has says whether a joint has a place; one of an older program is taken at its word.
func (j Joint) has(p measure.Place) bool {
	list, name := j.Fasteners, p.Fastener
	switch {
	case p.Station != "":
		list, name = j.Stations, p.Station
	case p.Label != "":
		list, name = j.Labels, p.Label
	}
	return !j.known() || slices.Contains(list, name)
}

// known says whether the places of a joint are.
func (j Joint) known() bool { return len(j.Fasteners) > 0 }

func names(joints []Joint) []string {
	all := make([]string, len(joints))
	for i, j := range joints {
		all[i] = j.Of
	}
	return all
}

func wrongly(code finding.Code, values finding.Values) *run.Refusal {
	return run.Wrong(finding.Failed(code, values))
}

// JointOf names the joint that an entry is about; empty for the whole machine.
func (v View) JointOf(e run.Entry) string {
	if e.Joint != "" {
		return e.Joint
	}
	w := Work{Joints: v.Joints, Measures: v.Measures}
	if joints, refused := w.Start().jointsOf(e); refused == nil && len(joints) == 1 {
		return joints[0].Of
	}
	return ""
}

// FindingsOf are those of a joint, by the time at which they were entered.
func (v View) FindingsOf(joint string) []run.Entry {
	var all []run.Entry
	for _, e := range v.Findings {
		if v.JointOf(e) == joint {
			all = append(all, e)
		}
	}
	slices.SortStableFunc(all, func(a, b run.Entry) int { return a.Time.Compare(b.Time) })
	return all
}
