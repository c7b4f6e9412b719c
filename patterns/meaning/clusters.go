package meaning

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
	"drawdown/sequence"
)

// readClusters reads the fasteners that hold one part down together. It runs
// after the order is read, since a cluster belongs to one group.
func (r *reader) readClusters(f form.Fields) {
	in := map[string]string{} // fastener id to cluster
	names := map[string]*nodes.Node{}
	for f := range f.Maps("clusters", "[{name: cap 1, of: [C1, C2]}]", finding.Term("a cluster"), "name", "of", "loaded") {
		c := geometry.Cluster{Unloaded: f.No("loaded")}
		if at := f.Need("name", "cap 1"); at != nil {
			c.Name, _ = r.Text(at, "name")
			if c.Name != "" {
				c.Name = r.names.Of(relabel.Clusters, c.Name, at)
			}
			if first := names[c.Name]; first != nil && c.Name != "" {
				r.Fail(at, ClusterTwice, finding.Values{"name": problem.Quoted(c.Name), "first": first.Stood(at)})
			}
			names[c.Name] = at
		}
		if at := f.Need("of", "[C1, C2]"); at != nil {
			c.Of = r.members(at, c.Name, c.Unloaded, in)
			if len(c.Of) == 0 && r.allOmitted(at) {
				continue
			}
		}
		r.input.Joint.Clusters, r.clusters = append(r.input.Joint.Clusters, c), append(r.clusters, f.Node)
	}
	r.readUnloaded(f)
	r.checkClusters(f)
}

// unloaded states when clusters come off that no spring presses on.
type unloaded string

const (
	lastOff  unloaded = "last off"
	firstOff unloaded = "first off"
)

func (r *reader) readUnloaded(f form.Fields) {
	when := form.Word(f, "unloaded", lastOff, firstOff)
	r.input.Joint.UnloadedFirstOff = when == firstOff
	if when != "" && !slices.ContainsFunc(r.input.Joint.Clusters, func(c geometry.Cluster) bool { return c.Unloaded }) {
		r.Warn(f.Node.KeyNode("unloaded"), KeyNoEffect, finding.Values{"key": "unloaded", "why": finding.Failed(NoneUnloaded, finding.Values{"unloaded": "loaded: no"})})
	}
}

// allOmitted reports whether files above leave out all fasteners of a cluster.
func (r *reader) allOmitted(n *nodes.Node) bool {
	return len(n.Items) > 0 && !slices.ContainsFunc(n.Items, func(item *nodes.Node) bool {
		_, here := r.current(item)
		return here
	})
}

func (r *reader) members(n *nodes.Node, name string, unloaded bool, in map[string]string) []string {
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
		if f.Kind != "" && !slices.Contains(kinds, f.Kind) {
			kinds = append(kinds, f.Kind)
		}
	}
	if len(kinds) > 1 && !r.sameGroup(kinds) && !(unloaded && r.innerFirst(of)) {
		// If springs press, the part would bend; otherwise its kinds are
		// tightened one after the other.
		if unloaded {
			r.mixed = append(r.mixed, mixed{n, kinds})
		} else {
			r.Fail(n, ClusterInGroups, finding.Values{"kinds": kinds})
		}
	}
	return of
}

// innerFirst reports whether the order takes the fasteners of a cap from its
// middle outwards, as makers tighten caps of four bolts (common practice).
func (r *reader) innerFirst(of []string) bool {
	var points []geometry.Point
	var groups []int
	for _, f := range r.input.Joint.Fasteners {
		if !slices.Contains(of, f.ID) {
			continue
		}
		group := slices.IndexFunc(r.input.Groups, func(g sequence.Group) bool { return slices.Contains(g.Kinds, f.Kind) })
		if group < 0 {
			return false
		}
		points, groups = append(points, f.At), append(groups, group)
	}
	middle := geometry.Centroid(points)
	for i, p := range points {
		for k, other := range points {
			if groups[i] < groups[k] && p.Distance(middle) >= other.Distance(middle) {
				return false
			}
		}
	}
	return true
}

// sameGroup reports whether one group of the order contains all the kinds.
// Without an order every kind is its own group.
func (r *reader) sameGroup(kinds []string) bool {
	return slices.ContainsFunc(r.input.Groups, func(g sequence.Group) bool {
		return len(g.Kinds) == 0 || !slices.ContainsFunc(kinds, func(k string) bool { return !slices.Contains(g.Kinds, k) })
	})
}

// mixed is a cluster without springs whose kinds are in several groups.
type mixed struct {
	of    *nodes.Node
	kinds []string
}

// checkMixed warns of clusters whose kinds are tightened one after the other,
// unless all are so: caps of four bolts have their inner ones first.
func (r *reader) checkMixed() {
	if len(r.mixed) > 1 && len(r.mixed) == len(r.input.Joint.Clusters) {
		return
	}
	for _, m := range r.mixed {
		r.Warn(m.of, ClusterInGroups, finding.Values{"kinds": m.kinds})
	}
}

// checkClusters warns of a few fasteners in no cluster while the others of
// their kind are in one, and of clusters that overlap: two parts cannot.
func (r *reader) checkClusters(f form.Fields) {
	r.checkMixed()
	clusters := r.input.Joint.Clusters
	if len(clusters) < 2 || !r.fasteners.placed() {
		return
	}
	in := map[string]bool{}
	of := map[string]int{} // fasteners in clusters, by kind
	for _, c := range clusters {
		for _, id := range c.Of {
			in[id] = true
			of[r.input.Joint.Fasteners[r.fasteners.index[id]].Kind]++
		}
	}
	left := map[string][]string{}
	for _, f := range r.input.Joint.Fasteners {
		if !in[f.ID] {
			left[f.Kind] = append(left[f.Kind], f.ID)
		}
	}
	for _, kind := range r.usedKinds() {
		if ids := left[kind]; len(ids) > 0 && 2*len(ids) < of[kind] {
			r.Warn(f.Node.KeyNode("clusters"), InNoCluster, finding.Values{"ids": ids, "n": len(ids), "count": of[kind]})
		}
	}
	r.checkCrossing()
	r.checkAlong()
	r.checkCounts()
}

// checkCounts warns of a cap with one bolt, or with an odd number of them, where
// most others have the same even number.
func (r *reader) checkCounts() {
	clusters := r.input.Joint.Clusters
	counts := map[int]int{} // clusters by their number of fasteners
	usual := 0
	for _, c := range clusters {
		counts[len(c.Of)]++
		if n := counts[len(c.Of)]; n > counts[usual] || n == counts[usual] && len(c.Of) < usual {
			usual = len(c.Of)
		}
	}
	if usual%2 != 0 || 2*counts[usual] <= len(clusters) {
		return
	}
	for i, c := range clusters {
		if len(c.Of)%2 != 0 {
			r.Warn(r.clusters[i], ClusterOdd, finding.Values{"name": problem.Quoted(c.Name), "n": len(c.Of), "usual": usual})
		}
	}
}

// checkAlong warns of a cap whose two bolts are along the row of caps, if as
// many or more caps have theirs across it.
func (r *reader) checkAlong() {
	axis := geometry.LongAxis(r.input.Joint.Points())
	var along []int
	across := 0
	for i, c := range r.input.Joint.Clusters {
		if len(c.Of) != 2 {
			continue
		}
		pair := r.at(c)[1].Sub(r.at(c)[0])
		if math.Abs(pair.Dot(axis)) > pair.Distance(geometry.Point{})*math.Sqrt2/2 {
			along = append(along, i)
		} else {
			across++
		}
	}
	const fewest = 2
	if across < max(fewest, len(along)) {
		return
	}
	for _, i := range along {
		r.Warn(r.clusters[i], ClusterAlong, finding.Values{"name": problem.Quoted(r.input.Joint.Clusters[i].Name), "across": across})
	}
}

// at returns the places of a cluster's fasteners.
func (r *reader) at(c geometry.Cluster) []geometry.Point {
	return geometry.Mapped(c.Of, func(id string) geometry.Point { return r.input.Joint.Fasteners[r.fasteners.index[id]].At })
}

func (r *reader) checkCrossing() {
	clusters := r.input.Joint.Clusters
	hulls := geometry.Mapped(clusters, func(c geometry.Cluster) []geometry.Point { return geometry.Hull(r.at(c)) })
	for i, c := range clusters {
		for k, other := range clusters[:i] {
			if hullsCross(hulls[i], hulls[k]) {
				r.Warn(r.clusters[i], ClustersCross, finding.Values{"name": problem.Quoted(c.Name), "other": problem.Quoted(other.Name)})
				break
			}
		}
	}
}

// hullsCross reports whether an edge of one hull crosses one of the other.
func hullsCross(a, b []geometry.Point) bool {
	for i, p := range a {
		for k, r := range b {
			if geometry.SegmentsCross(p, a[(i+1)%len(a)], r, b[(k+1)%len(b)]) {
				return true
			}
		}
	}
	return false
}
