package form

import (
	"slices"
	"strings"
	"unicode/utf8"

	"drawdown/patterns/nodes"
)

// tightColon splits a plain value into a known key and its value right after
// the colon. Without a space between them YAML reads torque:30 N·m as one word.
func tightColon(n *nodes.Node, allowed []string) (key, rest string) {
	if n.Shape != nodes.Scalar || n.Null {
		return "", ""
	}
	key, rest, ok := strings.Cut(n.Text, ":")
	if !ok || rest == "" || !slices.Contains(allowed, key) {
		return "", ""
	}
	return key, rest
}

func (r *Reader) failTightColon(at *nodes.Node, key, rest string) {
	r.Report(at.File, at.Line, at.Column, nodes.TightColon(key, rest))
}

// loosenColon reports an entry without a space after its colon, and reads it as
// intended, so that one error gives one problem.
func (r *Reader) loosenColon(n *nodes.Node, e *nodes.Entry, allowed []string) bool {
	key, rest := tightColon(e.Key, allowed)
	if key == "" || !e.Value.Null || n.Get(key) != nil {
		return false
	}
	r.failTightColon(e.Key, key, rest)
	name, value := *e.Key, *e.Key
	name.Text = key
	value.Text, value.Column = rest, e.Key.Column+utf8.RuneCountInString(key)+1
	*e = nodes.Entry{Key: &name, Value: &value}
	return true
}
