package meaning

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// maxKinds is far more than any joint has.
const maxKinds = 100

// kindTable holds the fastener kinds by name.
type kindTable struct {
	names   []string
	at      map[string]*nodes.Node
	used    map[string]bool // by a fastener
	faulty  map[string]bool // something about it could not be read
	implied bool
	broken  bool // the list is unreadable; names in it cannot be judged
	unsure  bool // a fastener's kind is unknown; what it leaves unused cannot be judged
}

var kindKeys = []string{"thread", "class", "length", "thread length", "grip", "into", "engagement", "lubricant",
	"friction", "head", "nut", "washer", "hole", "reuse", "inspect"}

func (r *reader) readKinds(f form.Fields) {
	r.kinds = kindTable{at: map[string]*nodes.Node{}, used: map[string]bool{}, faulty: map[string]bool{}}
	r.kinds.broken = r.baseless || slices.Contains(f.Node.Lost, "kinds") // of the file that this one builds on
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
		if earlier := r.kinds.at[name]; earlier != nil { // a blank at an end makes no other name
			r.Fail(e.Key, nodes.KeyTwice, finding.Values{"key": problem.Quoted(name), "line": earlier.Line})
			continue
		}
		before := r.Count()
		r.addKind(e.Key, r.kind(name, e.Value))
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

func (r *reader) kind(name string, n *nodes.Node) plan.Kind {
	k := plan.Kind{Name: name}
	if n.Null || n.Shape == nodes.Map && len(n.Entries) == 0 { // main: with nothing behind it is a kind of which only the name is known
		return k
	}
	f, ok := r.Fields(n, finding.Failed(TheKind, finding.Values{"kind": name}), kindKeys...)
	if !ok {
		return k
	}
	r.threadAndClass(f, &k)
	k.Length = f.Length("length", unit.Sensible.BoltLength)
	k.Threaded, k.FullThread = r.threadLength(f, k.Length)
	k.Grip = f.Length("grip", unit.Sensible.Grip)
	k.Into = r.material(f, "into", "into", finding.Warning) // the order and the maker's figures hold without it
	k.Engagement = f.Length("engagement", unit.Sensible.Engagement)
	k.Lubricant = r.lubricant(f)
	k.HeadForm, k.HeadAcross = r.headOf(f)
	k.NutAcross = f.Length("nut", unit.Sensible.Head)
	if n := f.Get("head"); n != nil && k.Stud() { // its nut is what a wrench turns
		r.Fail(n, HeadOnStud, finding.Values{"kind": k.Name})
	}
	r.checkStud(f, k)
	k.Washer, k.WasherFace = r.washerOf(f)
	k.Hole = f.Length("hole", unit.Sensible.BoltHole)
	k.Friction = form.Opt(f, "friction", r.friction)
	k.Reuse = form.Word(f, "reuse", plan.ReuseOnce, plan.ReuseInspect, plan.ReuseYes)
	k.ReusedTo = r.reusedTo(f, k)
	return k
}

// checkStud warns of a kind that is called a stud and has no nut.
func (r *reader) checkStud(f form.Fields, k plan.Kind) {
	if !k.CalledStud() || f.Has("nut") {
		return
	}
	switch {
	case f.Has("head"):
		r.Warn(f.Node.KeyNode("head"), StudWithHead, finding.Values{"kind": k.Name})
	case k.Length > 0 && k.Grip > 0:
		r.Warn(f.Node.KeyNode("length"), StudWithoutNut, finding.Values{"kind": k.Name})
	}
}

// mostStretch is how much longer than new a bolt that goes back may be, as a
// share: steel necks well before that (common practice, no source).
const mostStretch = 0.1

// reusedTo reads the length past which a bolt that is measured does not go back.
func (r *reader) reusedTo(f form.Fields, k plan.Kind) unit.Length {
	n := f.Get("inspect")
	if n == nil {
		return 0
	}
	limits, ok := r.Fields(n, "inspect", "length")
	if !ok || limits.Need("length", "inspect: {length: 94.5 mm}") == nil {
		return 0
	}
	longest, most := limits.Length("length", unit.Sensible.BoltLength), k.Length*(1+mostStretch)
	switch {
	case longest == 0:
	case k.Reuse != plan.ReuseInspect:
		r.Fail(n, InspectUnasked, finding.Values{"kind": k.Name})
	case k.Stud():
		r.Fail(n, InspectOnStud, finding.Values{"kind": k.Name})
	case k.Length > 0 && (longest <= k.Length || longest > most):
		r.Fail(n, InspectOff, finding.Values{"limit": longest, "length": k.Length, "most": most})
	default:
		return longest
	}
	return 0
}

// headOf reads the form of the head, or the width across flats of a hexagon.
func (r *reader) headOf(f form.Fields) (head.Form, unit.Length) {
	n := f.Get("head")
	if n == nil {
		return "", 0
	}
	if strings.ContainsAny(n.Text, "0123456789") {
		return "", f.Length("head", unit.Sensible.Head)
	}
	if slices.Contains(head.Forms, head.Form(n.Text)) {
		return head.Form(n.Text), 0
	}
	words := form.Words(head.Forms)
	r.Fail(n, NoHead, finding.Values{"found": n.Called(), "meant": r.Meant(n.Text, words), "allowed": words})
	return "", 0
}

// threadLength reads how long the thread of a bolt is, or that it is full: up
// to the head.
func (r *reader) threadLength(f form.Fields, bolt unit.Length) (threaded unit.Length, full bool) {
	n := f.Get("thread length")
	if n != nil && n.Text == "full" {
		return 0, true
	}
	threaded = f.Length("thread length", unit.Sensible.BoltLength)
	if bolt > 0 && threaded > bolt {
		r.Fail(n, ThreadTooLong, finding.Values{"threaded": threaded, "length": bolt})
		return 0, false
	}
	return threaded, false
}

// washerOf reads the name of a standard washer, or the outer diameter of the
// bearing face.
func (r *reader) washerOf(f form.Fields) (head.Washer, unit.Length) {
	if n := f.Get("washer"); n != nil && slices.Contains(head.Washers, head.Washer(n.Text)) {
		return head.Washer(n.Text), 0
	}
	return "", f.Length("washer", unit.Sensible.BoltFace)
}

// friction reads one coefficient for both places, or one or a span for each.
func (r *reader) friction(n *nodes.Node) *screw.Friction {
	if n.Shape != nodes.Map {
		span, ok := r.coefficients(n, "friction")
		if !ok {
			return nil
		}
		return &screw.Friction{Thread: span, Head: span}
	}
	f, ok := r.Fields(n, "friction", "thread", "head")
	if !ok {
		return nil
	}
	const example = "{thread: [0.10, 0.14], head: 0.12}"
	inThread, underHead := f.Need("thread", example), f.Need("head", example)
	if inThread == nil || underHead == nil {
		return nil
	}
	thread, okThread := r.coefficients(inThread, finding.Term("friction in the thread"))
	head, okHead := r.coefficients(underHead, finding.Term("friction under the head"))
	if !okThread || !okHead {
		return nil
	}
	return &screw.Friction{Thread: thread, Head: head}
}

// coefficients reads 0.12 or [0.10, 0.14].
func (r *reader) coefficients(n *nodes.Node, what any) (screw.Range, bool) {
	items := r.Several(n)
	if len(items) == 0 || len(items) > 2 {
		r.Fail(n, NoCoefficients, finding.Values{"what": what, "found": n.Found()})
		return screw.Range{}, false
	}
	values := make([]float64, len(items))
	for i, item := range items {
		v, ok := r.Number(item, what, unit.Sensible.Friction)
		if !ok {
			return screw.Range{}, false
		}
		values[i] = v
	}
	span := screw.Between(values[0], values[len(values)-1])
	if span.Low > span.High {
		r.Fail(n, HighestFirst, finding.Values{"what": what, "low": span.Low, "high": span.High})
		return span, false
	}
	return span, true
}

// fastenerKind gives the kind of a fastener or a generator; empty where it is
// unknown, which is reported.
func (r *reader) fastenerKind(f form.Fields) string {
	kind, ok := r.kindOf(f)
	if !ok {
		r.kinds.unsure = true
	}
	return kind
}

// kindOf gives the kind that a map names, or the only one.
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

// usedKinds gives the kinds that fasteners have, in the order of the file.
func (r *reader) usedKinds() []string {
	return slices.DeleteFunc(slices.Clone(r.kinds.names), func(name string) bool { return !r.kinds.used[name] })
}
