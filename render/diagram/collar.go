package diagram

import (
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
