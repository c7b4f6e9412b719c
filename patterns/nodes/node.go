// Package nodes turns the bytes of a file into lines and nodes with their
// positions, and collects the problems of all readers. It decides what is text,
// what is YAML and which syntax error was made; it does not know what a value
// means. It may import source and problem, and is the only package that reads
// YAML.
package nodes

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Shape is the kind of a node.
type Shape uint8

const (
	Scalar Shape = iota
	List
	Map
)

// Node is one value of a file with its position. Aliases are resolved and
// repeated keys are removed.
type Node struct {
	Shape   Shape
	Text    string // of a scalar, as written
	Null    bool   // there is no value
	Items   []*Node
	Entries []Entry
	size    int // nodes in it, with every alias counted in full

	Comment        string // after one space behind a plain text, from the # on
	before, behind string // text on the line around the two

	withColon string  // of a map that was meant as a text: the line in quotes
	undashed  []*Node // of a text that was meant as a list: the items

	Lost []string // of a whole file: keys that could not be read; "" for an unknown one

	File         *File
	Line, Column int
}

// Entry is a key of a map and its value.
type Entry struct{ Key, Value *Node }

// Get returns the value of a key; nil if it is missing.
func (n *Node) Get(key string) *Node {
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Value
		}
	}
	return nil
}

// KeyNode returns the node of a key, for its position.
func (n *Node) KeyNode(key string) *Node {
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Key
		}
	}
	return n
}

// Without returns a map without some of its keys.
func (n *Node) Without(keys []string) *Node {
	left := *n
	left.Entries = slices.DeleteFunc(slices.Clone(n.Entries), func(e Entry) bool { return slices.Contains(keys, e.Key.Text) })
	return &left
}

// Lacks reports whether a part of the file that could not be read may have been
// the value of a key.
func (n *Node) Lacks(key string) bool {
	return slices.Contains(n.Lost, key) || slices.Contains(n.Lost, "")
}

// Written returns the content of a node on one line. Values that mean the same
// in different notations give the same text.
func (n *Node) Written() string {
	var parts []string
	switch n.Shape {
	case Scalar:
		return strconv.Quote(n.Text)
	case List:
		for _, item := range n.Items {
			parts = append(parts, item.Written())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	for _, e := range n.Entries {
		parts = append(parts, e.Key.Text+": "+e.Value.Written())
	}
	slices.Sort(parts)
	return "{" + strings.Join(parts, ", ") + "}"
}

// Called describes the content, for a finding.
func (n *Node) Called() any {
	switch {
	case n.Null:
		return finding.Term("nothing")
	case n.Shape == List:
		return finding.Term("a list")
	case n.Shape == Map:
		return finding.Term("a map")
	}
	return problem.Quoted(n.Text)
}

// Counted describes the content where a certain number of entries is expected.
func (n *Node) Counted() any {
	if n.Shape == List {
		return len(n.Items)
	}
	return n.Called()
}

// Stood says where n is, for a finding at another node.
func (n *Node) Stood(other *Node) finding.Finding {
	file := ""
	if n.File != other.File {
		file = n.File.Name
	}
	return finding.Failed(StandsAt, finding.Values{"line": n.Line, "file": file})
}
