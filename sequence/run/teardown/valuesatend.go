package teardown

import (
	"slices"
	"strings"
	"time"

	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

// AtEnd counts the values by what they say of the machine as it is now.
type AtEnd struct {
	Within   int // their limits
	Limited  int // that were taken and have limits
	Outdated int // of these: taken before later work, and not again
	Missing  int // that the files ask for and nobody took
}

// AtEnd counts the values.
func (v View) AtEnd() (n AtEnd) {
	for _, r := range v.Readings() {
		last := r.Last()
		if last.Limits == "" {
			continue
		}
		n.Limited++
		switch {
		case v.Outdated(r):
			n.Outdated++
		case !last.Verdict.Outside():
			n.Within++
		}
	}
	for _, a := range v.asked() {
		n.Missing += a.places - a.taken
	}
	return n
}

// Outdated reports whether a value was last taken before its joint was opened, or before
// its part went to the machine shop and came back: of the end it says nothing. A value
// of the whole machine is outdated by any of these.
func (v View) Outdated(r Readings) bool {
	at := r.Last().Time
	for joint, opened := range v.Opened {
		if (r.Joint == "" || r.Joint == joint) && at.Before(opened) {
			return true
		}
	}
	return slices.ContainsFunc(v.SentOut, func(s SentOut) bool {
		return s.Back != nil && (r.Joint == "" || r.Joint == s.Joint) && at.Before(s.At)
	})
}

// addOpened notes when a run opened its joint: by its first step. What was entered from
// paper has no time.
func (v *View) addOpened(of run.View) {
	if of.Direction != run.Loosen || of.Status == run.Voided {
		return
	}
	var first time.Time
	for _, st := range of.Steps {
		if st.State == run.IsDone && st.Source != run.OnPaper && (first.IsZero() || st.At.Before(first)) {
			first = st.At
		}
	}
	if first.After(v.Opened[of.Of]) {
		if v.Opened == nil {
			v.Opened = map[string]time.Time{}
		}
		v.Opened[of.Of] = first
	}
}

// Since shows a run with what was read later in its job.
func (v View) Since(of run.View) run.View {
	var known []run.Reading
	for _, m := range v.Measured {
		if v.JointOf(m.Entry) == of.Of {
			known = append(known, m.Reading())
		}
	}
	return of.Since(known)
}

// asked is a value that a file asks for, counted over its places.
type asked struct {
	joint, what   string
	places, taken int
}

// asked lists what the files ask for.
func (v View) asked() (all []asked) {
	taken := v.Readings()
	add := func(joint string, list []measure.Value) {
		first := len(all)
		for _, m := range list {
			i := first + slices.IndexFunc(all[first:], func(a asked) bool { return a.what == m.What })
			if i < first {
				i, all = len(all), append(all, asked{joint: joint, what: m.What})
			}
			for _, at := range placesOf(m) {
				all[i].places++
				if slices.ContainsFunc(taken, func(r Readings) bool {
					return r.Joint == joint && strings.EqualFold(r.What, m.What) && r.Place == at.Name()
				}) {
					all[i].taken++
				}
			}
		}
	}
	add("", v.Measures)
	for _, j := range v.Joints {
		add(j.Of, j.Measures)
	}
	return all
}
