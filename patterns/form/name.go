package form

import (
	"strconv"
	"unicode"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// ImpliedKind is the only kind of a file without kinds.
const ImpliedKind = "bolt"

// Limits of a joint and of the names of its fasteners: far more than any has.
const (
	MostFasteners     = 10_000
	MostIDCharacters  = 12
	MostCast          = 99_999
	MostOutlinePoints = 100_000
	MostMark          = 4 // characters: it is small, beside a number
)

// NewID checks the form of an id.
func (r *Reader) NewID(at *nodes.Node, what any, id string) (string, bool) {
	if at.Shape != nodes.Scalar || at.Null || id == "" {
		r.Fail(at, NoID, finding.Values{"what": what, "found": at.Called()})
		return "", false
	}
	if isNumber(at.Comment) {
		r.Fail(at, OddID, finding.Values{"id": problem.Quoted(id + " " + at.Comment), "character": "'#'"})
		return "", false
	}
	if len([]rune(id)) > MostIDCharacters {
		r.Fail(at, LongID, finding.Values{"id": problem.Quoted(id), "most": MostIDCharacters})
		return "", false
	}
	for _, c := range id {
		if !unicode.IsLetter(c) && !(c >= '0' && c <= '9') && c != '-' && c != '_' && c != '.' {
			r.Fail(at, OddID, finding.Values{"id": problem.Quoted(id), "character": strconv.QuoteRune(c)})
			return "", false
		}
	}
	return id, r.CheckPrintable(at, what, id)
}

// isNumber reports whether a comment is a number as in the trade: #7.
func isNumber(comment string) bool {
	return len(comment) > 1 && comment[1] != ' '
}

// Mark reads what is written on the part beside a fastener.
func (r *Reader) Mark(n *nodes.Node) string {
	switch {
	case n.Comment != "":
		r.Fail(n, nodes.HashInText, finding.Values{"line": n.InQuotes()})
	case n.Shape != nodes.Scalar || n.Null || n.Text == "":
		r.Fail(n, NoMark, finding.Values{"found": n.Called()})
	case len([]rune(n.Text)) > MostMark:
		r.Fail(n, LongMark, finding.Values{"mark": problem.Quoted(n.Text), "most": MostMark})
	case r.CheckPrintable(n, "mark", n.Text):
		return n.Text
	}
	return ""
}

// NotBoth rejects a cast number together with a mark: only one small number
// fits beside a fastener, and its meaning must be clear.
func (r *Reader) NotBoth(f Fields) {
	if f.Has("cast") && f.Has("mark") {
		r.Fail(f.Node.KeyNode("mark"), CastAndMark, finding.Values{"what": f.What, "allowed": []string{"cast", "mark"}})
	}
}
