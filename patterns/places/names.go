package places

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// names warns of a label that occurs twice: on the part, or at the stations.
func (c check) names() {
	labels := slices.Concat(
		geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) string { return b.Label }),
		geometry.Mapped(c.Joint.Labels, func(l geometry.Label) string { return l.Text }))
	c.twice(labels, slices.Concat(c.Bores, c.Labels))
	c.twice(geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label }), c.Stations)
}

func (c check) twice(labels []string, at []*nodes.Node) {
	first := map[string]*nodes.Node{}
	for i, label := range labels {
		switch earlier := first[label]; {
		case label == "":
		case earlier != nil:
			c.Warn(at[i], LabelTwice, finding.Values{"label": problem.Quoted(label), "first": earlier.Stood(at[i])})
		default:
			first[label] = at[i]
		}
	}
}

// partBox is the box round the fasteners and the outline; false for fewer than two points.
func (c check) partBox() (geometry.Box, bool) {
	points := c.Joint.Points()
	for _, path := range c.Joint.Outline {
		points = append(points, path...)
	}
	if len(points) < 2 {
		return geometry.Box{}, false
	}
	return geometry.Bounds(points), true
}

// labelsFar warns of a label or a station off the part by more than half the
// part's size.
func (c check) labelsFar() {
	box, known := c.partBox()
	if !known {
		return
	}
	near := box.Grown(max(box.Width(), box.Height()) / 2)
	outside := func(p geometry.Point) bool {
		return p.X < near.Min.X || p.X > near.Max.X || p.Y < near.Min.Y || p.Y > near.Max.Y
	}
	for i, s := range c.Joint.Stations {
		if outside(s.At) && len(c.Joint.Outline) == 0 { // otherwise it is off the outline, which is reported
			c.Warn(c.Stations[i], StationFar, finding.Values{"id": s.ID, "place": place(s.At)})
		}
	}
	for i, l := range c.Joint.Labels {
		if outside(l.At) {
			c.Warn(c.Labels[i], LabelFar, finding.Values{"label": problem.Quoted(l.Text), "place": place(l.At)})
		}
	}
}

// stations warns of two parts with the same place.
func (c check) stations() {
	squares := geometry.Squares{Side: toleranceMm}
	for i, s := range c.Joint.Stations {
		other, found := squares.Find(s.At, func(k int) bool { return c.Joint.Stations[k].At.Distance(s.At) < toleranceMm })
		if !found {
			squares.Add(s.At, i)
			continue
		}
		c.Warn(c.Stations[i], StationsTogether, finding.Values{
			"id": s.ID, "other": c.Joint.Stations[other].ID, "first": c.Stations[other].Stood(c.Stations[i]),
		})
	}
}

// alongTheMachine matches views towards or from the front in the languages of
// the sheets: in these the front is on no side of the picture.
var alongTheMachine = expression.Lazily(`(?i)\bfrom (the )?(very )?(front|rear|back)\b|\b(front|rear|back) view\b|` +
	`\bvon (vorne?|hinten)\b|\b(vorder|rück)ansicht\b|` +
	`\b(de|par|depuis) (l[’']avant|l[’']arrière|devant|derrière)|\bde face\b|` +
	`\bdesde (el frente|delante|atrás|detrás)|\bvista (frontal|trasera)\b`)

func (c check) view() {
	if c.Front != nil && alongTheMachine.MatchString(c.View) {
		c.Warn(c.Front, FrontFacesView, finding.Values{"view": problem.Quoted(c.View), "front": string(c.Joint.Front)})
	}
}
