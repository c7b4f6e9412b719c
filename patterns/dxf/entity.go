package dxf

import (
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// entity is one entity of a drawing with its groups.
type entity struct {
	kind     string
	line     int
	pairs    []pair
	vertices []vertex // of a POLYLINE
}

// vertex is a corner of a polyline. Its bulge belongs to the edge to the next
// vertex.
type vertex struct {
	at    geometry.Point
	bulge float64
}

// entity reads one entity, and those that belong to it.
func (r *reader) entity() entity {
	if r.ahead.code != 0 {
		r.stop(faultAt(r.ahead.line, r.ahead.text, OtherStart, nil))
		return entity{}
	}
	e := entity{kind: strings.ToUpper(strings.TrimSpace(r.ahead.text)), line: r.ahead.line}
	e.pairs = r.groups()
	switch {
	case e.kind == "POLYLINE":
		r.members("VERTEX", func(v entity) {
			const frame = 16 // a control point of a spline, which is off the curve
			if r.wholeOf(v, 70, 0)&frame == 0 {
				at := geometry.Point{X: r.numberOf(v, 10, 0), Y: r.numberOf(v, 20, 0)}
				e.vertices = append(e.vertices, vertex{at, r.numberOf(v, 42, 0)})
			}
		})
	case e.kind == "INSERT" && r.wholeOf(e, 66, 0) != 0:
		r.members("ATTRIB", func(words entity) { r.leaveOut("", words) })
	}
	return e
}

// groups reads the groups of one entity: those up to the next code 0.
func (r *reader) groups() []pair {
	const ofOtherPrograms = 1000 // extended data
	all := make([]pair, 0, 8)
	for r.advance(); r.bad == nil && r.more && r.ahead.code != 0; r.advance() {
		if r.ahead.code < ofOtherPrograms {
			all = append(all, r.ahead)
		}
	}
	return all
}

// members reads the entities of one kind that belong to another, up to their
// end.
func (r *reader) members(kind string, take func(entity)) {
	for r.until("SEQEND") && r.ahead.text == kind {
		e := entity{kind: kind, line: r.ahead.line}
		e.pairs = r.groups()
		take(e)
	}
	if r.bad == nil && r.ahead.begins("SEQEND") {
		r.groups()
	}
}

// first returns the first group with a code.
func (e entity) first(code int) (pair, bool) {
	for _, p := range e.pairs {
		if p.code == code {
			return p, true
		}
	}
	return pair{}, false
}

func (e entity) text(code int) string {
	p, _ := e.first(code)
	return strings.TrimSpace(p.text)
}

// wholeOf returns the first value with a code, or other if there is none.
func (r *reader) wholeOf(e entity, code, other int) int {
	if p, ok := e.first(code); ok {
		return r.whole(p)
	}
	return other
}

func (r *reader) numberOf(e entity, code int, other float64) float64 {
	if p, ok := e.first(code); ok {
		return r.number(p)
	}
	return other
}

// needed returns the first value with a code, which the entity must have.
func (r *reader) needed(e entity, code int) float64 {
	p, ok := e.first(code)
	if !ok {
		r.stop(faultAt(e.line, e.kind, CodeMissing, finding.Values{"kind": e.kind, "code": code}))
		return 0
	}
	return r.number(p)
}
