package nodes

import (
	"fmt"

	"drawdown/patterns/problem"
)

// Shape is what a node is.
type Shape uint8

const (
	Scalar Shape = iota
	List
	Map
)

// Node is one value of a file with its place. Aliases are resolved and
// repeated keys are gone.
type Node struct {
	Shape   Shape
	Text    string // of a scalar, as written
	Null    bool   // nothing stands there
	Items   []*Node
	Entries []Entry
	size    int // nodes in it, every alias counted in full

	File         *File
	Line, Column int
}

// Entry is a key of a map with its value.
type Entry struct{ Key, Value *Node }

// Get gives the value of a key; nil where it is missing.
func (n *Node) Get(key string) *Node {
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Value
		}
	}
	return nil
}

// KeyNode gives the key itself, for its place.
func (n *Node) KeyNode(key string) *Node {
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Key
		}
	}
	return n
}

// Called says in plain words what stands there.
func (n *Node) Called() string {
	switch {
	case n.Null:
		return "nothing"
	case n.Shape == List:
		return "a list"
	case n.Shape == Map:
		return "a map"
	}
	return problem.Quoted(n.Text)
}

// PlaceSeenFrom says where n stands, for a message at another node.
func (n *Node) PlaceSeenFrom(other *Node) string {
	if n.File != other.File {
		return fmt.Sprintf("on line %d of %s", n.Line, n.File.Name)
	}
	return fmt.Sprintf("on line %d", n.Line)
}
