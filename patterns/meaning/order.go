package meaning

import (
	"cmp"
	"slices"

	"drawdown/geometry/family"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence"
)

// readOrder reads tighten.order: a way for all fasteners, the maker's own
// sequence, or one entry for each group. Without it the groups stay empty, and
// the plan orders the kinds by size or by the numbers on the part.
func (r *reader) readOrder(f form.Fields) {
	n := f.Get("order")
	r.ordered = f.Has("order")
	if n == nil {
		return
	}
	const example = "[{kind: main, way: spiral}]"
	switch {
	case n.Shape == nodes.Scalar:
		if way, ok := form.Choice(r.Reader, n, "order", sequence.Ways...); ok {
			r.addGroup(n, sequence.Group{Way: way})
		}
	case n.Shape == nodes.Map:
		r.Fail(n, NoOrder, finding.Values{"example": example})
	case len(n.Items) == 0:
		r.Fail(n, form.EmptyList, finding.Values{"what": "order", "example": example})
	case n.Items[0].Shape == nodes.Map:
		r.readGroups(n)
	default:
		r.addGroup(n, sequence.Group{Way: sequence.List, List: r.makersList(n, nil)})
	}
}

func (r *reader) addGroup(at *nodes.Node, g sequence.Group) {
	if g.Way == sequence.Star {
		r.stars = append(r.stars, star{at, g.Kinds})
	}
	r.input.Groups = append(r.input.Groups, g)
	r.groups = append(r.groups, at)
}

func (r *reader) readGroups(n *nodes.Node) {
	seen := map[string]*nodes.Node{}
	complete := true
	for _, item := range n.Items {
		f, ok := r.Fields(item, finding.Term("a group of the order"), "kind", "way", "turn", "family", "order")
		if !ok {
			complete = false
			continue
		}
		kinds, ok := r.groupKinds(f, seen)
		complete = complete && ok
		if ok {
			r.addGroup(item, r.group(f, kinds))
		}
	}
	if !complete || r.kinds.broken {
		return
	}
	left := slices.DeleteFunc(r.usedKinds(), func(kind string) bool { return seen[kind] != nil })
	if len(left) > 0 {
		r.Fail(n, KindsLeftOut, finding.Values{"count": len(left), "kinds": left})
	}
}

// groupKinds returns the kinds of a group; no earlier group may have one of
// them.
func (r *reader) groupKinds(f form.Fields, seen map[string]*nodes.Node) ([]string, bool) {
	var kinds []string
	allOK := true
	take := func(kind string, ok bool, at *nodes.Node) {
		if ok && seen[kind] != nil {
			r.Fail(at, KindInGroups, finding.Values{"kind": kind, "first": seen[kind].Stood(at)})
		}
		if !ok || seen[kind] != nil {
			allOK = false
			return
		}
		seen[kind] = at
		kinds = append(kinds, kind)
	}
	n := f.Get("kind")
	switch {
	case !f.Has("kind"):
		kind, ok := r.kindOf(f)
		take(kind, ok, f.Node)
	case n == nil:
		return nil, false
	default:
		for _, item := range r.Several(n) {
			kind, ok := r.knownKind(item)
			take(kind, ok, item)
		}
	}
	if allOK && len(kinds) == 0 {
		r.Fail(n, NoKindInGroup, finding.Values{"allowed": r.kinds.names})
	}
	return kinds, allOK && len(kinds) > 0
}

func (r *reader) group(f form.Fields, kinds []string) sequence.Group {
	g := sequence.Group{Kinds: kinds, Way: cmp.Or(form.Word(f, "way", sequence.Ways...), sequence.Auto)}
	g.Turn, _ = r.turn(f)
	g.Family = form.Word(f, "family", family.All...)
	n := f.Get("order")
	if n == nil {
		if !f.Has("way") && !f.Has("order") {
			g.Way = r.wayOfCasting(f.Node, kinds)
		}
		if g.Way == sequence.Cast {
			r.idle(f, NumbersGiveOrder)
		}
		return g
	}
	if f.Has("way") {
		r.Fail(f.Node, OrderAndWay, nil)
	}
	r.idle(f, ListGivesOrder)
	if n.Shape != nodes.List || len(n.Items) == 0 {
		way := ""
		if n.Shape == nodes.Scalar && slices.Contains(sequence.Ways, sequence.Way(n.Text)) {
			way = "way: " + n.Text
		}
		r.Fail(n, NoGroupOrder, finding.Values{"found": n.Called(), "way": way})
		return g
	}
	g.Way, g.List = sequence.List, r.makersList(n, kinds)
	return g
}

// turn reads turn: left or right. It accepts no other words, so that all files
// read alike.
func (r *reader) turn(f form.Fields) (sequence.Turn, bool) {
	turns := []sequence.Turn{sequence.TurnLeft, sequence.TurnRight}
	n := f.Get("turn")
	switch {
	case n == nil:
		return sequence.TurnDefault, true
	case n.Shape == nodes.Scalar && slices.Contains(turns, sequence.Turn(n.Text)):
		return sequence.Turn(n.Text), true
	}
	r.Fail(n, NoTurn, finding.Values{"found": n.Called(), "allowed": form.Words(turns)})
	return "", false
}

// idle warns of a turn and a family that have no effect.
func (r *reader) idle(f form.Fields, why finding.Code) {
	for _, key := range []string{"turn", "family"} {
		if f.Has(key) {
			r.Warn(f.Node.KeyNode(key), KeyNoEffect, finding.Values{"key": key, "why": finding.Failed(why, nil)})
		}
	}
}
