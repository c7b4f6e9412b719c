package patterns

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxTextCharacters is what any line on a sheet can hold, and more.
const maxTextCharacters = 200

// text gives a text that may be printed, without blanks round it.
func (r *reader) text(n *node, what string) (string, bool) {
	return r.textUpTo(n, what, maxTextCharacters)
}

func (r *reader) textUpTo(n *node, what string, most int) (string, bool) {
	if n.shape != scalarShape || n.null {
		r.fail(n, "", "%s is a text, not %s", what, n.called())
		return "", false
	}
	s := strings.TrimSpace(n.text)
	if s == "" {
		r.fail(n, "", "%s is empty; write a text or leave the key out", what)
		return "", false
	}
	if length := utf8.RuneCountInString(s); length > most {
		r.fail(n, "", "%s has %d characters; at most %d fit", what, length, most)
		return "", false
	}
	return s, r.checkPrintable(n, what, s)
}

func (r *reader) checkPrintable(n *node, what, s string) bool {
	for _, c := range s {
		switch {
		case c == '\n' || c == '\r':
			r.fail(n, "", "%s holds a line break; write it on one line", what)
			return false
		case unicode.IsControl(c) || unicode.In(c, unicode.Bidi_Control, unicode.Zl, unicode.Zp):
			r.fail(n, "", "%s holds the control character U+%04X; remove it", what, c)
			return false
		}
	}
	if r.source.Printable == nil {
		return true
	}
	if missing, found := r.source.Printable(s); found {
		r.fail(n, "", "%s: the typeface has no \"%c\" (U+%04X)", what, missing, missing)
		return false
	}
	return true
}

// choice gives one of the allowed words.
func (r *reader) choice(n *node, what string, allowed ...string) (string, bool) {
	if n.shape == scalarShape && containsText(allowed, n.text) {
		return n.text, true
	}
	r.fail(n, alternatives(allowed), "%s is %s%s", what, n.called(), r.hint(n.text, allowed))
	return "", false
}

// yesNo gives a truth as YAML 1.1 and 1.2 write it.
func (r *reader) yesNo(n *node, what string) (value, ok bool) {
	switch strings.ToLower(n.text) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	r.fail(n, "yes, no", "%s is %s", what, n.called())
	return false, false
}

// list gives the items of a list; one plain value counts as a list of one.
func (r *reader) list(n *node) []*node {
	if n.shape == listShape {
		return n.items
	}
	return []*node{n}
}

// trueList gives the items of what must be a list with something in it.
func (r *reader) trueList(n *node, what, example string) []*node {
	if n.shape != listShape {
		r.fail(n, "", "%s is a list, for example %s, not %s", what, example, n.called())
		return nil
	}
	if len(n.items) == 0 {
		r.fail(n, "", "%s is an empty list; write for example %s", what, example)
	}
	return n.items
}
