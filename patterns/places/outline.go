package places

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
)

// leastLoopMm is the smallest loop that counts as an outline crossing itself; a
// traced edge has smaller ones in narrow places.
const leastLoopMm = 2

// outline reports an impossible outline.
func (c check) outline() {
	for k, path := range c.Joint.Outline {
		if i, other, found := geometry.Crossing(path, leastLoopMm); found {
			c.Fail(c.Outline[k], OutlineCrosses, finding.Values{"first": place(path[i]), "second": place(path[other])})
		}
	}
}

// offThePart reports things off the part: outside its outline, or outside the
// drawn edge if the file gives no outline. If all fasteners are off it that is
// an error: the outline belongs to another part, or is in another unit.
func (c check) offThePart() {
	if c.OutlineUnread {
		return
	}
	c.outlineSlants()
	if len(c.Joint.Outline) == 0 {
		c.offOwnEdge()
		return
	}
	off := func(p geometry.Point) bool { return !geometry.OnPart(p, c.Joint.Outline, toleranceMm) }
	stray, isStray := geometry.FindStray(c.Joint.Points()) // reported as stray
	var ids []string
	var entries []*nodes.Node
	part := false // only some of the fasteners of one entry
	for i, f := range c.Joint.Fasteners {
		if off(f.At) && !(isStray && stray.Index == i) {
			ids = append(ids, f.ID)
			part = part || c.oneOfSeveral(i)
			if !slices.Contains(entries, c.Fasteners[i]) {
				entries = append(entries, c.Fasteners[i])
			}
		}
	}
	switch {
	case len(ids) > 0 && len(ids) == len(c.Joint.Fasteners):
		c.Fail(c.Outlines, OutlineHoldsNone, finding.Values{"count": len(ids)})
	case len(entries) > 1, part: // more likely one wrong outline than several wrong places; whatever else is off may follow from it
		c.Warn(c.Outlines, FastenersOff, finding.Values{"count": len(ids), "ids": ids, "outline": true})
		return
	case len(ids) > 0:
		c.Warn(entries[0], FastenersOff, finding.Values{"count": len(ids), "ids": ids, "outline": false})
	}
	for i, b := range c.Joint.Bores {
		if c.outside(b.Centre) {
			c.Warn(c.Bores[i], BoreOff, finding.Values{"label": b.Label, "place": place(b.Centre)})
		}
	}
	for i, d := range c.Joint.Dowels {
		if off(d.Centre) || c.overEdge(d) {
			c.Warn(c.Dowels[i], DowelOff, finding.Values{"place": place(d.Centre)})
		}
	}
	for i, s := range c.Joint.Stations {
		if c.outside(s.At) {
			c.Warn(c.Stations[i], StationOff, finding.Values{"id": s.ID})
		}
	}
}

// outlineSlants warns of the one slanting edge of an outline with four corners
// whose other edges follow the axes: one coordinate of a corner is probably
// wrong.
func (c check) outlineSlants() {
	const corners = 4
	for k, path := range c.Joint.Outline {
		if len(path) != corners {
			continue
		}
		var slants []int
		for i, p := range path {
			q := path[(i+1)%corners]
			if math.Abs(p.X-q.X) > toleranceMm && math.Abs(p.Y-q.Y) > toleranceMm {
				slants = append(slants, i)
			}
		}
		if len(slants) == 1 {
			i := slants[0]
			c.Warn(c.Outline[k], OutlineSlants, finding.Values{"first": place(path[i]), "second": place(path[(i+1)%corners])})
		}
	}
}

// oneOfSeveral reports whether a fastener's entry makes others that are on the
// part.
func (c check) oneOfSeveral(i int) bool {
	for k, at := range c.Fasteners {
		if at == c.Fasteners[i] && geometry.OnPart(c.Joint.Fasteners[k].At, c.Joint.Outline, toleranceMm) {
			return true
		}
	}
	return false
}

// overEdge reports whether a dowel projects beyond the edge of the part.
func (c check) overEdge(d geometry.Dowel) bool {
	return slices.ContainsFunc(c.Joint.Outline, func(path []geometry.Point) bool {
		return geometry.FromEdge(d.Centre, path) < d.Diameter/2-toleranceMm
	})
}

// outside ignores the openings: a bore may be one.
func (c check) outside(p geometry.Point) bool {
	for _, path := range c.Joint.Outline {
		if geometry.Inside(p, path) || geometry.FromEdge(p, path) <= toleranceMm {
			return false
		}
	}
	return true
}

// offOwnEdge checks against the edge that is drawn round the fasteners.
func (c check) offOwnEdge() {
	points := c.Joint.Points()
	if len(points) == 0 {
		return
	}
	for i, b := range c.Joint.Bores {
		if geometry.InsideOwnEdge(b.Centre, points) < 0 {
			c.Warn(c.Bores[i], BoreOffOwnEdge, finding.Values{"label": b.Label, "place": place(b.Centre)})
		}
	}
	for i, d := range c.Joint.Dowels {
		if geometry.InsideOwnEdge(d.Centre, points) < d.Diameter/2 {
			c.Warn(c.Dowels[i], DowelOffOwnEdge, finding.Values{"diameter": unit.Length(d.Diameter), "place": place(d.Centre)})
		}
	}
}
