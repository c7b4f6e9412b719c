package dxf

import (
	"strings"

	"drawdown/geometry/finding"
)

// entity is one thing of a drawing with its groups.
type entity struct {
	kind     string
	line     int
	pairs    []pair
	vertices []vertex // of a POLYLINE
}

// vertex is a corner of a polyline. The bulge belongs to the way to the next.
type vertex struct{ x, y, bulge float64 }

// entity reads the groups up to the next code 0. Where they are not kept, the
// next call writes over them.
func (r *reader) entity(keep bool) entity {
	if r.ahead.code != 0 {
		r.stop(&fault{r.ahead.line, finding.Failed(OtherStart, nil), r.ahead.text})
		return entity{}
	}
	e := entity{kind: strings.ToUpper(strings.TrimSpace(r.ahead.text)), line: r.ahead.line}
	r.groups()
	if e.pairs = r.kept; keep {
		e.pairs = append([]pair(nil), r.kept...)
	}
	switch {
	case e.kind == "POLYLINE":
		e.pairs = append([]pair(nil), e.pairs...)
		e.vertices = r.vertices()
	case e.kind == "INSERT" && r.wholeOf(e, 66, 0) != 0:
		e.pairs = append([]pair(nil), e.pairs...)
		r.attributes()
	}
	return e
}

// groups reads the groups of one thing.
func (r *reader) groups() {
	r.kept = r.kept[:0]
	const ofOtherPrograms = 1000 // extended data
	for r.advance(); r.bad == nil && r.more && r.ahead.code != 0; r.advance() {
		if r.ahead.code < ofOtherPrograms && r.ahead.code != 999 {
			r.kept = append(r.kept, r.ahead)
		}
	}
}

func (r *reader) vertices() []vertex {
	var all []vertex
	for r.until("SEQEND") && r.ahead.text == "VERTEX" {
		line := r.ahead.line
		r.groups()
		e := entity{kind: "VERTEX", line: line, pairs: r.kept}
		const frame = 16 // a control point of a spline, which the line misses
		if r.wholeOf(e, 70, 0)&frame == 0 {
			all = append(all, vertex{r.numberOf(e, 10, 0), r.numberOf(e, 20, 0), r.numberOf(e, 42, 0)})
		}
	}
	r.endOfSequence()
	return all
}

// attributes passes over the words that hang on an INSERT.
func (r *reader) attributes() {
	for r.until("SEQEND") && r.ahead.text == "ATTRIB" {
		e := entity{kind: "ATTRIB", line: r.ahead.line}
		r.groups()
		r.leaveOut("", e)
	}
	r.endOfSequence()
}

func (r *reader) endOfSequence() {
	if r.bad == nil && r.more && r.ahead.code == 0 && r.ahead.text == "SEQEND" {
		r.groups()
	}
}

func (e entity) text(code int) string {
	for _, p := range e.pairs {
		if p.code == code {
			return strings.TrimSpace(p.text)
		}
	}
	return ""
}

func (r *reader) whole(p pair) int {
	v, bad := p.whole()
	if bad != nil {
		r.stop(bad)
	}
	return v
}

func (r *reader) number(p pair) float64 {
	v, bad := p.number()
	if bad != nil {
		r.stop(bad)
	}
	return v
}

// wholeOf gives the first value with a code; other where there is none.
func (r *reader) wholeOf(e entity, code, other int) int {
	for _, p := range e.pairs {
		if p.code == code {
			return r.whole(p)
		}
	}
	return other
}

func (r *reader) numberOf(e entity, code int, other float64) float64 {
	for _, p := range e.pairs {
		if p.code == code {
			return r.number(p)
		}
	}
	return other
}

// needed gives the first value with a code, which the entity cannot do without.
func (r *reader) needed(e entity, code int) float64 {
	for _, p := range e.pairs {
		if p.code == code {
			return r.number(p)
		}
	}
	r.stop(&fault{e.line, finding.Failed(CodeMissing, finding.Values{"kind": e.kind, "code": code}), e.kind})
	return 0
}
