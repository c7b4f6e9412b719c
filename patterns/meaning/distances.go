package meaning

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/places"
)

// leastDistanceMm is nearer than any two fasteners can stand; under it the same
// hole was listed twice.
const leastDistanceMm = 0.5

// Check says what the places of the fasteners tell against them.
func (t *Fasteners) Check() {
	t.checkDistances()
	t.checkStray()
}

// checkDistances reports fasteners that stand on each other. Squares of the
// least distance keep the work in step with the number of fasteners: one that
// stands on another is left out, so that no square fills up.
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

// checkStray warns of a fastener that lies far outside the others. Where some
// could not be read nobody knows what it lies outside of.
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

// checkOdd warns of the one fastener off a place that all others are regular to:
// of all fasteners, or of a kind. What a generator makes is off no place of its
// own, and the one pair of a kind has none, unless all others keep two symmetries.
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
		const fewest = 4 // of a kind
		if r.generated(id) || odd.Other >= 0 && len(r.of([]string{id.Kind})) < fewest {
			continue
		}
		if r.generated(other) {
			other = geometry.Fastener{}
		}
		if other.ID != "" && r.nodeOf(other).File.Level < r.nodeOf(id).File.Level {
			id, other = other, id // what a file changes in the one below is the likelier slip
		}
		r.Warn(r.nodeOf(id), OddPlace, finding.Values{"id": id.ID, "other": other.ID, "off": unit.Length(odd.Off)})
		return
	}
}

// checkOddStations warns of the one station off a place that all others are regular to.
func (r *reader) checkOddStations() {
	stations := r.input.Joint.Stations
	if odd, found := geometry.FindOdd(geometry.Mapped(stations, func(s geometry.Station) geometry.Point { return s.At })); found && len(r.part.Stations) == len(stations) {
		r.Warn(r.part.Stations[odd.Index], OddPlace, finding.Values{"id": stations[odd.Index].ID, "other": "", "off": unit.Length(odd.Off)})
	}
}

// kindsOdd reports whether a fastener probably has the wrong kind: what else is
// odd then follows from that.
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

// generated reports whether a fastener is one of several that one entry makes.
func (r *reader) generated(f geometry.Fastener) bool {
	from := r.nodeOf(f)
	return f.ID != "" && from.Shape == nodes.Map && from.Get("at") == nil
}
