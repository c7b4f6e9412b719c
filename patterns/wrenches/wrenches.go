// Package wrenches reads a shop's list of torque wrenches. It checks the shop's
// lubricants in the same file. It may import form, nodes, mechanics and
// sequence/tension.
package wrenches

import (
	"slices"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/wrench"
)

type reader struct {
	*form.Reader
	today time.Time
}

var (
	fileKeys   = []string{"drawdown", "wrenches", "lubricants"}
	wrenchKeys = []string{"name", "from", "to", "division", "length", "number", "calibrated"}
)

// maxWrenches is more than any shop owns.
const maxWrenches = 1000

// Read reads a shop's list of torque wrenches:
//
//	wrenches:
//	  - {name: small, from: 5 N·m, to: 60 N·m, division: 0.5 N·m, length: 300 mm, number: W7, calibrated: 2026-03-01}
//
// Range and division are in the unit of the wrench's scale. Without from the
// scale begins at 0; without division it is that of usual wrenches of its size.
// The length, from the middle of the grip to the middle of the drive, is only
// needed with an adapter. The number identifies the wrench in the record of the
// work; calibrated is the day of its last calibration, which is not after today
// (not checked if today is zero). The list is empty if a problem prevents work.
func Read(from source.Source, today time.Time) ([]wrench.Wrench, problem.List) {
	r := &reader{form.NewReader(from), today}
	var list []wrench.Wrench
	if root := r.Root(nodes.Format{Keys: slices.Concat(fileKeys, wrenchKeys, mechanics.LubricantKeys), Example: example}); root != nil {
		list = r.wrenches(root)
	}
	return form.Sound(list, r.List())
}

const example = "wrenches: [{name: small, from: 5 N·m, to: 60 N·m}]"

func (r *reader) wrenches(root *nodes.Node) []wrench.Wrench {
	f, ok := r.Fields(root, finding.Term("the list of wrenches"), fileKeys...)
	if !ok {
		return nil
	}
	r.Version(root)
	if at := f.Get("lubricants"); at != nil { // for the patterns that name this file
		mechanics.ReadLubricants(r.Reader, at)
		if !f.Has("wrenches") {
			return nil
		}
	}
	at := f.Need("wrenches", example)
	if at == nil {
		return nil
	}
	items := r.TrueList(at, "wrenches", example)
	if len(items) > maxWrenches {
		r.Fail(at, TooManyWrenches, finding.Values{"count": len(items), "most": maxWrenches})
		return nil
	}
	var list []wrench.Wrench
	var read []*nodes.Node
	for _, item := range items {
		if w, ok := r.wrench(item); ok {
			if slices.ContainsFunc(list, func(other wrench.Wrench) bool { return other.Name == w.Name }) {
				r.Fail(item, WrenchTwice, finding.Values{"name": problem.Quoted(w.Name)})
			}
			if w.Number != "" && slices.ContainsFunc(list, func(other wrench.Wrench) bool { return other.Number == w.Number }) {
				r.Fail(item, NumberTwice, finding.Values{"number": problem.Quoted(w.Number)})
			}
			list, read = append(list, w), append(read, item)
		}
	}
	r.besideOthers(list, read)
	return list
}

func (r *reader) wrench(n *nodes.Node) (wrench.Wrench, bool) {
	before := r.Count()
	f, ok := r.Fields(n, finding.Term("a wrench"), wrenchKeys...)
	if !ok {
		return wrench.Wrench{}, false
	}
	var w wrench.Wrench
	if at := f.Need("name", "name: small"); at != nil {
		w.Name, _ = r.TextUpTo(at, finding.Term("a wrench's name"), 60)
	}
	to := f.Need("to", "to: 60 N·m")
	if to == nil {
		return w, false
	}
	most, ok := form.Parsed(r.Reader, to, "to", unit.ParseSensibleTorque)
	if !ok {
		return w, false
	}
	w.Max, w.Unit = most.Value, most.Unit
	w.Min = r.onScaleOf(f, "from", w)
	w.Division = r.onScaleOf(f, "division", w)
	w.Length = f.Length("length", unit.Sensible.WrenchLength)
	if at := f.Get("number"); at != nil {
		w.Number, _ = r.TextUpTo(at, finding.Term("a wrench's number"), 30)
	}
	w.Calibrated = f.Day("calibrated")
	r.checkScale(f, w, before)
	r.checkSense(f, w)
	return w, !r.ErrorsSince(before)
}

// checkScale reports figures that cannot belong to a scale, if they could be
// read.
func (r *reader) checkScale(f form.Fields, w wrench.Wrench, before int) {
	if r.ErrorsSince(before) {
		return
	}
	if w.Min >= w.Max {
		r.Fail(f.Get("from"), NoScaleStart, finding.Values{"written": problem.Quoted(f.Get("from").Text), "end": f.Get("to").Text})
	}
	if at := f.Node.Get("division"); at != nil && (w.Division == 0 || w.Division > w.Max/2) {
		r.Fail(at, NoDivision, finding.Values{"written": problem.Quoted(at.Text)})
	}
}

// widest is the greatest end of a scale to its start, coarsest the end to one division:
// more is a figure that slipped (common practice, no source).
const widest, coarsest = 21, 15

// checkSense warns of figures that can be read but are hardly intended.
func (r *reader) checkSense(f form.Fields, w wrench.Wrench) {
	if w.Min > 0 && w.Max > widest*w.Min {
		r.Warn(f.Get("from"), ScaleWide, finding.Values{"from": f.Get("from").Text, "to": f.Get("to").Text})
	}
	if w.Division > w.Max/coarsest && w.Division <= w.Max/2 {
		r.Warn(f.Get("division"), DivisionCoarse, finding.Values{"written": f.Get("division").Text, "end": f.Get("to").Text})
	}
	if doubt, found := w.DoubtLength(); found {
		r.Warn(f.Get("length"), doubt.Code, doubt.Values)
	}
	if today := r.today.Format(time.DateOnly); !r.today.IsZero() && w.Calibrated > today {
		r.Warn(f.Get("calibrated"), CalibratedAhead, finding.Values{"date": w.Calibrated, "today": today})
	}
}

// onScaleOf reads a figure in the unit of the scale; it is 0 if the key is
// missing.
func (r *reader) onScaleOf(f form.Fields, key string, w wrench.Wrench) float64 {
	n := f.Get(key)
	if n == nil {
		return 0
	}
	given, ok := form.Parsed(r.Reader, n, key, unit.ParseTorque)
	switch {
	case !ok:
	case given.Unit != w.Unit:
		r.Fail(n, OtherUnit, finding.Values{"key": key, "written": problem.Quoted(n.Text), "unit": w.Unit.String()})
	case given.Value < 0:
		r.Fail(n, BelowZero, finding.Values{"key": key, "written": problem.Quoted(n.Text)})
	default:
		return given.Value
	}
	return 0
}
