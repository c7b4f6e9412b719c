package diagram

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// collarWidth is the white about a mark that stands at an edge, in millimetres.
const collarWidth = 0.8

// drawCollars parts the marks from the edges of the part and of its bores: marks
// are larger than the heads that they stand for, and reach over edges that these
// keep clear of. Where one does, each mark has white about it.
func (s *sketch) drawCollars() {
	if !slices.ContainsFunc(s.marks, s.atEdge) {
		return
	}
	for i, m := range s.marks {
		s.addWhite(m.shape.path(m.at, m.radius+(s.outer(i)+collarWidth)/m.shape.inner()))
	}
}

// addWhite fills what of a path lies in the box, with the line along its edge.
func (s *sketch) addWhite(path scene.Path) {
	if box := s.req.Box.Grown(0.01); !box.Holds(path.Bounds()) {
		path = scene.Polyline(clippedArea(path.Flatten()[0], box), true)
	}
	s.add(scene.Shape{Path: path, Fill: scene.White})
}

// drawClusterCollars does so with what holds a cluster, such as a cap, which lies
// on the part.
func (s *sketch) drawClusterCollars() {
	if !slices.ContainsFunc(s.marks, s.atEdge) {
		return
	}
	for k := range s.req.Plan.Joint.Clusters {
		s.addWhite(s.aroundCluster(k, clusterGap+collarWidth))
	}
}

// leastSeen is the share of a line that must be left between the marks and the
// white about them.
const leastSeen = 0.25

// hidden reports whether marks hide more of the outline or of a bore.
func (s *sketch) hidden() bool {
	if !slices.ContainsFunc(s.marks, s.atEdge) {
		return false
	}
	lines := slices.Clone(s.edges)
	for _, b := range s.req.Plan.Joint.Bores {
		c := s.view.at(b.Centre)
		lines = append(lines, scene.Circle(c.X, c.Y, b.Diameter/2*s.view.scale).Flatten()...)
	}
	return slices.ContainsFunc(lines, func(line []scene.Point) bool { return s.seen(line) < leastSeen })
}

// seen is the share of a line that no mark and no white about it covers.
func (s *sketch) seen(line []scene.Point) float64 {
	const step = 0.5
	covered, count := 0, 0
	for k := 1; k < len(line); k++ {
		a, b := line[k-1], line[k]
		steps := math.Ceil(a.Distance(b) / step)
		for n := 0.5; n < steps; n++ {
			at := scene.Point{X: a.X + (b.X-a.X)*n/steps, Y: a.Y + (b.Y-a.Y)*n/steps}
			count++
			if s.covered(at) {
				covered++
			}
		}
	}
	return 1 - float64(covered)/float64(max(1, count))
}

func (s *sketch) covered(at scene.Point) bool {
	return slices.ContainsFunc(s.marks, func(m mark) bool { return at.Distance(m.at) < m.radius+collarWidth })
}

func (s *sketch) atEdge(m mark) bool {
	reach := m.shape.reach * (m.radius + ringGap + collarWidth)
	near := reach * reach
	for _, run := range s.edges {
		for k := 1; k < len(run); k++ {
			if scene.SquareToLine(m.at, run[k-1], run[k]) < near {
				return true
			}
		}
	}
	return slices.ContainsFunc(s.holes, func(h hole) bool {
		off := h.at.Distance(m.at) - h.radius
		return off*off < near
	})
}
