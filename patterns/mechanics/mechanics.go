// Package mechanics reads the keys of a pattern about bolts and clamped parts:
// threads, classes, heads, friction, materials, gaskets, flanges.
package mechanics

import (
	"cmp"
	"errors"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/strength"
)

// reader reads the keys of one map.
type reader struct{ *form.Reader }

// threadAndClass reads the thread and the property class of a kind. An unknown
// class is an error. A class that its standard does not have in this size is a
// warning, because the order and the maker's figures are still valid.
func (r *reader) threadAndClass(f form.Fields, k *plan.Kind) {
	k.Thread = form.Opt(f, "thread", r.thread)
	class, ok := form.Given(f.Get("class"), "class", r.Text)
	if !ok {
		return
	}
	k.Class = class
	var err error
	if k.Thread != nil {
		_, err = strength.ParseClass(k.Class, *k.Thread)
	}
	severity := finding.Warning
	if elsewhere := classOfAnyThread(k.Class); elsewhere != nil {
		severity, err = finding.Error, cmp.Or(err, elsewhere)
	}
	if err != nil {
		r.Unreadable(f.Get("class"), severity, nil, err)
	}
}

// thread reads the name of a thread. A pitch that no standard has, but that a
// maker may have cut, is a warning, because the maker's figures are valid
// without it.
func (r *reader) thread(n *nodes.Node) *thread.Thread {
	text, ok := r.QuantityText(n, "thread")
	if !ok {
		return nil
	}
	t, err := thread.Parse(text)
	var unlisted *thread.UnlistedPitchError
	if errors.As(err, &unlisted) && unlisted.Thread != (thread.Thread{}) {
		r.Unreadable(n, finding.Warning, nil, err)
		return &unlisted.Thread
	}
	if err != nil {
		r.Unreadable(n, finding.Error, nil, err)
		return nil
	}
	return &t
}

// classOfAnyThread reports an error unless the class exists: every class is
// made for one of these two threads.
func classOfAnyThread(text string) error {
	var first error
	for _, name := range []string{"M10", "3/8-16 UNC"} {
		t, err := thread.Parse(name)
		if err == nil {
			_, err = strength.ParseClass(text, t)
		}
		if err == nil {
			return nil
		}
		first = cmp.Or(first, err)
	}
	return first
}

// material reads the material of a part.
func (r *reader) material(f form.Fields, key string, what any, ifUnknown finding.Severity) string {
	text := f.Text(key)
	if text == "" {
		return ""
	}
	if _, err := strength.ParseMaterial(text); err != nil {
		r.Unreadable(f.Get(key), ifUnknown, what, err)
	}
	return text
}
