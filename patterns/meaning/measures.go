package meaning

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/measures"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// readMeasure reads the values to measure. It runs after all places are read.
func (r *reader) readMeasure(f form.Fields) {
	r.input.Measures, r.measures = measures.Read(f, r.measured, r.ofKind)
	at := r.measures
	for i, v := range r.input.Measures {
		r.checkGauge(v, at[i])
		r.checkBoltLength(v, at[i])
		r.checkThickness(v, at[i])
		r.checkBoreOff(v, at[i])
	}
	measures.CheckPlaces(r.Problems, r.input.Measures, at, r.spots())
}

// spots lists the places where a value could be taken, with what they are called.
func (r *reader) spots() (all []measures.Spot) {
	for _, s := range r.input.Joint.Stations {
		all = append(all, measures.Spot{Place: measure.Place{Station: s.ID}, Called: cmp.Or(s.Label, s.ID)})
	}
	for _, b := range r.input.Joint.Bores {
		all = append(all, measures.Spot{Place: measure.Place{Label: b.Label}, Called: b.Label})
	}
	for _, f := range r.input.Joint.Fasteners {
		all = append(all, measures.Spot{Place: measure.Place{Fastener: f.ID}, Called: f.ID})
	}
	return all
}

// checkGauge warns of a length in inches in a file without any other, and of
// one in millimetres in a file in inches.
func (r *reader) checkGauge(v measure.Value, at *nodes.Node) {
	inches := v.Unit == "in"
	if !v.Unit.IsLength() || inches == (r.BareUnit == "in") {
		return
	}
	for _, k := range r.input.Kinds {
		if k.Thread == nil || k.Thread.Unified() == inches {
			return // threads of that system are measured with its gauges
		}
	}
	r.Warn(at.KeyNode("unit"), measures.OtherSystem, finding.Values{"what": v.What, "unit": string(v.Unit), "own": r.BareUnit})
}

// boltLength matches the words for the length of a bolt in the languages of the
// sheets.
var boltLength = expression.Lazily(`(?i)\b(?:bolt|screw|stud) length\b|\blength of (?:the )?(?:bolts?|screws?)\b|(?:schrauben|bolzen)länge|\blongueur (?:de la |des )vis\b|\blongitud (?:del |de los )(?:tornillos?|pernos?)\b`)

// checkBoltLength warns if a greatest length of bolts differs from that of
// their kind: the card would show both.
func (r *reader) checkBoltLength(v measure.Value, at *nodes.Node) {
	if !v.Unit.IsLength() || !boltLength.MatchString(v.What) {
		return
	}
	if v.To == nil {
		if v.From != nil && slices.ContainsFunc(r.input.Kinds, func(k plan.Kind) bool { return k.ReusedTo > 0 }) {
			r.Warn(at.KeyNode("from"), measures.LimitOnWrongSide, finding.Values{"what": v.What, "key": "from", "meant": "to"})
		}
		r.checkLengthOff(v, at)
		return
	}
	const rounded = 0.01 // mm
	most := unit.Length(v.Unit.In(*v.To, inMm).Float())
	for _, k := range r.input.Kinds {
		of := slices.ContainsFunc(r.input.Joint.Fasteners, func(f geometry.Fastener) bool { return f.Kind == k.Name && v.Has(measure.Place{Fastener: f.ID}) })
		if k.ReusedTo > 0 && of && math.Abs(float64(most-k.ReusedTo)) > rounded {
			r.Warn(at.KeyNode("to"), measures.LengthTwice, finding.Values{"what": v.What, "limit": v.Read(*v.To), "kind": k.Name, "inspect": k.ReusedTo})
			return
		}
	}
	r.checkLengthOff(v, at)
}

// limitsOf yields the limits that a value states, by their keys.
func limitsOf(v measure.Value) iter.Seq2[string, unit.Decimal] {
	return func(yield func(string, unit.Decimal) bool) {
		if v.From != nil && !yield("from", *v.From) {
			return
		}
		if v.To != nil {
			yield("to", *v.To)
		}
	}
}

// boreSize matches the diameter of a bore, or of what runs in it.
var boreSize = expression.Lazily(`(?i)^(?:cylinder |shaft )?(?:bore|diameter|bore diameter|diameter of the (?:bore|shaft|cylinder))$|^(?:zylinder|wellen)?(?:bohrung|durchmesser)$|^(?:alésage|diamètre)$|^diámetro(?: interior)?$`)

// checkBoreOff warns of a diameter that is far from that of the bore where it is taken.
func (r *reader) checkBoreOff(v measure.Value, at *nodes.Node) {
	const share = 0.05
	if !v.Unit.IsLength() || !boreSize.MatchString(v.What) {
		return
	}
	for key, limit := range limitsOf(v) {
		for _, b := range r.input.Joint.Bores {
			size := v.Unit.In(limit, inMm).Float()
			if v.Has(measure.Place{Label: b.Label}) && math.Abs(size-b.Diameter) > share*b.Diameter {
				r.Warn(at.KeyNode(key), measures.BoreOff, finding.Values{"what": v.What, "limit": v.Read(limit), "label": problem.Quoted(b.Label), "diameter": unit.Length(b.Diameter)})
				return
			}
		}
	}
}

// partSize matches the height or thickness of a part.
var partSize = expression.Lazily(`(?i)^(\pL+) (?:height|thickness)$|^(?:height|thickness) of the (\pL+)$|^(\pL+)(?:höhe|dicke)$`)

// checkThickness warns of a height of the part that is far from its thickness.
func (r *reader) checkThickness(v measure.Value, at *nodes.Node) {
	const share = 0.1
	thickness := r.input.Clamped.Part.Thickness
	m := partSize.FindStringSubmatch(v.What)
	if m == nil || thickness == 0 || !v.Unit.IsLength() || !strings.Contains(strings.ToLower(r.input.Title), strings.ToLower(m[1]+m[2]+m[3])) {
		return
	}
	for key, limit := range limitsOf(v) {
		if height := unit.Length(v.Unit.In(limit, inMm).Float()); math.Abs(float64(height-thickness)) > share*float64(thickness) {
			r.Warn(at.KeyNode(key), measures.SizeOff, finding.Values{"what": v.What, "limit": v.Read(limit), "thickness": thickness})
			return
		}
	}
}

const inMm = unit.Gauge("mm")

// checkLengthOff warns of a length of bolts that is far from that of their kind.
func (r *reader) checkLengthOff(v measure.Value, at *nodes.Node) {
	const share = 0.05
	for _, k := range r.input.Kinds {
		of := slices.ContainsFunc(r.input.Joint.Fasteners, func(f geometry.Fastener) bool { return f.Kind == k.Name && v.Has(measure.Place{Fastener: f.ID}) })
		if k.Length == 0 || !of {
			continue
		}
		for key, limit := range limitsOf(v) {
			if length := unit.Length(v.Unit.In(limit, inMm).Float()); math.Abs(float64(length-k.Length)) > share*float64(k.Length) {
				r.Warn(at.KeyNode(key), measures.LengthOff, finding.Values{"what": v.What, "limit": v.Read(limit), "kind": k.Name, "length": k.Length})
				return
			}
		}
	}
}

// measured finds the place that a value names: a fastener, a station or the
// label of a bore, as named in the file.
func (r *reader) measured(n *nodes.Node) (measure.Place, bool) {
	name := strings.TrimSpace(n.Text)
	if n.Shape != nodes.Scalar || n.Null || name == "" {
		r.Fail(n, form.NoID, finding.Values{"what": finding.Term("a place"), "found": n.Called()})
		return measure.Place{}, false
	}
	id, here := r.current(n)
	if !here {
		return measure.Place{}, false // a file above leaves it out
	}
	var found []measure.Place
	if _, ok := r.fasteners.index[id]; ok {
		found = append(found, measure.Place{Fastener: id})
	}
	if slices.ContainsFunc(r.input.Joint.Stations, func(s geometry.Station) bool { return s.ID == id }) {
		found = append(found, measure.Place{Station: id})
	}
	if label := r.names.Now(relabel.Labels, name, n); slices.ContainsFunc(r.input.Joint.Bores, func(b geometry.Bore) bool { return b.Label == label }) {
		found = append(found, measure.Place{Label: label})
	}
	switch {
	case len(found) > 1:
		r.Fail(n, measures.PlaceOfTwo, finding.Values{"name": problem.Quoted(name)})
	case len(found) == 1:
		return found[0], true
	case !r.unplaced && !r.fasteners.broken && !r.fasteners.faulty && !r.baseless:
		all := r.placeNames()
		r.Fail(n, measures.PlaceUnknown, finding.Values{"name": problem.Quoted(name), "meant": r.Meant(name, all), "allowed": all})
	}
	return measure.Place{}, false
}

// placeNames lists the places where a value can be measured.
func (r *reader) placeNames() []string {
	var all []string
	for _, s := range r.input.Joint.Stations {
		all = append(all, s.ID)
	}
	for _, b := range r.input.Joint.Bores {
		if b.Label != "" {
			all = append(all, b.Label)
		}
	}
	for _, f := range r.input.Joint.Fasteners {
		all = append(all, f.ID)
	}
	return all
}

// ofKind returns the fasteners of a kind.
func (r *reader) ofKind(n *nodes.Node) (all []measure.Place) {
	kind, known := r.knownKind(n)
	if !known {
		return nil
	}
	for _, f := range r.input.Joint.Fasteners {
		if f.Kind == kind {
			all = append(all, measure.Place{Fastener: f.ID})
		}
	}
	return all
}
