package patterns

import (
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
)

// impliedKind is the only kind of a file without kinds.
const impliedKind = "bolt"

// maxKinds is far more than any joint has.
const maxKinds = 100

// kindTable holds the fastener kinds by name.
type kindTable struct {
	names   []string
	at      map[string]*node
	used    map[string]bool // by a fastener
	faulty  map[string]bool // something about it could not be read
	implied bool
	broken  bool // the list is unreadable; names in it cannot be judged
	unsure  bool // a fastener's kind is unknown; what it leaves unused cannot be judged
}

var kindKeys = []string{"thread", "class", "length", "grip", "into", "engagement", "lubricant",
	"friction", "head", "nut", "washer", "hole", "reuse"}

func (r *reader) readKinds(f fields) {
	r.kinds = kindTable{at: map[string]*node{}, used: map[string]bool{}, faulty: map[string]bool{}}
	n := f.get("kinds")
	if n == nil {
		r.kinds.broken = f.has("kinds") || f.mistyped("kinds")
		r.kinds.implied = true
		r.addKind(f.node, plan.Kind{Name: impliedKind, Implied: true})
		return
	}
	if n.shape != mapShape || len(n.entries) == 0 {
		r.kinds.broken = true
		r.fail(n, "", "kinds is a map of fastener kinds, for example kinds: {main: {thread: M10}}, not %s", emptyOr(n))
		return
	}
	if len(n.entries) > maxKinds {
		r.kinds.broken = true
		r.fail(n, "", "the file has %d kinds; at most %d can be told apart", len(n.entries), maxKinds)
		return
	}
	for _, e := range n.entries {
		name, ok := r.textUpTo(e.key, "a kind's name", 40)
		if !ok {
			r.kinds.broken = true
			continue
		}
		before := len(r.found)
		r.addKind(e.key, r.kind(name, e.value))
		r.kinds.faulty[name] = r.errorsSince(before)
	}
}

func emptyOr(n *node) string {
	if n.shape == mapShape && len(n.entries) == 0 {
		return "an empty map"
	}
	return n.called()
}

func (r *reader) addKind(at *node, k plan.Kind) {
	r.input.Kinds = append(r.input.Kinds, k)
	r.kinds.names = append(r.kinds.names, k.Name)
	r.kinds.at[k.Name] = at
}

func (r *reader) kind(name string, n *node) plan.Kind {
	k := plan.Kind{Name: name}
	if n.null { // main: with nothing behind it is a kind of which only the name is known
		return k
	}
	f, ok := r.fields(n, "the kind "+name, kindKeys...)
	if !ok {
		return k
	}
	r.threadAndClass(f, &k)
	k.Length = r.kindSize(f, "length")
	k.Grip = r.kindSize(f, "grip")
	k.Into = r.into(f)
	k.Engagement = r.kindSize(f, "engagement")
	k.Lubricant = r.lubricant(f)
	k.HeadForm, k.HeadAcross = r.headOf(f)
	k.NutAcross = r.kindSize(f, "nut")
	r.checkStud(f, k)
	k.WasherFace = r.kindSize(f, "washer")
	k.Hole = r.kindSize(f, "hole")
	if at := f.get("friction"); at != nil {
		k.Friction = r.friction(at)
	}
	if at := f.get("reuse"); at != nil {
		word, _ := r.choice(at, "reuse", string(plan.ReuseOnce), string(plan.ReuseInspect), string(plan.ReuseYes))
		k.Reuse = plan.Reuse(word)
	}
	return k
}

// headOf reads the form of the head, or the width across flats of a hexagon.
func (r *reader) headOf(f fields) (form head.Form, across unit.Length) {
	n := f.get("head")
	if n == nil {
		return "", 0
	}
	if strings.ContainsAny(n.text, "0123456789") {
		return "", r.kindSize(f, "head")
	}
	var words []string
	for _, form := range head.Forms {
		words = append(words, string(form))
	}
	if containsText(words, n.text) {
		return head.Form(n.text), 0
	}
	r.fail(n, alternatives(words)+", or the width across flats, such as 16 mm", "head is %s%s", n.called(), r.hint(n.text, words))
	return "", 0
}

// checkStud refuses a head on a stud: its nut is what a wrench turns.
func (r *reader) checkStud(f fields, k plan.Kind) {
	if n := f.get("head"); n != nil && k.Stud() {
		r.fail(n, "head without nut for a bolt; nut without head for a stud; head and nut without into for a bolt that goes through",
			"the kind %s has a head, a nut and a tapped hole", k.Name)
	}
}

func (r *reader) kindSize(f fields, key string) unit.Length {
	if n := f.get(key); n != nil {
		v, _ := r.sizeMm(n, key)
		return unit.Length(v)
	}
	return 0
}

// friction reads one coefficient for both places, or one or a span for each.
func (r *reader) friction(n *node) *plan.Friction {
	if n.shape != mapShape {
		span, ok := r.coefficients(n, "friction")
		if !ok {
			return nil
		}
		return &plan.Friction{Thread: span, Head: span}
	}
	f, _ := r.fields(n, "friction", "thread", "head")
	const example = "{thread: [0.10, 0.14], head: 0.12}"
	inThread, underHead := f.need("thread", example), f.need("head", example)
	if inThread == nil || underHead == nil {
		return nil
	}
	thread, okThread := r.coefficients(inThread, "friction in the thread")
	head, okHead := r.coefficients(underHead, "friction under the head")
	if !okThread || !okHead {
		return nil
	}
	return &plan.Friction{Thread: thread, Head: head}
}

// coefficients reads 0.12 or [0.10, 0.14].
func (r *reader) coefficients(n *node, what string) (plan.Range, bool) {
	items := r.list(n)
	if len(items) == 0 || len(items) > 2 {
		r.fail(n, "", "%s is one coefficient, 0.12, or the lowest and the highest, [0.10, 0.14], not %s", what, n.found())
		return plan.Range{}, false
	}
	values := make([]float64, len(items))
	for i, item := range items {
		v, ok := r.number(item, what)
		if ok && (v <= 0 || v > 1) {
			r.fail(item, "more than 0, up to 1", "%s: %s is no coefficient of friction", what, quoted(item.text))
			ok = false
		}
		if !ok {
			return plan.Range{}, false
		}
		values[i] = v
	}
	span := plan.Range{Low: values[0], High: values[len(values)-1]}
	if span.Low > span.High {
		r.fail(n, "", "%s: the lowest comes first, %g is above %g", what, span.Low, span.High)
		return span, false
	}
	return span, true
}

// fastenerKind gives the kind of a fastener or a generator; empty where it is
// unknown, which is reported.
func (r *reader) fastenerKind(f fields) string {
	kind, ok := r.kindOf(f)
	if !ok {
		r.kinds.unsure = true
	}
	return kind
}

// kindOf gives the kind that a map names, or the only one.
func (r *reader) kindOf(f fields) (string, bool) {
	if !f.has("kind") {
		if len(r.kinds.names) == 1 || r.kinds.broken {
			return firstOr(r.kinds.names), !r.kinds.broken
		}
		if f.mistyped("kind") {
			return "", false
		}
		r.fail(f.node, alternatives(r.kinds.names), "%s needs a kind, since the file has several", f.what)
		return "", false
	}
	n := f.get("kind")
	if n == nil {
		return "", false
	}
	return r.knownKind(n)
}

func firstOr(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return names[0]
}

// knownKind checks a kind's name.
func (r *reader) knownKind(n *node) (string, bool) {
	if r.kinds.broken {
		return n.text, false
	}
	if r.kinds.implied {
		r.fail(n, "", "kind: %s, but the file has no kinds; add kinds: {%s: {thread: M10}} or leave kind out",
			n.called(), kindExample(n))
		return "", false
	}
	if n.shape != scalarShape || r.kinds.at[n.text] == nil {
		r.fail(n, alternatives(r.kinds.names), "there is no kind %s%s", n.called(), r.hint(n.text, r.kinds.names))
		return "", false
	}
	return n.text, true
}

func kindExample(n *node) string {
	if n.shape == scalarShape && len(n.text) > 0 && len(n.text) <= 20 {
		return n.text
	}
	return "main"
}

// usedKinds gives the kinds that fasteners have, in the order of the file.
func (r *reader) usedKinds() []string {
	var used []string
	for _, name := range r.kinds.names {
		if r.kinds.used[name] {
			used = append(used, name)
		}
	}
	return used
}
