package patterns

import (
	"math"
	"slices"

	"gopkg.in/yaml.v3"
)

type shape uint8

const (
	scalarShape shape = iota
	listShape
	mapShape
)

// node is one value of a file with its place. Aliases are resolved and
// repeated keys are gone.
type node struct {
	shape   shape
	text    string // of a scalar, as written
	null    bool   // nothing stands there
	items   []*node
	entries []entry
	size    int // nodes in it, every alias counted in full

	file         *file
	line, column int
}

type entry struct{ key, value *node }

// get gives the value of a key; nil where it is missing.
func (n *node) get(key string) *node {
	for _, e := range n.entries {
		if e.key.text == key {
			return e.value
		}
	}
	return nil
}

// keyNode gives the key itself, for its place.
func (n *node) keyNode(key string) *node {
	for _, e := range n.entries {
		if e.key.text == key {
			return e.key
		}
	}
	return n
}

// called says in plain words what stands there.
func (n *node) called() string {
	switch {
	case n.null:
		return "nothing"
	case n.shape == listShape:
		return "a list"
	case n.shape == mapShape:
		return "a map"
	}
	return quoted(n.text)
}

// converter turns the parser's nodes into ours.
type converter struct {
	r        *reader
	file     *file
	anchored map[*yaml.Node]*node
	open     map[*yaml.Node]bool // anchors that we stand in
}

// convert gives nil for an alias that stands inside its own part, which is
// reported.
func (c *converter) convert(y *yaml.Node) *node {
	if y.Kind == yaml.AliasNode {
		return c.alias(y)
	}
	if done := c.anchored[y]; done != nil {
		return done
	}
	n := &node{file: c.file, line: max(1, y.Line), column: max(1, y.Column), size: 1}
	if y.Anchor != "" {
		c.open[y] = true
		defer delete(c.open, y)
	}
	c.checkTag(y, n)
	switch y.Kind {
	case yaml.SequenceNode:
		c.list(y, n)
	case yaml.MappingNode:
		c.mapping(y, n)
	default:
		n.text, n.null = y.Value, y.ShortTag() == "!!null"
	}
	if y.Anchor != "" {
		c.anchored[y] = n
	}
	return n
}

func (c *converter) alias(y *yaml.Node) *node {
	if c.open[y.Alias] {
		at := &node{file: c.file, line: max(1, y.Line), column: max(1, y.Column)}
		c.r.fail(at, "", "the alias *%s stands inside the part that it repeats", y.Value)
		return nil
	}
	return c.convert(y.Alias)
}

func (c *converter) list(y *yaml.Node, n *node) {
	n.shape = listShape
	for _, item := range y.Content {
		child := c.convert(item)
		if child == nil {
			continue
		}
		n.items = append(n.items, child)
		n.grow(child)
	}
}

func (c *converter) mapping(y *yaml.Node, n *node) {
	n.shape = mapShape
	first := map[string]*node{}
	pairs := c.pairs(y)
	for i := 0; i+1 < len(pairs); i += 2 {
		key, value := c.convert(pairs[i]), c.convert(pairs[i+1])
		if key == nil || value == nil {
			continue
		}
		n.grow(value)
		n.grow(key)
		if key.shape != scalarShape {
			c.r.fail(key, "", "a key is one word, not %s", key.called())
			continue
		}
		if earlier := first[key.text]; earlier != nil {
			c.r.fail(key, "", "the key %s stands here twice; it stood first on line %d", quoted(key.text), earlier.line)
			continue
		}
		first[key.text] = key
		n.entries = append(n.entries, entry{key, value})
	}
}

// grow adds a child's size and stops short of overflow.
func (n *node) grow(child *node) {
	n.size = min(math.MaxInt/4, n.size+child.size)
}

var plainTags = []string{"!!str", "!!int", "!!float", "!!bool", "!!null", "!!seq", "!!map", "!!timestamp", "!!merge"}

func (c *converter) checkTag(y *yaml.Node, n *node) {
	if y.Style&yaml.TaggedStyle != 0 && !slices.Contains(plainTags, y.ShortTag()) {
		c.r.fail(n, "", "the tag %s has no meaning here; leave it out", quoted(y.ShortTag()))
	}
}
