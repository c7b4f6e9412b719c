// Package form reads the keys and values of a file by their form: texts, words,
// names, quantities with their units. It does not know what they mean for the
// joint. It may import nodes, geometry/unit and the types of sequence/plan.
package form

import (
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

// Reader reads the values of one file, and of those that it extends.
type Reader struct {
	*nodes.Problems
	Source   source.Source
	BareUnit string // of lengths without a unit: mm or in
}

// NewReader returns a reader for a source; bare lengths are in mm.
func NewReader(from source.Source) *Reader {
	return &Reader{Problems: nodes.NewProblems(from.File), Source: from, BareUnit: "mm"}
}

// Root parses the source; nil if it is not a map of keys.
func (r *Reader) Root(format nodes.Format) *nodes.Node {
	return r.Parse(nodes.NewFile(r.Source.File, r.Source.Data), r.Source.Data, format)
}

// Sound returns the result of reading a file, or nothing if a problem stops the
// work.
func Sound[T any](made T, problems problem.List) (T, problem.List) {
	if problems.Stops() {
		var nothing T
		return nothing, problems
	}
	return made, problems
}
