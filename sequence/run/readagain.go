package run

import (
	"slices"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
)

// Replaces reports whether a reading is a newer one of the same value at the same
// place: then the older is history.
func (r Reading) Replaces(older Reading) bool {
	return r.Measure != "" && strings.EqualFold(r.Measure, older.Measure) &&
		r.Place.Measured() == older.Place.Measured() && r.At.After(older.At)
}

// placed gives a value the fastener of its step as its place, where it has none.
func placed(r Reading, st *Step) Reading {
	if r.Place == nil && st != nil && len(st.IDs) == 1 {
		r.Place = &Place{Fastener: st.IDs[0]}
	}
	return r
}

// values are the readings of a run that have a name, with their places.
func (v View) values() (all []Reading) {
	for _, r := range v.Readings {
		if r.Measure == "" {
			continue
		}
		i := slices.IndexFunc(v.Steps, func(st Step) bool { return st.Number == r.Step })
		if i >= 0 {
			r = placed(r, &v.Steps[i])
		}
		all = append(all, r)
	}
	return all
}

// Since shows a run with what was read later: values that were read again are history,
// and no warning.
func (v View) Since(known []Reading) View {
	past := map[string]bool{}
	for _, r := range v.values() {
		past[r.Entry] = r.Past || slices.ContainsFunc(known, func(other Reading) bool { return other.Replaces(r) })
	}
	v.Readings = slices.Clone(v.Readings)
	for i, r := range v.Readings {
		v.Readings[i].Past = past[r.Entry]
	}
	v.Flags = slices.DeleteFunc(slices.Clone(v.Flags), func(f Flag) bool {
		return past[f.Entry] && slices.Contains([]finding.Code{measure.Outside, measure.ShimBeyond}, f.Finding.Code)
	})
	return v
}

// valuesRead are the readings that have a name, of this run and of its job.
func (s *State) valuesRead() (all []Reading) {
	for _, r := range s.shownReadings() {
		if st := s.numbered[r.Step]; r.Measure != "" && st != nil {
			r = placed(r, &st.Step)
		}
		all = append(all, r)
	}
	if s.job != nil {
		all = append(all, s.job.Measured...)
	}
	return all
}

// readingsNow are the readings of this run, and whether each is history.
func (s *State) readingsNow() []Reading {
	all, known := s.shownReadings(), s.valuesRead()
	for i, r := range all {
		if st := s.numbered[r.Step]; st != nil {
			r = placed(r, &st.Step)
		}
		all[i].Past = slices.ContainsFunc(known, func(other Reading) bool { return other.Replaces(r) })
	}
	return all
}

// outside are the values that lie outside their limits by what was read up to a moment.
func (s *State) outside(until time.Time) []Reading {
	known := slices.DeleteFunc(s.valuesRead(), func(r Reading) bool { return r.At.After(until) })
	return slices.DeleteFunc(slices.Clone(known), func(r Reading) bool {
		return !r.Verdict.Outside() || slices.ContainsFunc(known, func(other Reading) bool { return other.Replaces(r) })
	})
}

// outsideFlags name the values outside their limits: those read in this run, or those
// of its job beside it.
func (s *State) outsideFlags(own bool, until time.Time) (all []Flag) {
	for _, r := range s.outside(until) {
		if (s.entries[r.Entry] != nil) != own {
			continue
		}
		for _, found := range r.Findings() {
			if found.Severity == finding.Warning {
				step := 0
				if own {
					step = r.Step
				}
				all = append(all, Flag{found, r.Mark, step})
			}
		}
	}
	return all
}

// lastMoment is after every entry.
var lastMoment = time.Unix(1<<40, 0)
