package meaning

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// maxKinds is far more than any joint uses.
const maxKinds = 100

// kindTable holds the fastener kinds by name.
type kindTable struct {
	names   []string
	at      map[string]*nodes.Node
	used    map[string]bool // by a fastener
	faulty  map[string]bool // some of it could not be read
	implied bool
	broken  bool // the list is unreadable, so names in it cannot be judged
	unsure  bool // a fastener's kind is unknown, so unused kinds cannot be judged
}

func (r *reader) readKinds(f form.Fields) {
	r.kinds = kindTable{at: map[string]*nodes.Node{}, used: map[string]bool{}, faulty: map[string]bool{}}
	r.kinds.broken = r.baseless || slices.Contains(f.Node.Lost, "kinds") // of the file that this one extends
	n := f.Get("kinds")
	switch {
	case n == nil:
		r.kinds.broken = f.Has("kinds") || f.Mistyped("kinds")
		r.kinds.implied = true
		r.addKind(f.Node, plan.Kind{Name: form.ImpliedKind, Implied: true})
	case n.Comment != "":
		r.kinds.broken = true
		r.Fail(n, nodes.HashInText, finding.Values{"line": n.KeyInQuotes()})
	case n.Shape != nodes.Map || len(n.Entries) == 0:
		r.kinds.broken = true
		r.Fail(n, NoKinds, finding.Values{"found": emptyOr(n), "example": "kinds: {main: {thread: M10}}"})
	case len(n.Entries) > maxKinds:
		r.kinds.broken = true
		r.Fail(n, TooManyKinds, finding.Values{"count": len(n.Entries), "most": maxKinds})
	default:
		r.kindsOf(n)
	}
}

func (r *reader) kindsOf(n *nodes.Node) {
	for _, e := range n.Entries {
		name, ok := r.TextUpTo(e.Key, finding.Term("a kind's name"), 40)
		if !ok {
			r.kinds.broken = true
			continue
		}
		if earlier := r.kinds.at[name]; earlier != nil { // a space at either end makes no other name
			r.Fail(e.Key, nodes.KeyTwice, finding.Values{"key": problem.Quoted(name), "line": earlier.Line})
			continue
		}
		before := r.Count()
		r.addKind(e.Key, mechanics.Kind(r.Reader, name, e.Value, r.lubricants))
		r.kinds.faulty[name] = r.ErrorsSince(before)
	}
}

func emptyOr(n *nodes.Node) any {
	if n.Shape == nodes.Map && len(n.Entries) == 0 {
		return finding.Term("an empty map")
	}
	return n.Called()
}

func (r *reader) addKind(at *nodes.Node, k plan.Kind) {
	r.input.Kinds = append(r.input.Kinds, k)
	r.kinds.names = append(r.kinds.names, k.Name)
	r.kinds.at[k.Name] = at
}

// fastenerKind returns the kind of a fastener or a generator. It is empty for
// an unknown kind, which is reported.
func (r *reader) fastenerKind(f form.Fields) string {
	kind, ok := r.kindOf(f)
	if !ok {
		r.kinds.unsure = true
	}
	return kind
}

// kindOf returns the kind that a map names, or the only kind.
func (r *reader) kindOf(f form.Fields) (string, bool) {
	if n := f.Get("kind"); n != nil {
		return r.knownKind(n)
	}
	switch {
	case f.Has("kind") || r.kinds.broken && len(r.kinds.names) == 0:
	case len(r.kinds.names) == 1 || r.kinds.broken:
		return r.kinds.names[0], !r.kinds.broken
	case !f.Mistyped("kind"):
		r.Fail(f.Node, KindMissing, finding.Values{"what": f.What, "allowed": r.kinds.names})
	}
	return "", false
}

// knownKind checks a kind's name.
func (r *reader) knownKind(n *nodes.Node) (string, bool) {
	if r.kinds.broken {
		return n.Text, false
	}
	if r.kinds.implied {
		r.Fail(n, NoKindsHere, finding.Values{"found": n.Called(), "example": "{" + kindExample(n) + ": {thread: M10}}"})
		return "", false
	}
	if n.Shape != nodes.Scalar || r.kinds.at[n.Text] == nil {
		r.Fail(n, NoSuchKind, finding.Values{"found": n.Called(), "meant": r.Meant(n.Text, r.kinds.names), "allowed": r.kinds.names})
		return "", false
	}
	return n.Text, true
}

func kindExample(n *nodes.Node) string {
	if n.Shape == nodes.Scalar && len(n.Text) > 0 && len(n.Text) <= 20 {
		return n.Text
	}
	return "main"
}

// usedKinds returns the kinds of the fasteners, in the order of the file.
func (r *reader) usedKinds() []string {
	return slices.DeleteFunc(slices.Clone(r.kinds.names), func(name string) bool { return !r.kinds.used[name] })
}
