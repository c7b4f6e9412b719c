package drawn

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/patterns/dxf"
	"drawdown/patterns/form"
)

// closed is a closed line that may be the edge of a part: a path or a circle.
type closed struct {
	points []geometry.Point
	box    geometry.Box
	path   int // its index; -1 for a circle
	circle int // its index; -1 for a path
}

// leaveOtherViews drops what a drawing shows beside the part: the frame of the
// sheet, the title block, views from the side. The edge of the part is the
// outermost closed line that holds the fasteners. Layers of our own hold the
// part alone.
func (d *drawn) leaveOtherViews() {
	if d.ours || len(d.Circles)+len(d.Points) > form.MostFasteners { // too many are refused later
		return
	}
	framed := d.leaveFrame()
	parts := d.parts()
	if len(parts) == 0 {
		return
	}
	if len(parts) > 1 {
		d.report(0, finding.Warned(SeveralParts, finding.Values{"count": len(parts)}))
	}
	lines, circles := d.dropOutside(parts), 0
	if framed || lines > 0 {
		circles = d.dropStrays(parts)
	}
	if lines+circles > 0 {
		d.report(0, finding.Warned(OtherViews, finding.Values{"lines": lines, "circles": circles}))
	}
}

// parts returns the outermost closed lines that hold fasteners: the one with
// most of them, and others with holes of the same sizes. There is none if no
// line holds at least half of the places.
func (d *drawn) parts() []closed {
	outer := d.outermost()
	best, most := -1, 1
	for i, one := range outer {
		if n := len(d.heldBy(one)); n > most {
			best, most = i, n
		}
	}
	if best < 0 || 2*most < len(d.Circles)+len(d.Points) {
		return nil
	}
	sizes := d.heldBy(outer[best])
	return slices.DeleteFunc(outer, func(one closed) bool {
		return !slices.ContainsFunc(d.heldBy(one), func(h holes.Circle) bool { return sameSize(h.DiameterMm, sizes) })
	})
}

func sameSize(diameterMm float64, list []holes.Circle) bool {
	const sameSizeMm = 0.05
	return slices.ContainsFunc(list, func(h holes.Circle) bool { return math.Abs(h.DiameterMm-diameterMm) <= sameSizeMm })
}

// mostEdges limits how many closed lines are looked at as edges: the largest.
const mostEdges = 100

// candidates returns the closed lines that can be an edge, the largest first.
func (d *drawn) candidates() []closed {
	var all []closed
	for i, p := range d.Paths {
		all = append(all, closed{p.Points, geometry.Bounds(p.Points), i, -1})
	}
	slices.SortStableFunc(all, larger)
	all = all[:min(mostEdges, len(all))]
	circles := make([]int, len(d.Circles))
	for i := range circles {
		circles[i] = i
	}
	slices.SortStableFunc(circles, func(a, b int) int { return cmp.Compare(d.Circles[b].DiameterMm, d.Circles[a].DiameterMm) })
	const mostRound = 10
	for _, i := range circles[:min(mostRound, len(circles))] {
		c := d.Circles[i]
		flat := dxf.Flat(c.Centre, c.DiameterMm)
		one := closed{flat, geometry.Bounds(flat), -1, i}
		if len(d.heldBy(one)) >= 2 {
			all = append(all, one)
		}
	}
	slices.SortStableFunc(all, larger)
	return all
}

func larger(a, b closed) int { return cmp.Compare(area(b.points), area(a.points)) }

// outermost returns the closed lines that are in no other.
func (d *drawn) outermost() []closed {
	var all []closed
	for _, one := range d.candidates() {
		if !slices.ContainsFunc(all, func(o closed) bool { return o.holds(one) }) {
			all = append(all, one)
		}
	}
	return all
}

// slackMm is how far lines may be off that touch.
const slackMm = 0.1

// holds reports whether another closed line is inside this one.
func (c closed) holds(other closed) bool {
	box, grown := other.box, c.box.Grown(slackMm)
	if box.Min.X < grown.Min.X || box.Min.Y < grown.Min.Y || box.Max.X > grown.Max.X || box.Max.Y > grown.Max.Y {
		return false
	}
	inside := 0
	for _, p := range other.points {
		if geometry.Inside(p, c.points) || geometry.FromEdge(p, c.points) <= slackMm {
			inside++
		}
	}
	return 2*inside > len(other.points)
}

// heldBy returns the circles and points in a closed line that can be fasteners:
// not the line itself, nor what has the same centre, nor what it cuts.
func (d *drawn) heldBy(one closed) (held []holes.Circle) {
	middle := one.box.Min.Add(one.box.Max).Scale(0.5)
	for i, c := range d.Circles {
		if i == one.circle || one.circle >= 0 && c.Centre.Distance(middle) <= c.DiameterMm/2 {
			continue
		}
		if geometry.Inside(c.Centre, one.points) && geometry.FromEdge(c.Centre, one.points) >= c.DiameterMm/2-slackMm {
			held = append(held, holes.Circle{Centre: c.Centre, DiameterMm: c.DiameterMm})
		}
	}
	for _, p := range d.Points {
		if geometry.Inside(p.At, one.points) {
			held = append(held, holes.Circle{Centre: p.At})
		}
	}
	return held
}

// leaveFrame drops the frame of the sheet, if there is one: an upright rectangle
// round a much smaller closed line that holds the fasteners, with other lines,
// circles or texts beside that one, or with it clearly off the middle. Rectangles
// round the frame are dropped as well.
func (d *drawn) leaveFrame() bool {
	all := d.candidates()
	for i := len(all) - 1; i >= 0; i-- {
		frame := all[i]
		if frame.path < 0 || !upright(frame) || !slices.ContainsFunc(all[i+1:], func(part closed) bool { return d.isFrame(frame, part, all) }) {
			continue
		}
		gone := map[int]bool{}
		for _, one := range all[:i+1] {
			if one.path >= 0 && upright(one) && (one.path == frame.path || one.holds(frame)) {
				gone[one.path] = true
			}
		}
		d.report(d.Paths[frame.path].Line, finding.Warned(FrameLeftOut, finding.Values{
			"width": unit.Length(frame.box.Width()), "height": unit.Length(frame.box.Height()),
		}))
		var kept []dxf.Path
		for k, p := range d.Paths {
			if !gone[k] {
				kept = append(kept, p)
			}
		}
		d.Paths = kept
		return true
	}
	return false
}

// isFrame reports whether the rectangle is a frame round the part.
func (d *drawn) isFrame(frame, part closed, all []closed) bool {
	const share = 0.6 // of the frame; a step along the edge of a plate leaves less beside it
	if !frame.holds(part) || area(part.points) > share*area(frame.points) {
		return false
	}
	inFrame, inPart := len(d.heldBy(frame)), len(d.heldBy(part))
	return inPart >= 2 && 2*inPart >= inFrame && (d.beside(frame, part, all) || offMiddle(frame, part))
}

// upright reports whether a closed line is a rectangle with level sides.
func upright(c closed) bool {
	corner := func(v, low, high float64) bool { return math.Abs(v-low) <= slackMm || math.Abs(v-high) <= slackMm }
	for _, p := range c.points {
		if !corner(p.X, c.box.Min.X, c.box.Max.X) && !corner(p.Y, c.box.Min.Y, c.box.Max.Y) {
			return false
		}
	}
	return math.Abs(area(c.points)-c.box.Width()*c.box.Height()) <= slackMm*(c.box.Width()+c.box.Height())
}

// beside reports whether the frame holds something outside the part. A title
// block of texts alone counts: a part has no texts beside its edge.
func (d *drawn) beside(frame, part closed, all []closed) bool {
	for _, other := range all {
		if other.path != frame.path && (other.path != part.path || other.circle != part.circle) && frame.holds(other) && !part.holds(other) && !other.holds(part) {
			return true
		}
	}
	for _, t := range d.Texts {
		if geometry.Inside(t.At, frame.points) && !geometry.Inside(t.At, part.points) {
			return true
		}
	}
	return false
}

// offMiddle reports whether the part is clearly off the middle of the frame.
func offMiddle(frame, part closed) bool {
	const share = 0.05 // of the frame
	off := frame.box.Min.Add(frame.box.Max).Sub(part.box.Min.Add(part.box.Max)).Scale(0.5)
	return math.Abs(off.X) > share*frame.box.Width() || math.Abs(off.Y) > share*frame.box.Height()
}

// dropOutside removes the closed lines outside the parts, and returns how many
// there were.
func (d *drawn) dropOutside(parts []closed) int {
	before := len(d.Paths)
	var kept []dxf.Path
	for i, p := range d.Paths {
		one := closed{points: p.Points, box: geometry.Bounds(p.Points)}
		if slices.ContainsFunc(parts, func(part closed) bool { return part.path == i || part.holds(one) }) {
			kept = append(kept, p)
		}
	}
	d.Paths = kept
	return before - len(kept)
}

// dropStrays removes the circles outside the parts whose diameter no circle in
// them has: signs of the title block.
func (d *drawn) dropStrays(parts []closed) int {
	in := func(at geometry.Point) bool {
		return slices.ContainsFunc(parts, func(p closed) bool { return geometry.Inside(at, p.points) })
	}
	var sizes []holes.Circle
	for _, c := range d.Circles {
		if in(c.Centre) {
			sizes = append(sizes, holes.Circle{DiameterMm: c.DiameterMm})
		}
	}
	slices.SortFunc(sizes, func(a, b holes.Circle) int { return cmp.Compare(a.DiameterMm, b.DiameterMm) })
	sizes = slices.Compact(sizes)
	before := len(d.Circles)
	d.Circles = slices.DeleteFunc(slices.Clone(d.Circles), func(c dxf.Circle) bool { return !in(c.Centre) && !sameSize(c.DiameterMm, sizes) })
	return before - len(d.Circles)
}

// layersRead lists the layers of the drawing with their counts.
func (d *drawn) layersRead() finding.Finding {
	var read, unread []string
	for _, l := range d.Layers {
		text := fmt.Sprintf("%s (%d)", l.Name, l.Count)
		if l.Unread {
			unread = append(unread, text)
		} else {
			read = append(read, text)
		}
	}
	return finding.Noted(LayersRead, finding.Values{"layers": read, "unread": unread})
}
