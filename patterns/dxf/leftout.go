package dxf

import (
	"cmp"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// omission counts what was left out for one reason.
type omission struct {
	kind  string
	why   finding.Code
	count int
	line  int // of the first
}

// note is a warning about the drawing.
type note struct {
	line int
	what finding.Finding
}

// notDrawn are the things of a drawing that are read for others, or that hold
// nothing to be seen.
var notDrawn = map[string]bool{"VIEWPORT": true, "SEQEND": true, "ATTDEF": true}

func (r *reader) leaveOut(why finding.Code, e entity) {
	if notDrawn[e.kind] || r.bad != nil {
		return
	}
	key := e.kind + "\x00" + string(why)
	o := r.omitted[key]
	if o == nil {
		const most = 200 // kinds that nobody knows fill no screens
		if len(r.omitted) >= most {
			e.kind, why, key = "other things", "", "\x00"
			o = r.omitted[key]
		}
		if o == nil {
			o = &omission{kind: firstLetters(e.kind), why: why, line: e.line}
			r.omitted[key] = o
		}
	}
	o.count++
	o.line = min(o.line, e.line)
}

// list gives the warnings in reading order.
func (r *reader) list(file string) problem.List {
	notes := slices.Clone(r.notes)
	for _, o := range r.omitted {
		notes = append(notes, note{o.line, o.found()})
	}
	slices.SortFunc(notes, func(a, b note) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.what.Error(), b.what.Error()))
	})
	_, binary := r.source.(*bytesSource)
	var list problem.List
	for _, n := range notes {
		p := problem.Of(n.what)
		p.File = file
		if !binary && n.line > 0 {
			p.Line, p.Column = n.line, 1
		}
		list = append(list, p)
	}
	return list
}

func (o omission) found() finding.Finding {
	values := finding.Values{"count": o.count, "kind": finding.Term(o.kind)}
	if o.why != "" {
		values["why"] = finding.Warned(o.why, nil)
	}
	return finding.Warned(LeftOut, values)
}
