package dxf

import (
	"cmp"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// omission is a kind of entity that was left out, and why.
type omission struct {
	kind string
	why  finding.Code
}

// note is a warning about the drawing.
type note struct {
	line int
	what finding.Finding
}

// notDrawn lists the entities that are read with others or show nothing.
var notDrawn = []string{"VIEWPORT", "SEQEND", "ATTDEF"}

func (r *reader) leaveOut(why finding.Code, e entity) {
	if slices.Contains(notDrawn, e.kind) || r.bad != nil {
		return
	}
	key := omission{e.kind, why}
	const most = 200 // keep unknown kinds from filling the screen
	if r.omitted[key] == nil && len(r.omitted) >= most {
		key = omission{kind: "other things"}
	}
	r.omitted[key] = append(r.omitted[key], e.line)
}

// list returns the warnings in reading order.
func (r *reader) list(file string) problem.List {
	notes := slices.Clone(r.notes)
	for o, lines := range r.omitted {
		values := finding.Values{"count": len(lines), "kind": finding.Term(firstLetters(o.kind))}
		if o.why != "" {
			values["why"] = finding.Warned(o.why, nil)
		}
		notes = append(notes, note{slices.Min(lines), finding.Warned(LeftOut, values)})
	}
	slices.SortFunc(notes, func(a, b note) int {
		return cmp.Or(cmp.Compare(a.line, b.line), cmp.Compare(a.what.Error(), b.what.Error()))
	})
	var list problem.List
	for _, n := range notes {
		list = append(list, r.drawing.Problem(file, n.line, n.what))
	}
	return list
}
