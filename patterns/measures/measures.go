// Package measures reads the key measure of pattern and machine files: the
// values to measure, their limits and places, and the shims. The caller knows
// what the places are. It may import form, nodes and sequence/measure.
package measures

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/measure"
)

// Keys are the keys of one value.
var Keys = []string{"what", "at", "of", "unit", "from", "to", "wanted", "shims", "source"}

// Most limits the number of values in a file.
const Most = 200

const example = "[{what: warp of the face, unit: mm, to: 0.05}]"

// Finder returns the place that a node names, and whether the part has it. It
// reports unknown names; a place that the file leaves out gives false.
type Finder func(*nodes.Node) (measure.Place, bool)

// Kinds returns the places of all fasteners of a kind.
type Kinds func(*nodes.Node) []measure.Place

type reader struct {
	form.Fields
	place Finder
	of    Kinds // nil: the file has no kinds
	taken map[taken]*nodes.Node
}

// taken identifies a value that must not be repeated.
type taken struct {
	what string
	at   measure.Place
}

// Read reads the key of a file, and the position of each value.
func Read(f form.Fields, place Finder, of Kinds) (values []measure.Value, at []*nodes.Node) {
	if n := f.Get("measure"); n != nil && len(n.Items) > Most {
		f.Fail(n, TooMany, finding.Values{"count": len(n.Items), "most": Most})
		return nil, nil
	}
	seen := map[taken]*nodes.Node{}
	for one := range f.Maps("measure", example, finding.Term("a value to measure"), Keys...) {
		r := &reader{one, place, of, seen}
		if v, there := r.value(); there {
			values, at = append(values, v), append(at, one.Node)
		}
	}
	return values, at
}

// value reads one value; false if all its places are left out.
func (r *reader) value() (measure.Value, bool) {
	v := measure.Value{What: r.NeedText("what", "valve clearance"), Source: r.Text("source")}
	v.Unit, _ = form.Given(r.Need("unit", "mm"), "unit", func(n *nodes.Node, what any) (unit.Gauge, bool) {
		return form.Parsed(r.Reader, n, nil, unit.ParseGauge)
	})
	v.From, v.To, v.Wanted = r.figure("from", v.Unit), r.figure("to", v.Unit), r.figure("wanted", v.Unit)
	r.limits(v)
	r.usual(v)
	r.apart(v)
	r.oneLimit(v)
	if shims, ok := r.Map("shims", "shims", "from", "to", "step"); ok {
		v.Shims = r.shims(shims, v)
	}
	named := r.places(&v)
	r.once(v, named)
	return v, !named || len(v.At) > 0
}

// figure reads a figure in the value's unit, which may follow it.
func (r *reader) figure(key string, of unit.Gauge) *unit.Decimal {
	return figure(r.Fields, r.Get(key), key, of)
}

func figure(f form.Fields, n *nodes.Node, key string, of unit.Gauge) *unit.Decimal {
	if n == nil {
		return nil
	}
	read, ok := form.Parsed(f.Reader, n, key, func(s string) (unit.Reading, error) { return unit.ParseReading(s, of) })
	if !ok {
		return nil
	}
	if of != "" && read.Unit != of {
		f.Fail(n, OtherUnit, finding.Values{"key": key, "written": problem.Quoted(n.Text), "unit": string(of)})
		return nil
	}
	return &read.Decimal
}

// limits checks the limits against each other, and the wanted value against
// them.
func (r *reader) limits(v measure.Value) {
	switch {
	case v.From != nil && v.To != nil && v.To.Less(*v.From):
		r.Fail(r.Node.KeyNode("to"), LimitsReversed, finding.Values{"from": v.Read(*v.From), "to": v.Read(*v.To)})
	case v.Wanted != nil && v.Judge(*v.Wanted).Outside():
		r.Fail(r.Node.KeyNode("wanted"), WantedOutside, finding.Values{"wanted": v.Read(*v.Wanted), "from": written(v, v.From), "to": written(v, v.To)})
	case r.Has("wanted") && !r.Has("shims"):
		r.Warn(r.Node.KeyNode("wanted"), WantedIdle, nil)
	case !r.Has("from") && !r.Has("to") && !r.Mistyped("from", "to"):
		r.Note(r.Node, NothingToJudge, finding.Values{"what": v.What})
	}
}

// written is a limit with its unit; nil if there is none.
func written(v measure.Value, d *unit.Decimal) any {
	if d == nil {
		return nil
	}
	return v.Read(*d)
}

// places reads where a value is measured: by name, or at all fasteners of some
// kinds.
func (r *reader) places(v *measure.Value) (named bool) {
	if n := r.Get("at"); n != nil {
		for _, item := range r.Several(n) {
			if p, here := r.place(item); here {
				v.At = append(v.At, p)
			}
		}
	}
	if r.of == nil {
		r.Refuse(NoKinds, "of")
	} else if n := r.Get("of"); n != nil {
		for _, item := range r.Several(n) {
			v.At = append(v.At, r.of(item)...)
		}
	}
	return r.Has("at") || r.Has("of")
}

// once rejects a value that is measured twice at one place.
func (r *reader) once(v measure.Value, named bool) {
	if !named {
		v.At = []measure.Place{{}}
	}
	for _, p := range v.At {
		key := taken{v.What, p}
		if first := r.taken[key]; first != nil && v.What != "" {
			r.Fail(r.Node, PlaceTwice, finding.Values{"what": problem.Quoted(v.What), "place": p.Name(), "first": first.Stood(r.Node)})
			return
		}
		r.taken[key] = r.Node
	}
}
