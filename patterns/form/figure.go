package form

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// Parsed reads a figure by its parser.
func Parsed[T any](r *Reader, n *nodes.Node, what any, parse func(string) (T, error)) (v T, ok bool) {
	text, ok := r.QuantityText(n, what)
	if !ok {
		return v, false
	}
	v, err := parse(text)
	if err != nil {
		r.Unreadable(n, finding.Error, what, err)
	}
	return v, err == nil
}

// Positive reads a figure above 0 by its parser.
func Positive[T ~float64](r *Reader, n *nodes.Node, what any, parse func(string) (T, error)) (T, bool) {
	v, ok := Parsed(r, n, what, parse)
	if ok && !(v > 0) {
		r.Fail(n, TooLittle, finding.Values{"what": what, "written": problem.Quoted(n.Text)})
		return 0, false
	}
	return v, ok
}
