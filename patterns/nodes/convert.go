package nodes

import (
	"math"
	"slices"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// converter converts the parser's nodes to ours.
type converter struct {
	problems *Problems
	file     *File
	copy     copied   // of the file, as parsed
	keys     []string // the keys allowed in the file
	anchored map[*yaml.Node]*Node
	open     map[*yaml.Node]bool // anchors around the current node
	flows    int                 // flows around the current node
}

func newConverter(p *Problems, f *File, read copied, keys []string) *converter {
	return &converter{problems: p, file: f, copy: read, keys: keys, anchored: map[*yaml.Node]*Node{}, open: map[*yaml.Node]bool{}}
}

func (c *converter) known(key string) bool { return slices.Contains(c.keys, key) }

// node returns an empty node at the position of one of the parser's.
func (c *converter) node(y *yaml.Node) *Node {
	line := max(1, y.Line)
	return &Node{File: c.file, Line: line, Column: c.copy.column(line, max(1, y.Column)), size: 1}
}

// convert returns nil for an alias inside its own anchor, which is reported.
func (c *converter) convert(y *yaml.Node) *Node {
	if y.Kind == yaml.AliasNode {
		if c.open[y.Alias] {
			c.problems.Fail(c.node(y), AliasInItself, finding.Values{"alias": y.Value})
			return nil
		}
		y = y.Alias
	}
	if done := c.anchored[y]; done != nil {
		return done
	}
	n := c.node(y)
	if y.Anchor != "" {
		c.open[y] = true
		defer delete(c.open, y)
	}
	c.checkTag(y, n)
	if y.Style&yaml.FlowStyle != 0 {
		c.flows++
		defer func() { c.flows-- }()
	}
	switch {
	case y.Kind == yaml.SequenceNode:
		n.Shape = List
		for _, item := range y.Content {
			if child := c.convert(item); child != nil {
				n.Items = append(n.Items, child)
				n.grow(child)
			}
		}
	case y.Kind == yaml.MappingNode && c.isText(y):
		n.Text = unmarked.Replace(y.Content[0].Value + ": " + y.Content[1].Value)
	case y.Kind == yaml.MappingNode:
		c.mapping(y, n)
		c.setWithColon(y, n)
	default:
		n.Text, n.Null = unmarked.Replace(y.Value), y.ShortTag() == "!!null"
		if n.Null || y.ShortTag() == "!!str" {
			c.setComment(y, n)
			c.setUndashed(y, n)
		}
	}
	if y.Anchor != "" {
		c.anchored[y] = n
	}
	return n
}

func (c *converter) mapping(y *yaml.Node, n *Node) {
	n.Shape = Map
	first := map[string]*Node{}
	pairs := c.pairs(y)
	for i := 0; i+1 < len(pairs); i += 2 {
		key, value := c.convert(pairs[i]), c.convert(pairs[i+1])
		if key == nil || value == nil {
			continue
		}
		n.grow(value)
		n.grow(key)
		if key.Shape != Scalar {
			c.problems.Fail(key, KeyIsNoWord, finding.Values{"found": key.Called()})
			continue
		}
		if earlier := first[key.Text]; earlier != nil {
			c.problems.Fail(key, KeyTwice, finding.Values{"key": problem.Quoted(key.Text), "line": earlier.Line})
			continue
		}
		first[key.Text] = key
		n.Entries = append(n.Entries, Entry{key, value})
	}
}

// grow adds a child's size without overflow.
func (n *Node) grow(child *Node) {
	n.size = min(math.MaxInt/4, n.size+child.size)
}

// checkTag reports a tag that contradicts its value: values are read according
// to their key.
func (c *converter) checkTag(y *yaml.Node, n *Node) {
	if y.Style&yaml.TaggedStyle == 0 || y.Tag == "!" {
		return
	}
	bare := *y
	bare.Tag, bare.Style = "", y.Style&^yaml.TaggedStyle
	if tag := y.ShortTag(); tag != bare.ShortTag() && !(tag == "!!str" && y.Kind == yaml.ScalarNode) {
		c.problems.Fail(n, TagIdle, finding.Values{"tag": problem.Quoted(tag)})
	}
}
