package edit

import (
	"bytes"
	"slices"
	"strings"
)

// insert adds items to a list, before the one with a number or behind the last.
func (e *editor) insert(path Path, i int, values ...Value) error {
	list := e.content.At(path)
	switch {
	case list == nil || list.Kind == Nothing:
		return e.set(path, Value{Kind: List, Of: values})
	case list.Kind != List || i < 0 || i > len(list.Of):
		return noPart(path.Item(i))
	}
	n, err := e.holder(path)
	if err != nil {
		return err
	}
	want := e.content.copied()
	at := want.At(path)
	at.Of = slices.Insert(at.Of, i, values...)
	var items []string
	for _, v := range values {
		items = append(items, written(v, n.flow))
	}
	where, text := e.newLines(n, i, items)
	if n.flow {
		where, text = inBrackets(n, i, strings.Join(items, ", "))
	}
	return e.put(path, want, e.splice(where, where, text))
}

func inBrackets(n *node, i int, items string) (at int, text string) {
	switch {
	case len(n.of) == 0:
		return n.start + 1, items
	case i == len(n.of):
		return n.of[i-1].end, ", " + items
	}
	return n.of[i].start, items + ", "
}

// newLines returns where new lines of a block go, and their text.
func (e *editor) newLines(n *node, i int, items []string) (at int, text string) {
	if n.flow {
		return 0, ""
	}
	if i > 0 {
		for _, item := range items {
			text += e.newline() + indent(n) + "- " + item
		}
		return e.lineEnd(n.of[i-1].end), text
	}
	for _, item := range items {
		text += "- " + item + e.newline() + indent(n)
	}
	return e.dash(n, 0), text
}

// dash returns the offset of the dash of an item in a block.
func (e *editor) dash(n *node, i int) int {
	at := n.of[i].start
	for line := e.lineStart(at); ; line = e.lineStart(line - 1) {
		at = line
		for column := 1; column < n.column && at < e.lineEnd(line); column++ {
			at++
		}
		if e.has(at, '-') && at < max(n.of[i].start, 1) || line <= n.start {
			return at
		}
	}
}

// drop removes a key or an item. What then holds nothing goes, too.
func (e *editor) drop(path Path) error {
	if len(path) == 0 || e.content.At(path) == nil {
		return noPart(path)
	}
	above, i, err := e.above(path)
	switch {
	case err != nil:
		return err
	case len(above.of) == 1:
		if len(path) == 1 {
			return entangled(path)
		}
		return e.drop(path[:len(path)-1])
	}
	want := e.content.copied()
	at := want.At(path[:len(path)-1])
	at.Of = slices.Delete(at.Of, i, i+1)
	if at.Kind == Map {
		at.Keys = slices.Delete(at.Keys, i, i+1)
	}
	if above.flow {
		return e.put(path, want, e.outOfBrackets(above, i))
	}
	from, to, whole := e.linesOf(above, i)
	if !whole {
		return entangled(path)
	}
	return e.put(path, want, e.splice(from, to, ""))
}

// begin returns the offset of an entry: of its key or its dash.
func (e *editor) begin(n *node, i int) int {
	switch {
	case n.kind == Map:
		return n.keys[i].start
	case n.flow:
		return n.of[i].start
	}
	return e.dash(n, i)
}

func finish(n *node, i int) int {
	if n.kind == Map {
		return max(n.keys[i].end, n.of[i].end)
	}
	return n.of[i].end
}

// outOfBrackets removes an entry and the comma beside it; comments stay.
func (e *editor) outOfBrackets(n *node, i int) Splice {
	from, to := e.begin(n, i), finish(n, i)
	if i+1 < len(n.of) {
		if comma := e.skipBlank(to); e.has(comma, ',') && e.blank(to, comma) {
			to = comma + 1
			for e.has(to, ' ') {
				to++
			}
		}
		return e.splice(from, to, "")
	}
	if comma := e.skipSpace(finish(n, i-1)); e.has(comma, ',') && e.blank(comma+1, from) {
		from = finish(n, i-1)
	}
	return e.splice(from, to, "")
}

// linesOf returns the lines of an entry of a block, with the break at their end;
// they are not whole if something else begins in the first of them.
func (e *editor) linesOf(n *node, i int) (from, to int, whole bool) {
	begin := e.begin(n, i)
	from, to = e.lineStart(begin), e.nextLine(finish(n, i))
	if !e.opensLine(begin) {
		if i+1 < len(n.of) { // as in "- - a" or "- key: a": the next one moves up
			next := e.begin(n, i+1)
			return begin, next, !strings.Contains(string(e.bytes[begin:next]), "#")
		}
		return 0, 0, false
	}
	if to == len(e.bytes) && e.lineEnd(finish(n, i)) == to && from > e.text.lines[0] { // the last line has no break: that before it goes
		from -= e.breakBefore(from)
	}
	return from, to, true
}

// breakBefore returns the length of the line break before a line.
func (t text) breakBefore(line int) int {
	for _, b := range breaks {
		if bytes.HasSuffix(t.bytes[:line], b) {
			return len(b)
		}
	}
	return 0
}
