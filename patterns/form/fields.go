package form

import (
	"iter"
	"slices"
	"strings"
	"unicode"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// Fields is a map of the file whose keys are known.
type Fields struct {
	*Reader
	Node  *nodes.Node
	What  any      // for messages: a fastener, a stage
	meant []string // the nearest known key of each unknown one; "" if none is near
}

// Fields checks that n is a map with the allowed keys only. It returns false if
// n is not a map, or empty.
func (r *Reader) Fields(n *nodes.Node, what any, allowed ...string) (Fields, bool) {
	if n.Shape != nodes.Map {
		key, rest := tightColon(n, allowed)
		switch {
		case key != "":
			r.failTightColon(n, key, rest)
		case n.Comment != "":
			r.Fail(n, nodes.HashInText, finding.Values{"line": n.KeyInQuotes()})
		default:
			r.Fail(n, NoMap, finding.Values{"what": what, "found": n.Called(), "allowed": allowed})
		}
		return Fields{}, false
	}
	if len(n.Entries) == 0 {
		r.Fail(n, NoMap, finding.Values{"what": what, "found": finding.Term("an empty map"), "allowed": allowed})
		return Fields{}, false
	}
	f := Fields{Reader: r, Node: n, What: what}
	for i := range n.Entries {
		e := &n.Entries[i]
		if r.Full() || slices.Contains(allowed, e.Key.Text) || r.loosenColon(n, e, allowed) {
			continue
		}
		meant := r.Meant(e.Key.Text, allowed)
		if before := partedByComma(n, i, allowed); meant == "" && before != "" {
			r.Fail(e.Key, CommaInText, finding.Values{"before": before, "key": e.Key.Text})
		} else {
			r.Fail(e.Key, UnknownKey, finding.Values{"key": problem.Quoted(e.Key.Text), "what": what, "meant": meant, "allowed": allowed})
		}
		f.meant = append(f.meant, meant)
	}
	return f, true
}

// partedByComma returns the text of several words that a comma in { } has split
// into an entry without a value: {note: oil the threads, then wipe}. It returns
// "" for others.
func partedByComma(n *nodes.Node, i int, allowed []string) string {
	words := n.Entries[i]
	first, _, _ := strings.Cut(words.Key.Text, " ")
	if i == 0 || words.Value == nil || !words.Value.Null || slices.Contains(allowed, first) {
		return ""
	}
	before := n.Entries[i-1].Value
	if before == nil || before.Shape != nodes.Scalar || before.Line != words.Key.Line || !isPhrase(before.Text) {
		return ""
	}
	return before.Text
}

// isPhrase reports whether a text is several words and not a figure with its
// unit.
func isPhrase(text string) bool {
	return strings.Contains(text, " ") && strings.IndexFunc(text, unicode.IsLetter) == 0
}

// Unknown reports whether the map has an unknown key.
func (f Fields) Unknown() bool { return len(f.meant) > 0 }

// Mistyped reports whether an unknown key was meant as one of the keys, or a
// part that could not be read may contain it. Both have been reported, so that
// key is not missing.
func (f Fields) Mistyped(keys ...string) bool {
	return slices.ContainsFunc(f.meant, func(meant string) bool { return meant != "" && slices.Contains(keys, meant) }) ||
		slices.ContainsFunc(keys, f.Node.Lacks)
}

// Has reports whether the key is there, even without a value.
func (f Fields) Has(key string) bool { return f.Node.Get(key) != nil }

// Get returns the value of a key. It is nil if the key is missing, or if it has
// no value, which is reported.
func (f Fields) Get(key string) *nodes.Node {
	n := f.Node.Get(key)
	if n == nil {
		return nil
	}
	switch {
	case n.Null && n.Comment != "":
		f.Fail(n, nodes.HashInText, finding.Values{"line": n.InQuotes()})
	case n.Null:
		f.Fail(f.Node.KeyNode(key), NoValue, finding.Values{"key": key})
	default:
		return n
	}
	return nil
}

// Need returns the value of a required key.
func (f Fields) Need(key, example string) *nodes.Node {
	if !f.Has(key) && !f.Mistyped(key) {
		f.Fail(f.Node, KeyMissing, finding.Values{"what": f.What, "key": key, "example": example})
	}
	return f.Get(key)
}

// Map returns the map under a key; false if there is none.
func (f Fields) Map(key string, what any, allowed ...string) (Fields, bool) {
	n := f.Get(key)
	if n == nil {
		return Fields{}, false
	}
	return f.Fields(n, what, allowed...)
}

// Maps returns the maps in the list under a key; what names each of them.
func (f Fields) Maps(key, example string, what any, allowed ...string) iter.Seq[Fields] {
	return func(yield func(Fields) bool) {
		n := f.Get(key)
		if n == nil {
			return
		}
		for _, item := range f.TrueList(n, key, example) {
			if one, ok := f.Fields(item, what, allowed...); ok && !yield(one) {
				return
			}
		}
	}
}

// Opt reads the value of an optional key.
func Opt[T any](f Fields, key string, read func(*nodes.Node) T) (v T) {
	if n := f.Get(key); n != nil {
		v = read(n)
	}
	return v
}

// Text returns a text to print; "" if there is none.
func (f Fields) Text(key string) string { return f.TextUpTo(key, maxTextCharacters) }

// TextUpTo is Text with another limit.
func (f Fields) TextUpTo(key string, most int) string {
	return Opt(f, key, func(n *nodes.Node) string {
		s, _ := f.Reader.TextUpTo(n, key, most)
		return s
	})
}

// NeedText returns a required text.
func (f Fields) NeedText(key, example string) string {
	s, _ := Given(f.Need(key, example), key, f.Reader.Text)
	return s
}

// Which returns the one key of the group that the map has. It reports a problem
// if there are none or several.
func (f Fields) Which(group ...string) string {
	present := slices.DeleteFunc(slices.Clone(group), func(key string) bool { return !f.Has(key) })
	switch len(present) {
	case 1:
		return present[0]
	case 0:
		if f.Mistyped(group...) || slices.Contains(f.meant, "") {
			return ""
		}
		f.Fail(f.Node, NoAction, finding.Values{"what": f.What, "allowed": group})
	default:
		f.Fail(f.Node, SeveralActions, finding.Values{"what": f.What, "keys": present, "allowed": group})
	}
	return ""
}

// Refuse reports keys that have no meaning together with the others.
func (f Fields) Refuse(why finding.Code, keys ...string) {
	for _, key := range keys {
		if f.Has(key) {
			f.Fail(f.Node.KeyNode(key), KeyIdle, finding.Values{"why": finding.Failed(why, nil), "key": key})
		}
	}
}
