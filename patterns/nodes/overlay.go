package nodes

import "slices"

// maxMergeDepth bounds maps inside maps that are joined; a pattern has four.
const maxMergeDepth = 6

// Merge lays the top map over the base map: maps are joined key by key, lists
// and plain values of the top replace those of the base. The order of the base
// stays, and every value keeps its own place for the problems.
func Merge(top, base *Node) *Node { return merge(top, base, 0) }

func merge(top, base *Node, depth int) *Node {
	if top == nil {
		return base
	}
	if top.Shape != Map || base.Shape != Map || depth >= maxMergeDepth {
		return top
	}
	over, under := top.index(), base.index()
	joined := *top
	joined.Entries = nil
	joined.Lost = slices.Concat(top.Lost, base.Lost)
	for _, e := range base.Entries {
		if o, ok := over[e.Key.Text]; ok {
			e = Entry{o.Key, merge(o.Value, e.Value, depth+1)}
		}
		joined.Entries = append(joined.Entries, e)
	}
	for _, e := range top.Entries {
		if _, ok := under[e.Key.Text]; !ok {
			joined.Entries = append(joined.Entries, e)
		}
	}
	return &joined
}

// index finds the entries of a map by their keys.
func (n *Node) index() map[string]Entry {
	index := make(map[string]Entry, len(n.Entries))
	for _, e := range n.Entries {
		index[e.Key.Text] = e
	}
	return index
}
