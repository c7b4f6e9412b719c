package teardown

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// addFitted notes what a tightening run says of new parts: the gasket is there once
// somebody confirmed it, and what was there is in once the run is sealed.
func (v *View) addFitted(of run.View) {
	if of.Direction != run.Tighten || of.Status == run.Voided {
		return
	}
	var sealed *run.Mark
	if of.Signed != nil {
		sealed = &of.Signed.Mark
	}
	for i, n := range v.Needs {
		if n.Joint == of.Of && n.Met() && sealed != nil {
			v.Needs[i].Fitted = sealed
		}
	}
	confirmed := slices.ContainsFunc(of.Needs, func(n run.Need) bool { return n.Gasket != "" && n.Met() })
	if !confirmed {
		return
	}
	if v.Confirmed == nil {
		v.Confirmed = map[string]*run.Mark{}
	}
	v.Confirmed[of.Of] = sealed
	for i := range v.Supplies {
		if s := &v.Supplies[i]; s.Sort == Gasket && slices.Contains(s.Joints, of.Of) {
			v.confirm(s)
		}
	}
}

// confirm counts a gasket as there, and as in, where the runs of all its joints say so.
func (v *View) confirm(s *Supply) {
	there, in := 0, 0
	var last *run.Mark
	for _, of := range s.Joints {
		sealed, confirmed := v.Confirmed[of]
		if confirmed {
			there++
		}
		if sealed != nil {
			in++
			last = sealed
		}
	}
	if s.Ready = max(s.Ready, there); there == len(s.Joints) {
		s.Ready = max(1, s.Count)
	}
	if in == len(s.Joints) && s.Fitted == nil {
		s.Fitted = last
	}
}

// rebuilt reports whether a supply is due: its part, or a joint that it is for, is back
// on or being tightened. What is in no list is always due.
func (v View) rebuilt(s Supply) bool {
	listed := false
	for _, l := range v.Rebuild {
		if l.Joint != "" && slices.Contains(s.Joints, l.Joint) || l.Part != "" && l.Part == s.Part {
			if l.State == IsDone || l.State == Underway {
				return true
			}
			listed = true
		}
	}
	return !listed
}

// tightenedOnly lists the joints of a machine that were tightened in the job and never
// loosened in it.
func (v View) tightenedOnly() (all []Point) {
	if len(v.Teardown) < 2 {
		return nil
	}
	for _, j := range v.Joints {
		if v.TightenedOnly(j.Of) {
			all = append(all, pointOf(NeverLoosened, finding.Values{"joint": j.Title}))
		}
	}
	return all
}

// TightenedOnly reports whether a joint was tightened in the job and never loosened.
func (v View) TightenedOnly(of string) bool {
	done := func(list []LineNow) bool {
		return slices.ContainsFunc(list, func(l LineNow) bool { return l.Joint == of && l.State == IsDone })
	}
	return done(v.Rebuild) && !done(v.Teardown)
}
