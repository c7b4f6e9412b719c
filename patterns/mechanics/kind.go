package mechanics

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// KindKeys are the keys of a kind.
var KindKeys = []string{"thread", "class", "length", "thread length", "shank", "sections", "grip", "into", "engagement", "boss", "lubricant",
	"friction", "head", "nut", "washer", "hole", "reuse", "inspect"}

// Kind reads what the keys state about a kind of fastener. A lubricant may be
// one of the shop's own.
func Kind(from *form.Reader, name string, n *nodes.Node, own Lubricants) plan.Kind {
	r := reader{from}
	k := plan.Kind{Name: name}
	if n.Null || n.Shape == nodes.Map && len(n.Entries) == 0 { // main: without a value is a kind with only a name
		return k
	}
	f, ok := r.Fields(n, finding.Failed(TheKind, finding.Values{"kind": name}), KindKeys...)
	if !ok {
		return k
	}
	r.threadAndClass(f, &k)
	k.Length = f.Length("length", unit.Sensible.BoltLength)
	k.Threaded, k.FullThread = r.threadLength(f, k.Length)
	r.shank(f, &k)
	k.Grip = f.Length("grip", unit.Sensible.Grip)
	k.Into = r.material(f, "into", "into", finding.Warning) // the order and the maker's figures are valid without it
	k.Engagement = f.Length("engagement", unit.Sensible.Engagement)
	k.Boss = r.boss(f, k)
	k.Friction = form.Opt(f, "friction", r.friction)
	r.lubricant(f, &k, own)
	k.HeadForm, k.HeadAcross = r.headOf(f)
	k.NutAcross = f.Length("nut", unit.Sensible.Head)
	if n := f.Get("head"); n != nil && k.Stud() { // a wrench turns its nut
		r.Fail(n, HeadOnStud, finding.Values{"kind": k.Name})
	}
	r.checkStud(f, k)
	k.Washer, k.WasherFace = r.washerOf(f)
	k.Hole = f.Length("hole", unit.Sensible.BoltHole)
	k.Reuse = form.Word(f, "reuse", plan.ReuseOnce, plan.ReuseInspect, plan.ReuseYes)
	k.ReusedTo = r.reusedTo(f, k)
	return k
}

// checkStud warns about a kind that is called a stud but has no nut.
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

// mostStretch is how much longer than new a reused bolt may be, as a share:
// steel necks before that; makers give 1 to 2 % (common practice, no source).
const mostStretch = 0.05

// reusedTo reads the length above which a measured bolt must not be reused.
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

// threadLength reads the length of a bolt's thread, or that it is full: up to
// the head.
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

// friction reads one coefficient for both places, or one value or range for
// each.
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
