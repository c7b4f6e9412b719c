// Package places checks the positions on a part: fasteners that overlap, bores
// over bolts, things off the part, names used twice. It sees the joint and the
// nodes that its pieces came from. It may import nodes and, of the calculating
// half, the sizes of heads and threads.
package places

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

// toleranceMm is how far measured places are off, and more.
const toleranceMm = 0.5

// Part is a joint with the nodes of the file beside each of its lists.
type Part struct {
	Joint geometry.Joint
	Kinds []plan.Kind
	View  string

	Fasteners, Clusters, Outline, Bores, Dowels, Labels, Stations []*nodes.Node
	Outlines                                                      *nodes.Node // all of them; nil where the file gives none
	Front                                                         *nodes.Node // nil where the file gives none
	Omits                                                         bool        // fasteners of a file that this one builds on
	OutlineUnread                                                 bool        // some of it, so that nothing can be held against it
}

// Check reports what cannot be as errors, and what may be a slip as warnings.
func (p Part) Check(problems *nodes.Problems) {
	c := check{p, problems, sizes(p)}
	c.fasteners()
	c.bores()
	c.overlaps()
	c.farApart()
	c.outline()
	c.offThePart()
	c.names()
	c.series()
	if !c.numbersApart() {
		c.mirroredStations()
	}
	c.oddKinds()
	c.innerOuter()
	c.missingIDs()
	c.labelsFar()
	c.stations()
	c.view()
}

type check struct {
	Part
	*nodes.Problems
	sizes []size // beside Joint.Fasteners
}

// place returns a place as a value of a finding.
func place(p geometry.Point) finding.Finding {
	return finding.Noted(AtPlace, finding.Values{"x": p.X, "y": p.Y})
}
