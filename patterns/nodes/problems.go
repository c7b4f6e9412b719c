package nodes

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

const (
	maxKept  = 10_000 // problems kept while reading, to limit memory
	maxShown = 1_000  // problems returned
)

// Problems collects the problems of a file, and of those that it extends.
type Problems struct {
	file  string // the file being read
	found []*found
}

// found is a problem without its snippet.
type found struct {
	problem problem.Problem
	file    *File
}

// NewProblems returns an empty list for a file.
func NewProblems(file string) *Problems { return &Problems{file: file} }

// Fail reports an error at a node.
func (p *Problems) Fail(at *Node, code finding.Code, values finding.Values) {
	p.Report(at.File, at.Line, at.Column, finding.Failed(code, values))
}

// Warn reports a warning at a node.
func (p *Problems) Warn(at *Node, code finding.Code, values finding.Values) {
	p.Report(at.File, at.Line, at.Column, finding.Warned(code, values))
}

// Note reports a note at a node.
func (p *Problems) Note(at *Node, code finding.Code, values finding.Values) {
	p.Report(at.File, at.Line, at.Column, finding.Noted(code, values))
}

// Report reports a finding at a position, limited to the file.
func (p *Problems) Report(f *File, line, column int, why finding.Finding) {
	if p.Full() {
		return
	}
	one := problem.Of(why)
	one.File = f.Name
	one.Line, one.Column = f.within(line, column)
	p.found = append(p.found, &found{one, f})
}

// List returns the sorted problems without duplicates, with snippets.
func (p *Problems) List() problem.List {
	byName := map[string]*File{}
	list := make(problem.List, len(p.found))
	for i, f := range p.found {
		list[i], byName[f.file.Name] = f.problem, f.file
	}
	list.SortFrom(p.file)
	list = withoutRepetitions(list)
	more := p.Full() || len(list) > maxShown
	list = list[:min(len(list), maxShown)]
	for i, one := range list {
		list[i].Snippet, list[i].Mark = byName[one.File].excerpt(one.Line, one.Column)
	}
	if more {
		last := problem.Of(finding.Failed(MoreProblems, nil))
		last.File = p.file
		list = append(list, last)
	}
	return list
}

// withoutRepetitions removes the duplicate problems of a part that is read
// twice through an alias.
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

// Full reports that further problems are not kept.
func (p *Problems) Full() bool { return len(p.found) >= maxKept }

// Count is the number of problems so far.
func (p *Problems) Count() int { return len(p.found) }

// Meant returns the name that was probably meant, or "". It gives up if a file
// has many problems: these are not typing errors, and looking up all of them
// would be slow.
func (p *Problems) Meant(name string, names []string) string {
	const mostHints = 100
	if len(p.found) > mostHints {
		return ""
	}
	return problem.Nearest(name, names)
}

// ErrorsSince reports whether an error was found after the first n problems.
func (p *Problems) ErrorsSince(n int) bool { return len(p.ErrorsAfter(n)) > 0 }

// ErrorsAfter returns the errors that were found after the first n problems.
func (p *Problems) ErrorsAfter(n int) (errors []*problem.Problem) {
	for _, f := range p.found[n:] {
		if f.problem.Severity == problem.Error {
			errors = append(errors, &f.problem)
		}
	}
	return errors
}
