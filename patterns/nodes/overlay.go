package nodes

import "slices"

// maxMergeDepth limits nested maps that are merged; a pattern has four.
const maxMergeDepth = 6

// Merge merges the top map into the base map: maps are merged key by key; lists
// and plain values of the top replace those of the base. The order of the base
// is kept, and every value keeps its own position for problems.
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

// index returns the entries of a map by key.
func (n *Node) index() map[string]Entry {
	index := make(map[string]Entry, len(n.Entries))
	for _, e := range n.Entries {
		index[e.Key.Text] = e
	}
	return index
}
