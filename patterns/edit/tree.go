package edit

import (
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
)

// node is a part of the text: from start to end, without what follows it on its
// line.
type node struct {
	kind       Kind
	style      yaml.Style
	keys       []*node // of a map
	of         []*node
	start, end int
	column     int  // of a block: of its keys or dashes
	flow       bool // between brackets
}

// parse returns the tree of a text and its content.
func parse(t text) (*node, Value, error) {
	var document yaml.Node
	if err := yaml.Unmarshal(t.bytes, &document); err != nil || len(document.Content) == 0 {
		return nil, Value{}, finding.Failed(Unreadable, nil)
	}
	root := document.Content[0]
	if root.Kind != yaml.MappingNode {
		return nil, Value{}, finding.Failed(Unreadable, nil)
	}
	p := placer{t, map[*yaml.Node]bool{}}
	return p.place(root, 0), valueOf(root, map[*yaml.Node]bool{}), nil
}

// placer finds where the parser's nodes end: it knows only their starts.
type placer struct {
	text
	inside map[*yaml.Node]bool
}

// place returns a node inside a block at a column.
func (p placer) place(y *yaml.Node, column int) *node {
	n := &node{style: y.Style, start: p.offset(y.Line, y.Column)}
	n.start = p.afterProperties(y, n.start)
	n.end = n.start
	switch y.Kind {
	case yaml.SequenceNode:
		n.kind = List
		p.collection(n, y, '[', ']')
	case yaml.MappingNode:
		n.kind = Map
		p.collection(n, y, '{', '}')
	case yaml.AliasNode:
		n.kind, n.end = Scalar, n.start+len("*")+len(y.Value)
	default:
		n.kind = Scalar
		n.end = p.scalarEnd(y, n.start, column)
		if n.end == n.start && y.ShortTag() == "!!null" {
			n.kind = Nothing
		}
	}
	return n
}

// afterProperties skips an anchor and a tag.
func (p placer) afterProperties(y *yaml.Node, at int) int {
	if y.Kind == yaml.AliasNode || y.Anchor == "" && y.Style&yaml.TaggedStyle == 0 {
		return at
	}
	for p.has(at, '&') || p.has(at, '!') {
		for at < len(p.bytes) && !unicode.IsSpace(rune(p.bytes[at])) {
			at++
		}
		at = p.skipBlank(at)
	}
	return at
}

func (p placer) collection(n *node, y *yaml.Node, opens, closes byte) {
	n.flow = y.Style&yaml.FlowStyle != 0
	n.column = p.column(n.start)
	for i, child := range y.Content {
		at := p.place(child, n.column)
		n.end = max(n.end, at.end)
		if y.Kind == yaml.MappingNode && i%2 == 0 {
			n.keys = append(n.keys, at)
		} else {
			n.of = append(n.of, at)
		}
	}
	if n.flow && p.has(n.start, opens) {
		end := max(n.end, n.start+1)
		for end = p.skipBlank(end); p.has(end, ',') || p.has(end, ':'); { // of an entry without a value
			end = p.skipBlank(end + 1)
		}
		if p.has(end, closes) {
			n.end = end + 1
		}
	}
}

func (p placer) scalarEnd(y *yaml.Node, at, column int) int {
	switch {
	case y.Style&yaml.DoubleQuotedStyle != 0:
		for at++; at < len(p.bytes) && p.bytes[at] != '"'; at++ {
			if p.bytes[at] == '\\' {
				at++
			}
		}
		return min(at+1, len(p.bytes))
	case y.Style&yaml.SingleQuotedStyle != 0:
		for at++; at < len(p.bytes); at++ {
			if p.bytes[at] != '\'' {
				continue
			}
			if !p.has(at+1, '\'') {
				break
			}
			at++
		}
		return min(at+1, len(p.bytes))
	case y.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return p.blockEnd(at, column)
	}
	return p.plainEnd(y.Value, at)
}

// blockEnd returns the end of the last line that is further in than the block
// around it.
func (p placer) blockEnd(at, column int) int {
	end := p.lineEnd(at)
	for line := p.nextLine(at); line < len(p.bytes); line = p.nextLine(line) {
		last := p.lineEnd(line)
		first := min(p.skipSpace(line), last)
		if first < last && p.column(first) <= column {
			break
		}
		if first < last {
			end = last
		}
	}
	return end
}

// plainEnd follows a plain text, which may run over several lines.
func (p placer) plainEnd(value string, at int) int {
	space := false
	for _, r := range value {
		if unicode.IsSpace(r) {
			space = true
			continue
		}
		if space {
			at, space = p.skipSpace(at), false
		}
		found, size := utf8.DecodeRune(p.bytes[min(at, len(p.bytes)):])
		if found != r {
			break // the check of the new text finds it
		}
		at += size
	}
	return at
}

// at returns the node at a path; nil if there is none.
func (n *node) at(content Value, path Path) *node {
	for _, step := range path {
		i := content.index(step)
		if i < 0 || i >= len(n.of) {
			return nil
		}
		n, content = n.of[i], content.Of[i]
	}
	return n
}
