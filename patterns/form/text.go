package form

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// maxTextCharacters is what any line on a sheet can hold, and more.
const maxTextCharacters = 200

// Text gives a text that may be printed, without blanks round it.
func (r *Reader) Text(n *nodes.Node, what string) (string, bool) {
	return r.TextUpTo(n, what, maxTextCharacters)
}

func (r *Reader) TextUpTo(n *nodes.Node, what string, most int) (string, bool) {
	if n.Shape != nodes.Scalar || n.Null {
		r.Fail(n, "", "%s is a text, not %s", what, n.Called())
		return "", false
	}
	s := strings.TrimSpace(n.Text)
	if s == "" {
		r.Fail(n, "", "%s is empty; write a text or leave the key out", what)
		return "", false
	}
	if length := utf8.RuneCountInString(s); length > most {
		r.Fail(n, "", "%s has %d characters; at most %d fit", what, length, most)
		return "", false
	}
	return s, r.CheckPrintable(n, what, s)
}

func (r *Reader) CheckPrintable(n *nodes.Node, what, s string) bool {
	for _, c := range s {
		switch {
		case c == '\n' || c == '\r':
			r.Fail(n, "", "%s holds a line break; write it on one line", what)
			return false
		case unicode.IsControl(c) || unicode.In(c, unicode.Bidi_Control, unicode.Zl, unicode.Zp):
			r.Fail(n, "", "%s holds the control character U+%04X; remove it", what, c)
			return false
		}
	}
	if r.Source.Printable == nil {
		return true
	}
	if missing, found := r.Source.Printable(s); found {
		r.Fail(n, "", "%s: the typeface has no \"%c\" (U+%04X)", what, missing, missing)
		return false
	}
	return true
}

// Choice gives one of the allowed words.
func (r *Reader) Choice(n *nodes.Node, what string, allowed ...string) (string, bool) {
	if n.Shape == nodes.Scalar && slices.Contains(allowed, n.Text) {
		return n.Text, true
	}
	r.Fail(n, problem.Alternatives(allowed), "%s is %s%s", what, n.Called(), r.Hint(n.Text, allowed))
	return "", false
}

// YesNo gives a truth as YAML 1.1 and 1.2 write it.
func (r *Reader) YesNo(n *nodes.Node, what string) (value, ok bool) {
	switch strings.ToLower(n.Text) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	r.Fail(n, "yes, no", "%s is %s", what, n.Called())
	return false, false
}

// Several gives the items of a list; one plain value counts as a list of one.
func (r *Reader) Several(n *nodes.Node) []*nodes.Node {
	if n.Shape == nodes.List {
		return n.Items
	}
	return []*nodes.Node{n}
}

// TrueList gives the items of what must be a list with something in it.
func (r *Reader) TrueList(n *nodes.Node, what, example string) []*nodes.Node {
	if n.Shape != nodes.List {
		r.Fail(n, "", "%s is a list, for example %s, not %s", what, example, n.Called())
		return nil
	}
	if len(n.Items) == 0 {
		r.Fail(n, "", "%s is an empty list; write for example %s", what, example)
	}
	return n.Items
}
