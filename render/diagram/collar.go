package diagram

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// collarWidth is the width of the white border around a mark at an edge, in
// millimetres.
const collarWidth = 0.8

// drawCollars puts a white border around the marks to separate them from the
// edges of the part and of its bores. Marks are drawn larger than the bolt
// heads and can overlap edges that the heads clear. If one mark does, all get a
// border.
func (s *sketch) drawCollars() {
	if !slices.ContainsFunc(s.marks, s.atEdge) {
		return
	}
	for i, m := range s.marks {
		s.addWhite(m.shape.path(m.at, m.radius+(s.outer(i)+collarWidth)/m.shape.inner()))
	}
}

// addWhite fills the part of a path that is inside the box, including the line
// along the box edge.
func (s *sketch) addWhite(path scene.Path) {
	if box := s.req.Box.Grown(0.01); !box.Holds(path.Bounds()) {
		path = scene.Polyline(clippedArea(path.Flatten()[0], box), true)
	}
	s.add(scene.Shape{Path: path, Fill: scene.White})
}

// drawClusterCollars does the same for what holds a cluster, such as a bearing
// cap on the part.
func (s *sketch) drawClusterCollars() {
	if !slices.ContainsFunc(s.marks, s.atEdge) {
		return
	}
	for k := range s.req.Plan.Joint.Clusters {
		s.addWhite(s.aroundCluster(k, clusterGap+collarWidth))
	}
}

// leastSeen is the smallest fraction of a line that must stay visible between
// the marks and their white borders.
const leastSeen = 0.25

// hidden reports whether marks hide too much of the outline or of a bore; see
// leastSeen.
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

// seen is the fraction of a line that no mark and no white border covers.
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
