package dxf

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry"
)

// net records which ends of pieces meet. End 2·i is the start of piece i, and
// 2·i + 1 its end.
type net struct {
	pieces []piece
	node   []int   // of each end
	ends   [][]int // of each node
	used   []bool  // the piece is part of a path, or pruned
	pruned []bool
}

func newNet(pieces []piece) *net {
	n := &net{pieces: pieces, node: make([]int, 2*len(pieces)), used: make([]bool, len(pieces)), pruned: make([]bool, len(pieces))}
	var places []geometry.Point
	squares := geometry.Squares{Side: gapMm}
	for end := range n.node {
		p := n.at(end)
		node, found := squares.Find(p, func(k int) bool { return places[k].Distance(p) <= gapMm })
		if !found {
			node = len(places)
			places, n.ends = append(places, p), append(n.ends, nil)
			squares.Add(p, node)
		}
		n.node[end] = node
		n.ends[node] = append(n.ends[node], end)
	}
	return n
}

func (n *net) at(end int) geometry.Point {
	points := n.pieces[end/2].points
	if end%2 == 0 {
		return points[0]
	}
	return points[len(points)-1]
}

// prune removes pieces joined at only one end, such as centre lines, until all
// that is left closes.
func (n *net) prune() {
	degree := make([]int, len(n.ends))
	var loose []int
	for node, ends := range n.ends {
		if degree[node] = len(ends); degree[node] == 1 {
			loose = append(loose, node)
		}
	}
	for len(loose) > 0 {
		node := loose[len(loose)-1]
		loose = loose[:len(loose)-1]
		for _, end := range n.ends[node] {
			if n.used[end/2] {
				continue
			}
			n.used[end/2], n.pruned[end/2] = true, true
			other := n.node[end^1]
			if degree[other]--; degree[other] == 1 {
				loose = append(loose, other)
			}
		}
		degree[node] = 0
	}
}

// order returns the pieces from left to right: the leftmost node of a figure is
// on its edge, so a walk from there goes all the way round.
func (n *net) order() []int {
	order := make([]int, len(n.pieces))
	for i := range order {
		order[i] = i
	}
	left := func(i int) float64 { return math.Min(n.at(2*i).X, n.at(2*i+1).X) }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(left(a), left(b)) })
	return order
}

// walk goes anticlockwise round a figure, from the left end of a piece until it
// comes back there. Where lines branch it keeps right, which is the outside.
// What is then left inside, such as a rib, can end elsewhere and stay open.
func (n *net) walk(first int) (path piece, closes bool) {
	path = piece{round: true, closed: true, layer: n.pieces[first].layer, line: n.pieces[first].line}
	start := n.node[2*first]
	if n.at(2*first+1).X < n.at(2*first).X {
		start = n.node[2*first+1]
	}
	end := n.next(start, math.Pi)
	for end >= 0 {
		p := n.pieces[end/2]
		n.used[end/2] = true
		path.round = path.round && p.round
		points := p.points
		if end%2 == 1 {
			points = slices.Clone(points)
			slices.Reverse(points)
		}
		if len(path.points) > 0 {
			points = points[1:]
		}
		path.points = append(path.points, points...)
		node := n.node[end^1]
		if node == start {
			return path, true
		}
		end = n.next(node, n.direction(end^1))
	}
	return path, false
}

// next returns the end at a node to continue from: the first one anticlockwise
// from the direction back, or -1 if all are used.
func (n *net) next(node int, back float64) int {
	n.ends[node] = slices.DeleteFunc(n.ends[node], func(end int) bool { return n.used[end/2] })
	best, least := -1, math.Inf(1)
	const most = 64 // no outline joins more lines; then any of them will do
	for _, end := range n.ends[node][:min(most, len(n.ends[node]))] {
		turn := math.Mod(n.direction(end)-back+4*math.Pi, 2*math.Pi)
		if turn < 1e-9 {
			turn = 2 * math.Pi
		}
		if turn < least {
			best, least = end, turn
		}
	}
	return best
}

// direction returns the angle at which a piece leaves the node of one of its
// ends.
func (n *net) direction(end int) float64 {
	points := n.pieces[end/2].points
	from, to := points[0], points[1]
	if end%2 == 1 {
		from, to = points[len(points)-1], points[len(points)-2]
	}
	return math.Atan2(to.Y-from.Y, to.X-from.X)
}
