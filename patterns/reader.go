package patterns

import (
	"fmt"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

const (
	maxKept  = 10_000 // problems kept while reading, so that no file eats the memory
	maxShown = 1_000  // problems handed out
)

// reader collects what one pattern file says and what is wrong with it.
type reader struct {
	source    Source
	input     plan.Input
	bareUnit  string // of lengths without a unit: mm or in
	kinds     kindTable
	fasteners fastenerTable
	stars     []star
	stages    []*node // of tightening, beside input.Tighten

	found []found
}

// found is a problem before its snippet is cut.
type found struct {
	problem problem.Problem
	file    *file
}

// fail reports an error at a node. Allowed may be empty.
func (r *reader) fail(at *node, allowed string, format string, args ...any) {
	r.report(at.file, at.line, at.column, problem.Error, allowed, fmt.Sprintf(format, args...))
}

// warn reports a warning at a node.
func (r *reader) warn(at *node, format string, args ...any) {
	r.report(at.file, at.line, at.column, problem.Warning, "", fmt.Sprintf(format, args...))
}

func (r *reader) report(f *file, line, column int, severity problem.Severity, allowed, what string) {
	if r.full() {
		return
	}
	line, column = f.within(line, column)
	r.found = append(r.found, found{problem.Problem{
		File: f.name, Line: line, Column: column, Severity: severity, What: what, Allowed: allowed,
	}, f})
}

// reportFinding reports what a lower floor found; what names its subject, and
// may be empty.
func (r *reader) reportFinding(n *node, severity problem.Severity, what string, why finding.Finding) {
	before := len(r.found)
	r.report(n.file, n.line, n.column, severity, "", what)
	if len(r.found) > before {
		r.found[before].problem.Found = &why
	}
}

// problems gives the sorted list without repetitions, with snippets.
func (r *reader) problems() problem.List {
	byName := map[string]*file{}
	list := make(problem.List, len(r.found))
	for i, f := range r.found {
		list[i], byName[f.file.name] = f.problem, f.file
	}
	list.Sort()
	list = withoutRepetitions(list)
	more := r.full() || len(list) > maxShown
	list = list[:min(len(list), maxShown)]
	for i, p := range list {
		list[i].Snippet, list[i].Mark = byName[p.File].excerpt(p.Line, p.Column)
	}
	if more {
		list = append(list, problem.Problem{
			File: r.source.File, Severity: problem.Error, What: "there are more problems; mend these first",
		})
	}
	return list
}

// withoutRepetitions drops the repeated problems of a part that is read twice
// by way of an alias.
func withoutRepetitions(list problem.List) problem.List {
	seen := map[string]bool{}
	kept := list[:0]
	for _, p := range list {
		key := p.String()
		if !seen[key] {
			kept = append(kept, p)
		}
		seen[key] = true
	}
	return kept
}

// full says that further problems are not kept.
func (r *reader) full() bool { return len(r.found) >= maxKept }

// hint says which of the names is meant.
func (r *reader) hint(name string, names []string) string {
	return problem.Question(r.meant(name, names))
}

// meant gives the name that is meant; empty where none is near. A file with
// many problems has another trouble than slips of the pen, and looking them all
// up would take long.
func (r *reader) meant(name string, names []string) string {
	const mostHints = 100
	if len(r.found) > mostHints {
		return ""
	}
	return problem.Nearest(name, names)
}

// errorsSince says whether an error was found after the first n problems.
func (r *reader) errorsSince(n int) bool {
	return slices.ContainsFunc(r.found[n:], func(f found) bool { return f.problem.Severity == problem.Error })
}
