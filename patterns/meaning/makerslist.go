package meaning

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// makersList reads the maker's own sequence, which names every fastener of the
// kinds once. No kinds means all fasteners. It returns the ids.
// A manual prints the numbers that are cast on the part. The list may use these
// instead of the ids, if none of them is the id of a fastener and every
// fastener in question has its own cast number. A list that mixes the two is an
// error, since 3 could then mean either.
func (r *reader) makersList(n *nodes.Node, kinds []string) []string {
	members := r.of(kinds)
	n = r.currentList(n)
	index, byCast, ok := r.namedBy(n, kinds, members)
	if !ok {
		return nil
	}
	var list []string
	var unknown []*nodes.Node
	first := map[string]*nodes.Node{}
	for _, item := range n.Items {
		f, known := r.fasteners.unplaced[item.Text]
		if i, placed := index[item.Text]; placed {
			f, known = r.input.Joint.Fasteners[i], true
		}
		if !known {
			unknown = append(unknown, item)
			continue
		}
		if earlier := first[f.ID]; earlier != nil {
			r.Fail(item, TwiceInOrder, finding.Values{"name": calledIn(f, byCast), "first": earlier.Stood(item)})
			continue
		}
		first[f.ID] = item
		if kinds != nil && !slices.Contains(kinds, f.Kind) {
			r.Fail(item, OtherKind, finding.Values{"id": f.ID, "kind": f.Kind, "kinds": kinds})
			continue
		}
		list = append(list, f.ID)
	}
	if r.fasteners.broken {
		return list
	}
	var left []string
	for _, f := range append(members, r.unplacedOf(kinds)...) {
		if first[f.ID] == nil {
			left = append(left, calledIn(f, byCast))
		}
	}
	r.misnamed(n, unknown, left, byCast)
	return list
}

// unplacedOf returns the fasteners of the kinds whose places could not be read.
func (r *reader) unplacedOf(kinds []string) []geometry.Fastener {
	var of []geometry.Fastener
	for _, id := range slices.Sorted(maps.Keys(r.fasteners.unplaced)) {
		if f := r.fasteners.unplaced[id]; kinds == nil || slices.Contains(kinds, f.Kind) {
			of = append(of, f)
		}
	}
	return of
}

// calledIn returns the name of a fastener in a list, with the id if that
// differs.
func calledIn(f geometry.Fastener, byCast bool) string {
	if byCast {
		return fmt.Sprintf("%d (%s)", f.Cast, f.ID)
	}
	return f.ID
}

// namedBy returns which names the list uses: the ids, or the cast numbers.
func (r *reader) namedBy(n *nodes.Node, kinds []string, members []geometry.Fastener) (index map[string]int, byCast, ok bool) {
	casts := map[string]int{}
	for _, f := range members {
		if f.Cast != 0 {
			casts[strconv.Itoa(f.Cast)] = r.fasteners.index[f.ID]
		}
	}
	var anID, aCast *nodes.Node
	for _, item := range n.Items {
		if _, isID := r.fasteners.index[item.Text]; isID {
			anID = item
		} else if _, isCast := casts[item.Text]; isCast {
			aCast = item
		}
	}
	switch {
	case aCast == nil || !r.fasteners.placed():
		return r.fasteners.index, false, true
	case anID != nil:
		r.Fail(aCast, IDsAndCasts, finding.Values{"id": anID.Text, "cast": aCast.Text})
		return nil, false, false
	}
	return casts, true, r.checkCast(n, kinds)
}

// misnamed reports names that no fastener has, and fasteners that the order
// leaves out. One slip causes both, yet is one problem.
func (r *reader) misnamed(n *nodes.Node, unknown []*nodes.Node, left []string, byCast bool) {
	if r.namesNone(n, unknown, left) {
		return
	}
	oneSlipEach := len(left) > 0 && len(left) <= len(unknown)
	for _, item := range unknown {
		if item.Shape != nodes.Scalar || item.Null {
			r.Fail(item, form.NoID, finding.Values{"what": finding.Term("an id"), "found": item.Called()})
			continue
		}
		code, meant, lacks := NoSuchFastener, cmp.Or(r.names.Later(item.Text), r.Meant(item.Text, left)), []string(nil)
		if byCast {
			code = NoSuchCast
		}
		switch {
		case meant == "" && oneSlipEach:
			lacks = left
		case meant == "":
			meant = r.Meant(item.Text, r.ids())
		}
		r.Fail(item, code, finding.Values{"name": problem.Quoted(item.Text), "meant": meant, "left": lacks})
	}
	if len(left) > 0 && !oneSlipEach {
		r.Fail(n, OrderLeavesOut, finding.Values{"names": left})
	}
}

// namesNone reports a list that names no known fastener: it uses other numbers
// than the file.
func (r *reader) namesNone(n *nodes.Node, unknown []*nodes.Node, left []string) bool {
	other := func(item *nodes.Node) bool {
		return item.Shape == nodes.Scalar && !item.Null && r.Meant(item.Text, r.ids()) == ""
	}
	if len(unknown) < 2 || len(unknown) < len(n.Items) || len(left) == 0 || !slices.ContainsFunc(unknown, other) {
		return false
	}
	written := geometry.Mapped(unknown, func(item *nodes.Node) string { return item.Text })
	r.Fail(n, OrderNamesNone, finding.Values{"written": written, "ids": left})
	return true
}
