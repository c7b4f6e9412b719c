package dxf

import (
	"cmp"
	"fmt"
	"slices"

	"drawdown/patterns/problem"
)

// omission counts what was left out for one reason.
type omission struct {
	kind, why string
	count     int
	line      int // of the first
}

// note is a warning about the drawing.
type note struct {
	line int
	what string
}

// notDrawn are the things of a drawing that are read for others, or that hold
// nothing to be seen.
var notDrawn = map[string]bool{"VIEWPORT": true, "SEQEND": true, "ATTDEF": true}

func (r *reader) leaveOut(why string, e entity) {
	if notDrawn[e.kind] || r.bad != nil {
		return
	}
	key := e.kind + "\x00" + why
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
		notes = append(notes, note{o.line, o.words()})
	}
	slices.SortFunc(notes, func(a, b note) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.what, b.what))
	})
	_, binary := r.source.(*bytesSource)
	var list problem.List
	for _, n := range notes {
		p := problem.Problem{File: file, Line: n.line, Column: 1, Severity: problem.Warning, What: n.what}
		if binary || n.line == 0 {
			p.Line, p.Column = 0, 0
		}
		list = append(list, p)
	}
	return list
}

func (o omission) words() string {
	why := o.why
	if why != "" {
		why = " " + why
	}
	if o.count == 1 {
		return fmt.Sprintf("left out: 1 %s%s", o.kind, why)
	}
	return fmt.Sprintf("left out: %d %s%s; this is the first", o.count, o.kind, why)
}
