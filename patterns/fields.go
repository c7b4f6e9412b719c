package patterns

import (
	"slices"
	"strings"

	"drawdown/patterns/problem"
)

// fields is a map of the file whose keys are known.
type fields struct {
	r     *reader
	node  *node
	what  string   // in a message: a fastener, a stage
	meant []string // the nearest known key of each unknown one; empty where none is near
}

// fields checks that n is a map with the allowed keys only. It gives false
// where n is no map.
func (r *reader) fields(n *node, what string, allowed ...string) (fields, bool) {
	if n.shape != mapShape {
		if key, rest := tightColon(n, allowed); key != "" {
			r.failTightColon(n, key, rest)
		} else {
			r.fail(n, alternatives(allowed), "%s is a map of keys, not %s", what, n.called())
		}
		return fields{}, false
	}
	f := fields{r: r, node: n, what: what}
	for i := range n.entries {
		e := &n.entries[i]
		if r.full() || containsText(allowed, e.key.text) || r.loosenColon(n, e, allowed) {
			continue
		}
		meant := r.meant(e.key.text, allowed)
		r.fail(e.key, alternatives(allowed), "unknown key %s in %s%s", quoted(e.key.text), what, problem.Question(meant))
		f.meant = append(f.meant, meant)
	}
	return f, true
}

// mistyped says whether an unknown key, which is reported already, stands for
// one of the keys. One slip is one problem: that key is then not missing.
func (f fields) mistyped(keys ...string) bool {
	return slices.ContainsFunc(f.meant, func(meant string) bool { return meant != "" && containsText(keys, meant) })
}

func containsText(list []string, s string) bool {
	for _, v := range list {
		if v == s {
			return true
		}
	}
	return false
}

// has says whether the key stands there, even without a value.
func (f fields) has(key string) bool { return f.node.get(key) != nil }

// get gives the value of a key. It is nil where the key is missing, and where
// it has no value, which is reported.
func (f fields) get(key string) *node {
	n := f.node.get(key)
	if n == nil {
		return nil
	}
	if n.null {
		f.r.fail(f.node.keyNode(key), "", "%s has no value; write one or leave the key out", key)
		return nil
	}
	return n
}

// need gives the value of a key that must be there.
func (f fields) need(key, example string) *node {
	if !f.has(key) {
		if f.mistyped(key) {
			return nil
		}
		f.r.fail(f.node, "", "%s needs %s, for example %s", f.what, key, example)
		return nil
	}
	return f.get(key)
}

// text gives a text that is printed; empty where there is none.
func (f fields) text(key string) string {
	if n := f.get(key); n != nil {
		s, _ := f.r.text(n, key)
		return s
	}
	return ""
}

// which gives the one key of the group that the map has. Where there are none
// or several it reports them.
func (f fields) which(group ...string) string {
	var present []string
	for _, key := range group {
		if f.has(key) {
			present = append(present, key)
		}
	}
	switch len(present) {
	case 1:
		return present[0]
	case 0:
		if f.mistyped(group...) || containsText(f.meant, "") {
			return ""
		}
		f.r.fail(f.node, alternatives(group), "%s has no action", f.what)
	default:
		f.r.fail(f.node, "one of "+alternatives(group), "%s has %s at once", f.what, strings.Join(present, " and "))
	}
	return ""
}
