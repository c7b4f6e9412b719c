package edit

import (
	"cmp"
	"slices"
	"strings"

	"drawdown/geometry/finding"
)

// editor makes one change after another on a text. Each is checked: the new text
// reads like the old one but for the part that was to change.
type editor struct {
	text
	root    *node
	content Value
	change  Change
}

func newEditor(data []byte) (*editor, error) {
	e := &editor{text: newText(data)}
	var err error
	e.root, e.content, err = parse(e.text)
	return e, err
}

// put makes splices that all count in the present text, and do not overlap. The
// content must then be as wanted.
func (e *editor) put(path Path, want Value, splices ...Splice) error {
	slices.SortFunc(splices, func(a, b Splice) int { return cmp.Compare(b.At, a.At) }) // the last first: the places of the others hold
	after, err := Change(splices).Apply(e.bytes)
	if err != nil {
		return err
	}
	next, err := newEditor(after)
	if err != nil || !next.content.equal(want) {
		return entangled(path)
	}
	next.change = append(e.change, splices...)
	*e = *next
	return nil
}

func entangled(path Path) error {
	return finding.Failed(Entangled, finding.Values{"path": called(path)})
}

func noPart(path Path) error {
	return finding.Failed(NoPart, finding.Values{"path": called(path)})
}

// called names a part of a file for a person.
func called(path Path) string { return strings.Join(path, " / ") }

func (e *editor) splice(from, to int, with string) Splice {
	return Splice{from, string(e.bytes[from:to]), with}
}

// set gives a part a value. Keys that lead to it are added if they are missing.
func (e *editor) set(path Path, v Value) error {
	if len(path) == 0 {
		return noPart(path)
	}
	above := e.content.At(path[:len(path)-1])
	if above == nil || above.Kind == Nothing {
		return e.set(path[:len(path)-1], Value{}.With(path.last(), v))
	}
	old := e.content.At(path)
	switch {
	case old == nil && above.Kind != Map:
		return noPart(path)
	case old == nil:
		return e.addKey(path, v)
	case old.equal(v):
		return nil
	case old.Kind == Map && v.Kind == Map && len(v.Of) > 0:
		return e.setEach(path, *old, v)
	case old.Kind == List && v.Kind == List && len(old.Of) == len(v.Of) && !e.oneLine(path):
		for i, item := range v.Of {
			if err := e.set(path.Item(i), item); err != nil {
				return err
			}
		}
		return nil
	}
	return e.replace(path, v)
}

// oneLine reports whether a part begins and ends in the same line.
func (e *editor) oneLine(path Path) bool {
	n, err := e.holder(path)
	return err != nil || e.lineStart(n.start) == e.lineStart(n.end)
}

// setEach changes only the keys that differ.
func (e *editor) setEach(path Path, old, v Value) error {
	for i, key := range v.Keys {
		if err := e.set(path.Then(key), v.Of[i]); err != nil {
			return err
		}
	}
	for _, key := range old.Keys {
		if !slices.Contains(v.Keys, key) {
			if err := e.drop(path.Then(key)); err != nil {
				return err
			}
		}
	}
	return nil
}

// holder returns the node of a list or a map. An alias is none: what it holds is
// elsewhere, too.
func (e *editor) holder(path Path) (*node, error) {
	n, content := e.root.at(e.content, path), e.content.At(path)
	switch {
	case content == nil:
		return nil, noPart(path)
	case n == nil || n.kind != content.Kind || n.kind != List && n.kind != Map:
		return nil, entangled(path)
	}
	return n, nil
}

// above returns the node that holds a part, and the part's number in it.
func (e *editor) above(path Path) (*node, int, error) {
	n, err := e.holder(path[:len(path)-1])
	if err != nil {
		return nil, 0, err
	}
	i := e.content.At(path[:len(path)-1]).index(path.last())
	if i < 0 {
		return nil, 0, noPart(path)
	}
	return n, i, nil
}

// replace puts a value in the place of another.
func (e *editor) replace(path Path, v Value) error {
	above, i, err := e.above(path)
	if err != nil {
		return err
	}
	n := above.of[i]
	want := e.content.copied()
	*want.At(path) = v.copied()
	from, to, gap := n.start, n.end, ""
	if block := !n.flow && n.kind != Scalar; block && above.kind == Map {
		if colon := e.skipSpace(above.keys[i].end); e.has(colon, ':') && e.blank(colon+1, n.start) {
			from, to, gap = colon+1, max(to, colon+1), " " // onto the line of the key
		}
	}
	return e.put(path, want, e.splice(from, to, gap+writtenAs(v, above.flow, n.style)))
}

// addKey adds a key behind the others.
func (e *editor) addKey(path Path, v Value) error {
	n, err := e.holder(path[:len(path)-1])
	if err != nil {
		return err
	}
	want := e.content.copied()
	holder := want.At(path[:len(path)-1])
	*holder = holder.With(path.last(), v.copied())
	entry := scalar(path.last(), n.flow, 0) + ": " + written(v, n.flow)
	switch {
	case !n.flow:
		at := e.lineEnd(n.end)
		return e.put(path, want, e.splice(at, at, e.newline()+indent(n)+entry))
	case len(n.of) == 0:
		return e.put(path, want, e.splice(n.start+1, n.start+1, entry))
	}
	last := len(n.of) - 1
	at := max(n.keys[last].end, n.of[last].end)
	return e.put(path, want, e.splice(at, at, ", "+entry))
}

// indent is the space before the keys or the dashes of a block.
func indent(n *node) string { return strings.Repeat(" ", n.column-1) }
