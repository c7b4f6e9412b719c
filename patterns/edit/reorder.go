package edit

import "slices"

// move gives an item of a list another place.
func (e *editor) move(path Path, from, to int) error {
	list := e.content.At(path)
	if list == nil || list.Kind != List || from < 0 || to < 0 || from >= len(list.Of) || to >= len(list.Of) {
		return noPart(path)
	}
	if from == to {
		return nil
	}
	want := e.content.copied()
	at := want.At(path)
	moved := at.Of[from]
	at.Of = slices.Insert(slices.Delete(at.Of, from, from+1), to, moved)
	n, err := e.holder(path)
	if err != nil {
		return err
	}
	if !n.flow && e.startsAllLines(n) {
		return e.put(path, want, e.movedLines(n, from, to)...)
	}
	return e.put(path, want, e.exchanged(n, from, to)...)
}

func (e *editor) startsAllLines(n *node) bool {
	for i := range n.of {
		if !e.opensLine(e.dash(n, i)) {
			return false
		}
	}
	return true
}

// exchanged moves the texts of items; what is between them stays.
func (e *editor) exchanged(n *node, from, to int) (all []Splice) {
	order := make([]*node, len(n.of))
	copy(order, n.of)
	order = slices.Insert(slices.Delete(order, from, from+1), to, n.of[from])
	for i, old := range n.of {
		if order[i] != old {
			all = append(all, e.splice(old.start, old.end, string(e.bytes[order[i].start:order[i].end])))
		}
	}
	return all
}

// movedLines moves the lines of an item, with the comments above it.
func (e *editor) movedLines(n *node, from, to int) []Splice {
	start, end := e.withComments(n, from), e.lineEnd(n.of[from].end)
	lines := string(e.bytes[start:end])
	into := e.lineEnd(n.of[to].end)
	in := e.splice(into, into, e.newline()+lines)
	if to < from {
		into = e.withComments(n, to)
		in = e.splice(into, into, lines+e.newline())
	}
	if next := e.nextLine(end); next > end {
		return []Splice{e.splice(start, next, ""), in}
	}
	before := start - e.breakBefore(start) // the last line has no break
	return []Splice{e.splice(before, end, ""), in}
}

// withComments returns the start of an item's first line, or of the comments
// directly above it that are indented like it.
func (e *editor) withComments(n *node, i int) int {
	start := e.lineStart(e.dash(n, i))
	for start > e.lines[0] {
		line := e.lineStart(start - 1)
		sign := e.skipSpace(line)
		if !e.has(sign, '#') || sign >= start || e.column(sign) != n.column {
			break
		}
		start = line
	}
	return start
}
