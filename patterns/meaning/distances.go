package meaning

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/places"
)

// leastDistanceMm is less than the distance of any two real fasteners; below it
// the same hole was listed twice.
const leastDistanceMm = 0.5

// Check reports problems with the places of the fasteners.
func (t *Fasteners) Check() {
	t.checkDistances()
	t.checkStray()
}

// checkDistances reports fasteners on top of each other. A grid of the least
// distance keeps the work proportional to the number of fasteners: one on top
// of another is left out, so no square fills up.
func (t *Fasteners) checkDistances() {
	squares := geometry.Squares{Side: leastDistanceMm}
	reported := map[[2]*nodes.Node]bool{}
	for i, f := range t.joint.Fasteners {
		other, found := squares.Find(f.At, func(k int) bool { return t.joint.Fasteners[k].At.Distance(f.At) < leastDistanceMm })
		if !found {
			squares.Add(f.At, i)
			continue
		}
		here, there := t.from[i], t.from[other]
		if pair := [2]*nodes.Node{here, there}; !reported[pair] {
			reported[pair] = true
			t.problems.Fail(here, OnAnother, finding.Values{"id": f.ID, "other": t.joint.Fasteners[other].ID, "first": there.Stood(here), "least": leastDistanceMm})
		}
	}
}

// checkStray warns of a fastener far outside the others. If some could not be
// read, nobody knows what it is outside of.
func (t *Fasteners) checkStray() {
	if t.problems.ErrorsSince(0) {
		return
	}
	s, found := geometry.FindStray(t.joint.Points())
	if !found {
		return
	}
	t.problems.Warn(t.from[s.Index], Stray, finding.Values{"id": t.joint.Fasteners[s.Index].ID, "gap": s.Gap, "span": s.Span})
}

// checkOdd warns of the one fastener off a place that would make all regular:
// of all fasteners, or of a kind. A generator's fasteners are never off their
// places, and a kind's only pair has no such place, unless all others keep two
// symmetries.
func (r *reader) checkOdd() {
	if r.ErrorsSince(0) || r.kindsOdd() {
		return
	}
	if off, found := places.FindOffRow(r.input.Joint); found && !r.generated(r.input.Joint.Fasteners[off.Index]) {
		f := r.input.Joint.Fasteners[off.Index]
		r.Warn(r.nodeOf(f), places.OffItsRow, finding.Values{"id": f.ID, "off": unit.Length(off.Off), "place": finding.Noted(places.AtPlace, finding.Values{"x": off.At.X, "y": off.At.Y})})
		return
	}
	sets := [][]geometry.Fastener{r.of(nil)}
	for _, kind := range r.usedKinds() {
		sets = append(sets, r.of([]string{kind}))
	}
	for _, fasteners := range sets {
		odd, found := geometry.FindOdd(geometry.Mapped(fasteners, func(f geometry.Fastener) geometry.Point { return f.At }))
		if !found {
			continue
		}
		id, other := fasteners[odd.Index], geometry.Fastener{}
		if odd.Other >= 0 {
			other = fasteners[odd.Other]
		}
		if other.ID != "" && r.generated(id) {
			id, other = other, geometry.Fastener{}
		}
		const fewest = 4 // of one kind
		if r.generated(id) || odd.Other >= 0 && len(r.of([]string{id.Kind})) < fewest {
			continue
		}
		if r.generated(other) {
			other = geometry.Fastener{}
		}
		if other.ID != "" && r.nodeOf(other).File.Level < r.nodeOf(id).File.Level {
			id, other = other, id // a change in the extending file is the likelier slip
		}
		r.Warn(r.nodeOf(id), OddPlace, finding.Values{"id": id.ID, "other": other.ID, "off": unit.Length(odd.Off)})
		return
	}
}

// checkOddStations warns of the one station off a place that would make all
// regular.
func (r *reader) checkOddStations() {
	stations := r.input.Joint.Stations
	if odd, found := geometry.FindOdd(geometry.Mapped(stations, func(s geometry.Station) geometry.Point { return s.At })); found && len(r.part.Stations) == len(stations) {
		r.Warn(r.part.Stations[odd.Index], OddPlace, finding.Values{"id": stations[odd.Index].ID, "other": "", "off": unit.Length(odd.Off)})
	}
}

// kindsOdd reports whether a fastener probably has the wrong kind, which would
// explain whatever else is odd.
func (r *reader) kindsOdd() bool {
	if r.oddKinds == nil {
		found := len(places.OddKinds(r.input.Joint)) > 0
		r.oddKinds = &found
	}
	return *r.oddKinds
}

// nodeOf returns the entry of the file that a fastener comes from.
func (r *reader) nodeOf(f geometry.Fastener) *nodes.Node {
	return r.fasteners.from[r.fasteners.index[f.ID]]
}

// generated reports whether a fastener is one of several made by one entry.
func (r *reader) generated(f geometry.Fastener) bool {
	from := r.nodeOf(f)
	return f.ID != "" && from.Shape == nodes.Map && from.Get("at") == nil
}
