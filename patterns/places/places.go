// Package places checks the positions on a part: overlapping fasteners, bores
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

// toleranceMm is at least the error of measured places.
const toleranceMm = 0.5

// Part is a joint with the file's nodes for each of its lists.
type Part struct {
	Joint geometry.Joint
	Kinds []plan.Kind
	View  string

	Fasteners, Clusters, Outline, Bores, Dowels, Labels, Stations []*nodes.Node
	Outlines                                                      *nodes.Node // all of them; nil if the file gives none
	Front                                                         *nodes.Node // nil if the file gives none
	Omits                                                         bool        // leaves out fasteners of the file that this one extends
	OutlineUnread                                                 bool        // some of it could not be read, so nothing can be checked against it
}

// Check reports impossible things as errors, and possible slips as warnings.
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
	c.exchangedLabels()
	if !c.numbersApart() {
		c.mirroredStations()
	}
	c.oddKinds()
	c.innerOuter()
	c.missingIDs()
	c.lostFastener()
	c.labelsFar()
	c.sideLabels()
	c.dowelsTogether()
	c.exchangedDigits()
	c.pairOfDigits()
	c.idsExchanged()
	c.stationsOffLine()
	c.numbersDiffer()
	c.allInTheMiddle()
	c.circlePhase()
	c.stations()
	c.view()
}

type check struct {
	Part
	*nodes.Problems
	sizes []size // parallel to Joint.Fasteners
}

// place returns a place as a value of a finding.
func place(p geometry.Point) finding.Finding {
	return finding.Noted(AtPlace, finding.Values{"x": p.X, "y": p.Y})
}
