package patterns

import (
	"fmt"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
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
func (r *reader) readOrder(f fields) {
	n := f.get("order")
	if n == nil {
		return
	}
	const example = "[{kind: main, way: spiral}]"
	switch {
	case n.shape == scalarShape:
		if way, ok := r.choice(n, "order", wayNames(sequence.Ways)...); ok {
			r.addGroup(n, sequence.Group{Way: sequence.Way(way)})
		}
	case n.shape == mapShape:
		r.fail(n, "", "order is a way such as spiral, a list of ids, or a list of groups such as %s", example)
	case len(n.items) == 0:
		r.fail(n, "", "order is an empty list; write for example %s", example)
	case n.items[0].shape == mapShape:
		r.groups(n)
	default:
		r.addGroup(n, sequence.Group{Way: sequence.List, List: r.makersList(n, nil)})
	}
}

// addGroup checks the numbers on the part where the group goes by them.
func (r *reader) addGroup(at *node, g sequence.Group) {
	switch g.Way {
	case sequence.Cast:
		r.checkCast(at, g.Kinds)
	case sequence.Star:
		r.stars = append(r.stars, star{at, g.Kinds})
	}
	r.input.Groups = append(r.input.Groups, g)
}

func (r *reader) groups(n *node) {
	seen := map[string]*node{}
	complete := true
	var from []*node
	for _, item := range n.items {
		f, ok := r.fields(item, "a group of the order", "kind", "way", "turn", "family", "order")
		if !ok {
			complete = false
			continue
		}
		kinds, ok := r.groupKinds(f, seen)
		complete = complete && ok
		if ok {
			r.addGroup(item, r.group(f, kinds))
			from = append(from, item)
		}
	}
	r.checkLargestFirst(from)
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
		r.fail(n, "", "the order leaves out the %s %s", kindOrKinds(left), some(left))
	}
}

func kindOrKinds(names []string) string {
	if len(names) == 1 {
		return "kind"
	}
	return "kinds"
}

// groupKinds gives the kinds of a group, none of which an earlier group takes.
func (r *reader) groupKinds(f fields, seen map[string]*node) ([]string, bool) {
	if !f.has("kind") {
		kind, ok := r.kindOf(f)
		if ok && seen[kind] != nil {
			r.fail(f.node, "", "the kind %s is in two groups; it stood first %s", kind, seen[kind].placeSeenFrom(f.node))
			ok = false
		}
		seen[kind] = f.node
		return []string{kind}, ok
	}
	n := f.get("kind")
	if n == nil {
		return nil, false
	}
	var kinds []string
	allOK := true
	for _, item := range r.list(n) {
		kind, ok := r.knownKind(item)
		if ok && seen[kind] != nil {
			r.fail(item, "", "the kind %s is in two groups; it stood first %s", kind, seen[kind].placeSeenFrom(item))
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
		r.fail(n, alternatives(r.kinds.names), "the group names no kind")
	}
	return kinds, allOK && len(kinds) > 0
}

func (r *reader) group(f fields, kinds []string) sequence.Group {
	g := sequence.Group{Kinds: kinds, Way: sequence.Auto}
	if n := f.get("way"); n != nil {
		if way, ok := r.choice(n, "way", wayNames(sequence.Ways)...); ok {
			g.Way = sequence.Way(way)
		}
	}
	g.Turn, g.Family = r.turn(f), r.family(f)
	n := f.get("order")
	if n == nil {
		if g.Way == sequence.Cast {
			r.idleTurn(f, "the numbers on the part give the order")
			r.idleFamily(f, "the numbers on the part give the order")
		}
		return g
	}
	if f.has("way") {
		r.fail(f.node, "", "the group has its own order; leave way out")
	}
	r.idleTurn(f, "the list gives the order")
	r.idleFamily(f, "the list gives the order")
	if n.shape != listShape || len(n.items) == 0 {
		r.fail(n, "", "the order of a group is a list of its ids, for example [M3, M8], not %s", n.called())
		return g
	}
	g.Way, g.List = sequence.List, r.makersList(n, kinds)
	return g
}

// turn reads turn: left or right.
func (r *reader) turn(f fields) sequence.Turn {
	n := f.get("turn")
	if n == nil {
		return sequence.TurnDefault
	}
	word, _ := r.turnWord(n)
	return sequence.Turn(word)
}

// turnWord reads left or right. Other words for them are not taken, so that all
// files say it alike.
func (r *reader) turnWord(n *node) (string, bool) {
	if n.shape == scalarShape && containsText(turns, n.text) {
		return n.text, true
	}
	r.fail(n, alternatives(turns), "turn is %s; right is clockwise and left is anticlockwise in the view", n.called())
	return "", false
}

// idleTurn warns of a turn that changes nothing.
func (r *reader) idleTurn(f fields, why string) {
	if f.has("turn") {
		r.warn(f.node.keyNode("turn"), "turn has no effect here: %s", why)
	}
}

// family reads what the layout of a group is to be seen as.
func (r *reader) family(f fields) family.Family {
	n := f.get("family")
	if n == nil {
		return ""
	}
	names := make([]string, len(family.All))
	for k, name := range family.All {
		names[k] = string(name)
	}
	name, _ := r.choice(n, "family", names...)
	return family.Family(name)
}

// idleFamily warns of a family that changes nothing.
func (r *reader) idleFamily(f fields, why string) {
	if f.has("family") {
		r.warn(f.node.keyNode("family"), "family has no effect here: %s", why)
	}
}

// of gives the fasteners of the kinds; all of them where there are no kinds.
func (r *reader) of(kinds []string) []geometry.Fastener {
	if len(kinds) == 0 {
		return r.input.Joint.Fasteners
	}
	var of []geometry.Fastener
	for _, f := range r.input.Joint.Fasteners {
		if slices.Contains(kinds, f.Kind) {
			of = append(of, f)
		}
	}
	return of
}

// checkCast checks that every fastener of the group has its own number.
func (r *reader) checkCast(at *node, kinds []string) bool {
	if r.fasteners.broken {
		return true
	}
	var without, twice []string
	first := map[int]string{}
	for _, f := range r.of(kinds) {
		switch earlier, taken := first[f.Cast]; {
		case f.Cast == 0:
			without = append(without, f.ID)
		case taken:
			twice = append(twice, fmt.Sprintf("%s and %s both %d", earlier, f.ID, f.Cast))
		default:
			first[f.Cast] = f.ID
		}
	}
	if len(without) > 0 {
		r.fail(at, "", "order by cast numbers, but these have no cast number: %s", some(without))
	}
	if len(twice) > 0 {
		r.fail(at, "", "order by cast numbers, but some are there twice: %s", some(twice))
	}
	return len(without)+len(twice) == 0
}
