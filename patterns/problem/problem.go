// Package problem represents what is wrong with an input: where it is, what is
// wrong, and what is allowed. Problems are collected, so that one run shows
// them all.
package problem

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// Severity reports whether a problem stops the work.
type Severity = finding.Severity

const (
	Error   = finding.Error
	Warning = finding.Warning
)

// Problem is one thing for the user to fix.
type Problem struct {
	File     string           `json:"file"`
	Line     int              `json:"line"`   // from 1; 0 for the whole file
	Column   int              `json:"column"` // from 1, in characters
	Severity Severity         `json:"severity"`
	Code     finding.Code     `json:"code,omitempty"`
	What     string           `json:"what"`
	Allowed  string           `json:"allowed,omitempty"`
	Snippet  string           `json:"snippet,omitempty"` // the source line, without its line end; shortened if very long
	Mark     int              `json:"mark,omitempty"`    // the position in a shortened Snippet, in characters from 1; 0: at Column
	Found    *finding.Finding `json:"-"`                 // until Worded converts it to Code, What and Allowed
}

// Of returns the problem of a finding, without its place.
func Of(found finding.Finding) Problem {
	return Problem{Severity: found.Severity, Found: &found}
}

// Worded returns the problem with its finding in words: what is wrong, and what
// is allowed.
func (p Problem) Worded(what, allowed func(finding.Finding) string) Problem {
	if p.Found == nil {
		return p
	}
	p.Code, p.What, p.Allowed, p.Found = cmp.Or(p.Code, p.Found.Code), what(*p.Found), allowed(*p.Found), nil
	return p
}

// Worded returns the list with all findings in words.
func (l List) Worded(what, allowed func(finding.Finding) string) List {
	worded := make(List, len(l))
	for i, p := range l {
		worded[i] = p.Worded(what, allowed)
	}
	return worded
}

// String formats the problem on one line: file:line:column: severity: what.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", p.Line, p.Column)
	}
	fmt.Fprintf(&b, ": %s: %s", p.Severity, p.What)
	if p.Found != nil {
		b.WriteString(p.Found.Error()) // not worded yet
	}
	if p.Allowed != "" {
		fmt.Fprintf(&b, "; allowed: %s", p.Allowed)
	}
	return b.String()
}

// Detail prints the problem with the source line and a mark under the place.
func (p Problem) Detail() string { return p.Under(p.String()) }

// Under prints the source line, with a mark under the place, below a text.
func (p Problem) Under(text string) string {
	if p.Line == 0 || p.Snippet == "" {
		return text + "\n"
	}
	margin := fmt.Sprintf("%5d | ", p.Line)
	indent := strings.Repeat(" ", len(margin)-2) + "| "
	mark := cmp.Or(p.Mark, p.Column)
	return fmt.Sprintf("%s\n%s%s\n%s%s^\n", text, margin, harmless(p.Snippet), indent, padding(p.Snippet, mark-1))
}

// List is all the problems of a run. It is an error when one of them is.
type List []Problem

// Error prints one problem a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, p := range l {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Detail prints every problem with its source line.
func (l List) Detail() string {
	var b strings.Builder
	for _, p := range l {
		b.WriteString(p.Detail())
	}
	return b.String()
}

// Stops reports whether a problem in the list stops the work.
func (l List) Stops() bool {
	return slices.ContainsFunc(l, func(p Problem) bool { return p.Severity == Error })
}

// WithoutNotes returns the errors and warnings.
func (l List) WithoutNotes() List {
	return slices.DeleteFunc(slices.Clone(l), func(p Problem) bool { return p.Severity == finding.Note })
}

// SortFrom brings the problems into reading order, those of a file before those of
// the files that it builds on: what it changes there is the likelier cause.
func (l List) SortFrom(file string) {
	later := func(p Problem) int {
		if p.File == file {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(l, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(later(a), later(b)), cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}
