package form

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
)

// Parsed reads a figure with its parser.
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
