package form

import (
	"fmt"
	"unicode"

	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// ImpliedKind is the only kind of a file without kinds.
const ImpliedKind = "bolt"

// Bounds of a joint and of what names its fasteners: far more than any has.
const (
	MostFasteners     = 10_000
	MostIDCharacters  = 12
	MostCast          = 99_999
	MostOutlinePoints = 100_000
	MostMark          = 4 // characters: it stands small beside a number
)

// NewID checks the form of an id.
func (r *Reader) NewID(at *nodes.Node, what, id string) (string, bool) {
	if at.Shape != nodes.Scalar || at.Null || id == "" {
		r.Fail(at, "", "%s is a short name such as M1, not %s", what, at.Called())
		return "", false
	}
	if len([]rune(id)) > MostIDCharacters {
		r.Fail(at, fmt.Sprintf("up to %d characters", MostIDCharacters), "the id %s is too long", problem.Quoted(id))
		return "", false
	}
	for _, c := range id {
		if !unicode.IsLetter(c) && !(c >= '0' && c <= '9') && c != '-' && c != '_' && c != '.' {
			r.Fail(at, "letters, digits, - _ .", "the id %s holds the character %q", problem.Quoted(id), c)
			return "", false
		}
	}
	return id, r.CheckPrintable(at, what, id)
}

// Mark reads what is written on the part beside a fastener.
func (r *Reader) Mark(n *nodes.Node) (string, bool) {
	if n.Shape != nodes.Scalar || n.Null || n.Text == "" {
		r.Fail(n, "", "mark is what is written on the part beside it, such as 7 or B, not %s", n.Called())
		return "", false
	}
	if len([]rune(n.Text)) > MostMark {
		r.Fail(n, fmt.Sprintf("up to %d characters", MostMark), "the mark %s is too long to stand beside a number", problem.Quoted(n.Text))
		return "", false
	}
	return n.Text, r.CheckPrintable(n, "mark", n.Text)
}

// NotBoth refuses a cast number and a mark at once: one small number stands
// beside a fastener, and the reader has to know which.
func (r *Reader) NotBoth(f Fields) {
	if f.Has("cast") && f.Has("mark") {
		r.Fail(f.Node.KeyNode("mark"), "cast, mark", "%s has both; one small number stands on the card: the one cast on the part, or the mark", f.What)
	}
}
