package meaning

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// readClusters reads the fasteners that go down together. It comes after the
// order, since a cluster stands in one group.
func (r *reader) readClusters(f form.Fields) {
	n := f.Get("clusters")
	if n == nil {
		return
	}
	in := map[string]string{} // fastener id to cluster
	names := map[string]*nodes.Node{}
	for _, item := range r.TrueList(n, "clusters", "[{name: cap 1, of: [C1, C2]}]") {
		f, ok := r.Fields(item, finding.Term("a cluster"), "name", "of", "loaded")
		if !ok {
			continue
		}
		c := geometry.Cluster{}
		if at := f.Need("name", "cap 1"); at != nil {
			c.Name, _ = r.Text(at, "name")
			if first := names[c.Name]; first != nil && c.Name != "" {
				r.Fail(at, ClusterTwice, finding.Values{"name": problem.Quoted(c.Name), "first": first.Stood(at)})
			}
			names[c.Name] = at
		}
		if at := f.Get("loaded"); at != nil {
			loaded, ok := r.YesNo(at, "loaded")
			c.Unloaded = ok && !loaded
		}
		if at := f.Need("of", "[C1, C2]"); at != nil {
			c.Of = r.members(at, c.Name, in)
		}
		r.input.Joint.Clusters = append(r.input.Joint.Clusters, c)
	}
}

func (r *reader) members(n *nodes.Node, name string, in map[string]string) []string {
	var of, kinds []string
	for _, item := range r.TrueList(n, "of", "[C1, C2]") {
		i, ok := r.knownFastener(item)
		if !ok {
			continue
		}
		f := r.input.Joint.Fasteners[i]
		if other, taken := in[f.ID]; taken {
			if other == name {
				r.Fail(item, TwiceInCluster, finding.Values{"id": f.ID})
			} else {
				r.Fail(item, InOtherCluster, finding.Values{"id": f.ID, "name": problem.Quoted(other)})
			}
			continue
		}
		in[f.ID] = name
		of = append(of, f.ID)
		if !slices.Contains(kinds, f.Kind) {
			kinds = append(kinds, f.Kind)
		}
	}
	if len(kinds) > 1 && !r.sameGroup(kinds) {
		r.Fail(n, ClusterInGroups, finding.Values{"kinds": kinds})
	}
	return of
}

// sameGroup says whether one group of the order takes all the kinds. Without an
// order every kind is a group of its own.
func (r *reader) sameGroup(kinds []string) bool {
	for _, g := range r.input.Groups {
		if len(g.Kinds) == 0 {
			return true
		}
		all := true
		for _, k := range kinds {
			all = all && slices.Contains(g.Kinds, k)
		}
		if all {
			return true
		}
	}
	return false
}
