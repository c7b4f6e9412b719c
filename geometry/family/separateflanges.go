package family

import (
	"cmp"
	"slices"

	"drawdown/geometry"
)

const (
	// gapShare is the least ratio of the gap between flanges to the widest step
	// within a flange.
	gapShare = 1.9
	// fewestPart is the smallest number of places in a flange.
	fewestPart = 3
)

// flanges recognizes separate groups of places with wide gaps between them.
func (s *seer) flanges() (Seen, bool) {
	parts, wide := s.parts()
	seen := Seen{Family: Flanges, Parts: parts}
	small := slices.ContainsFunc(parts, func(part []int) bool { return len(part) < fewestPart })
	return seen, wide && !small || s.named
}

// parts cuts the shortest tree over the places at its widest steps: it sorts
// the steps by length and cuts where one is much longer than the one before.
func (s *seer) parts() (parts [][]int, wide bool) {
	steps := shortestTree(s.points)
	slices.SortStableFunc(steps, func(a, b step) int { return cmp.Compare(a.length, b.length) })
	cut, widest := len(steps), 0.0
	for k := max(1, len(steps)-3); k < len(steps); k++ {
		if ratio := steps[k].length / max(steps[k-1].length, 1e-9); ratio > widest {
			cut, widest = k, ratio
		}
	}
	of := geometry.Count(len(s.points))
	for _, step := range steps[:cut] {
		from, to := of[step.b], of[step.a]
		for i := range of {
			if of[i] == from {
				of[i] = to
			}
		}
	}
	byPart := map[int]int{}
	for i, name := range of {
		k, known := byPart[name]
		if !known {
			k = len(parts)
			byPart[name], parts = k, append(parts, nil)
		}
		parts[k] = append(parts[k], i)
	}
	axis := geometry.LongAxis(s.points)
	along := func(k int) float64 { return geometry.Centroid(geometry.Picked(s.points, parts[k])).Dot(axis) }
	parts = geometry.Picked(parts, geometry.Sorted(len(parts), along))
	return parts, widest >= gapShare
}

// step is an edge of a tree over places.
type step struct {
	a, b   int
	length float64
}

// shortestTree joins all points with the least total length (Prim 1957).
func shortestTree(points []geometry.Point) []step {
	if len(points) == 0 {
		return nil
	}
	nearest := make([]step, len(points))
	for i, p := range points {
		nearest[i] = step{0, i, p.Distance(points[0])}
	}
	in := make([]bool, len(points))
	in[0] = true
	var tree []step
	for len(tree) < len(points)-1 {
		next := -1
		for i := range points {
			if !in[i] && (next < 0 || nearest[i].length < nearest[next].length) {
				next = i
			}
		}
		in[next] = true
		tree = append(tree, nearest[next])
		for i, p := range points {
			if d := p.Distance(points[next]); d < nearest[i].length {
				nearest[i] = step{next, i, d}
			}
		}
	}
	return tree
}
