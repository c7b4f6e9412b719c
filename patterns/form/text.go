package form

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
)

// maxTextCharacters is what any line on a sheet can hold, and more.
const maxTextCharacters = 200

// Text gives a text that may be printed, without blanks round it.
func (r *Reader) Text(n *nodes.Node, what any) (string, bool) {
	return r.TextUpTo(n, what, maxTextCharacters)
}

// TextUpTo is Text with a bound of its own.
func (r *Reader) TextUpTo(n *nodes.Node, what any, most int) (string, bool) {
	if n.Shape != nodes.Scalar || n.Null {
		r.Fail(n, NoText, finding.Values{"what": what, "found": n.Called()})
		return "", false
	}
	s := strings.TrimSpace(n.Text)
	if s == "" {
		r.Fail(n, EmptyText, finding.Values{"what": what})
		return "", false
	}
	if length := utf8.RuneCountInString(s); length > most {
		r.Fail(n, LongText, finding.Values{"what": what, "count": length, "most": most})
		return "", false
	}
	return s, r.CheckPrintable(n, what, s)
}

// CheckPrintable says whether a text can be printed.
func (r *Reader) CheckPrintable(n *nodes.Node, what any, s string) bool {
	for _, c := range s {
		switch {
		case c == '\n' || c == '\r':
			r.Fail(n, LineBreak, finding.Values{"what": what})
			return false
		case unicode.IsControl(c) || unicode.In(c, unicode.Bidi_Control, unicode.Zl, unicode.Zp):
			r.Fail(n, ControlInText, finding.Values{"what": what, "character": fmt.Sprintf("%04X", c)})
			return false
		}
	}
	if r.Source.Printable == nil {
		return true
	}
	if missing, found := r.Source.Printable(s); found {
		r.Fail(n, NotInTypeface, finding.Values{"what": what, "letter": string(missing), "character": fmt.Sprintf("%04X", missing)})
		return false
	}
	return true
}

// Choice gives one of the allowed words.
func (r *Reader) Choice(n *nodes.Node, what any, allowed ...string) (string, bool) {
	if n.Shape == nodes.Scalar && slices.Contains(allowed, n.Text) {
		return n.Text, true
	}
	r.Fail(n, NoChoice, finding.Values{"what": what, "found": n.Called(), "meant": r.Meant(n.Text, allowed), "allowed": allowed})
	return "", false
}

// YesNo gives a truth as YAML 1.1 and 1.2 write it.
func (r *Reader) YesNo(n *nodes.Node, what any) (value, ok bool) {
	switch strings.ToLower(n.Text) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	r.Fail(n, NoChoice, finding.Values{"what": what, "found": n.Called(), "meant": "", "allowed": []string{"yes", "no"}})
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
func (r *Reader) TrueList(n *nodes.Node, what any, example string) []*nodes.Node {
	if n.Shape != nodes.List {
		r.Fail(n, NoList, finding.Values{"what": what, "example": example, "found": n.Called()})
		return nil
	}
	if len(n.Items) == 0 {
		r.Fail(n, EmptyList, finding.Values{"what": what, "example": example})
	}
	return n.Items
}
