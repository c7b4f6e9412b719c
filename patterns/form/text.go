package form

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// maxTextCharacters is more than any line on a sheet can hold.
const maxTextCharacters = 200

// Text returns a printable text, without surrounding blanks.
func (r *Reader) Text(n *nodes.Node, what any) (string, bool) {
	return r.TextUpTo(n, what, maxTextCharacters)
}

// TextUpTo is Text with another limit.
func (r *Reader) TextUpTo(n *nodes.Node, what any, most int) (string, bool) {
	if n.Comment != "" {
		r.Fail(n, nodes.HashInText, finding.Values{"line": n.InQuotes()})
		return "", false
	}
	if line := n.WithColon(); line != "" {
		r.Fail(n, nodes.ColonInText, finding.Values{"line": line})
		return "", false
	}
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

// CheckPrintable reports whether a text can be printed.
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

// Choice returns one of the allowed words.
func Choice[T ~string](r *Reader, n *nodes.Node, what any, allowed ...T) (word T, ok bool) {
	if n.Shape == nodes.Scalar && slices.Contains(allowed, T(n.Text)) {
		return T(n.Text), true
	}
	words := Words(allowed)
	r.Fail(n, NoChoice, finding.Values{"what": what, "found": n.Called(), "meant": r.Meant(n.Text, words), "allowed": words})
	return "", false
}

// Word returns the word of an optional key.
func Word[T ~string](f Fields, key string, allowed ...T) T {
	word, _ := Given(f.Get(key), key, func(n *nodes.Node, what any) (T, bool) { return Choice(f.Reader, n, what, allowed...) })
	return word
}

// Words returns words of any string type as strings.
func Words[T ~string](of []T) []string {
	words := make([]string, len(of))
	for i, w := range of {
		words[i] = string(w)
	}
	return words
}

// YesNo returns a boolean as written in YAML 1.1 and 1.2.
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

// Several returns the items of a list; one plain value counts as a list of one.
func (r *Reader) Several(n *nodes.Node) []*nodes.Node {
	if n.Shape == nodes.List {
		return n.Items
	}
	return []*nodes.Node{n}
}

// TrueList returns the items of a value that must be a non-empty list.
func (r *Reader) TrueList(n *nodes.Node, what any, example string) []*nodes.Node {
	if items := n.Undashed(); items != nil {
		r.Fail(n, nodes.NoDash, finding.Values{"line": "- " + problem.Shortened(items[0].Text)})
		return items
	}
	if n.Shape != nodes.List {
		r.Fail(n, NoList, finding.Values{"what": what, "example": example, "found": n.Called()})
		return nil
	}
	if len(n.Items) == 0 {
		r.Fail(n, EmptyList, finding.Values{"what": what, "example": example})
	}
	return n.Items
}
