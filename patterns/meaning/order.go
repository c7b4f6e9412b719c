package meaning

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence"
)

// turns are the words for a sense of rotation.
var turns = []string{string(sequence.TurnLeft), string(sequence.TurnRight)}

func wayNames(ways []sequence.Way) []string {
	names := make([]string, len(ways))
	for i, w := range ways {
		names[i] = string(w)
	}
	return names
}

// readOrder reads tighten.order: a way for all fasteners, the maker's own
// sequence, or one entry for each group. Without it the groups stay empty, and
// the plan orders the kinds by their size.
func (r *reader) readOrder(f form.Fields) {
	n := f.Get("order")
	if n == nil {
		return
	}
	const example = "[{kind: main, way: spiral}]"
	switch {
	case n.Shape == nodes.Scalar:
		if way, ok := r.Choice(n, "order", wayNames(sequence.Ways)...); ok {
			r.addGroup(n, sequence.Group{Way: sequence.Way(way)})
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
		f, ok := r.Fields(item, finding.Term("a group of the order"), "kind", "way", "turn", "order")
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
	var left []string
	for _, kind := range r.usedKinds() {
		if seen[kind] == nil {
			left = append(left, kind)
		}
	}
	if len(left) > 0 {
		r.Fail(n, KindsLeftOut, finding.Values{"count": len(left), "kinds": left})
	}
}

// groupKinds gives the kinds of a group, none of which an earlier group takes.
func (r *reader) groupKinds(f form.Fields, seen map[string]*nodes.Node) ([]string, bool) {
	if !f.Has("kind") {
		kind, ok := r.kindOf(f)
		if ok && seen[kind] != nil {
			r.Fail(f.Node, KindInGroups, finding.Values{"kind": kind, "first": seen[kind].Stood(f.Node)})
			ok = false
		}
		seen[kind] = f.Node
		return []string{kind}, ok
	}
	n := f.Get("kind")
	if n == nil {
		return nil, false
	}
	var kinds []string
	allOK := true
	for _, item := range r.Several(n) {
		kind, ok := r.knownKind(item)
		if ok && seen[kind] != nil {
			r.Fail(item, KindInGroups, finding.Values{"kind": kind, "first": seen[kind].Stood(item)})
			ok = false
		}
		if !ok {
			allOK = false
			continue
		}
		seen[kind] = item
		kinds = append(kinds, kind)
	}
	if allOK && len(kinds) == 0 {
		r.Fail(n, NoKindInGroup, finding.Values{"allowed": r.kinds.names})
	}
	return kinds, allOK && len(kinds) > 0
}

func (r *reader) group(f form.Fields, kinds []string) sequence.Group {
	g := sequence.Group{Kinds: kinds, Way: sequence.Auto}
	if n := f.Get("way"); n != nil {
		if way, ok := r.Choice(n, "way", wayNames(sequence.Ways)...); ok {
			g.Way = sequence.Way(way)
		}
	}
	g.Turn = r.turn(f)
	n := f.Get("order")
	if n == nil {
		if g.Way == sequence.Cast {
			r.idleTurn(f, NumbersGiveOrder)
		}
		return g
	}
	if f.Has("way") {
		r.Fail(f.Node, OrderAndWay, nil)
	}
	r.idleTurn(f, ListGivesOrder)
	if n.Shape != nodes.List || len(n.Items) == 0 {
		r.Fail(n, NoGroupOrder, finding.Values{"found": n.Called()})
		return g
	}
	g.Way, g.List = sequence.List, r.makersList(n, kinds)
	return g
}

// turn reads turn: left or right.
func (r *reader) turn(f form.Fields) sequence.Turn {
	n := f.Get("turn")
	if n == nil {
		return sequence.TurnDefault
	}
	word, _ := r.turnWord(n)
	return sequence.Turn(word)
}

// turnWord reads left or right. Other words for them are not taken, so that all
// files say it alike.
func (r *reader) turnWord(n *nodes.Node) (string, bool) {
	if n.Shape == nodes.Scalar && slices.Contains(turns, n.Text) {
		return n.Text, true
	}
	r.Fail(n, NoTurn, finding.Values{"found": n.Called(), "allowed": turns})
	return "", false
}

// idleTurn warns of a turn that changes nothing.
func (r *reader) idleTurn(f form.Fields, why finding.Code) {
	if f.Has("turn") {
		r.Warn(f.Node.KeyNode("turn"), TurnIdle, finding.Values{"why": finding.Failed(why, nil)})
	}
}
