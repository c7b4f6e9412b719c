package edit

import (
	"bytes"
	"strings"
)

// comments returns the comments inside a part.
func (e *editor) comments(n *node) (all []string) {
	at := n.start
	for _, leaf := range n.leaves() {
		all = append(all, e.commentsBetween(at, leaf.start)...)
		at = max(at, leaf.end)
	}
	return append(all, e.commentsBetween(at, n.end)...)
}

// leaves returns the texts of a part, in the order of the file.
func (n *node) leaves() (all []*node) {
	if len(n.of) == 0 {
		return []*node{n}
	}
	for i, child := range n.of {
		if n.kind == Map {
			all = append(all, n.keys[i])
		}
		all = append(all, child.leaves()...)
	}
	return all
}

// commentsBetween returns the comments of a stretch that has no text.
func (e *editor) commentsBetween(from, to int) (all []string) {
	for from < to {
		sign := bytes.IndexByte(e.bytes[from:to], '#')
		if sign < 0 {
			break
		}
		end := e.lineEnd(from + sign)
		all = append(all, strings.TrimRight(string(e.bytes[from+sign:end]), " \t"))
		from = end
	}
	return all
}

// comment writes comments above an item of a block.
func (e *editor) comment(path Path, comments []string) error {
	above, i, err := e.above(path)
	if err != nil || above.flow || len(comments) == 0 {
		return err
	}
	lines := ""
	for _, c := range comments {
		lines += c + e.newline() + indent(above)
	}
	at := e.dash(above, i)
	return e.put(path, e.content, e.splice(at, at, lines))
}
