package places

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// mostOfPart is how many times as wide as everything else on the part a bore
// may be: arcs of flanges have been drawn round wide bores (common practice, no
// source).
const mostOfPart = 2

// bores reports bores that are impossible on such a part, and bores over
// fasteners.
func (c check) bores() {
	points := c.Joint.Points()
	for _, path := range c.Joint.Outline {
		points = append(points, path...)
	}
	span := 2 * geometry.Enclose(points).Radius
	for i, b := range c.Joint.Bores {
		if span > 0 && b.Diameter > mostOfPart*span {
			c.Fail(c.Bores[i], BoreTooWide, finding.Values{"diameter": unit.Length(b.Diameter), "span": unit.Length(span)})
			continue
		}
		c.boreOverFasteners(i, b)
	}
	c.boreOffCentre()
}

// fewestOfCircle is the number of bolts from which a bore is surely meant to be
// in their middle.
const fewestOfCircle = 4

// boreOffCentre warns if the only bore of a part is off the middle of its bolt
// circle or of its two bolts.
func (c check) boreOffCentre() {
	points := c.Joint.Points()
	if len(c.Joint.Bores) != 1 || len(points) < 2 {
		return
	}
	b, of := c.Joint.Bores[0], "bolts"
	centre := geometry.Centroid(points)
	if len(points) > 2 {
		even, count := geometry.EvenCircle(points, geometry.LevelShare)
		if even == nil || count != len(points) || len(points) < fewestOfCircle {
			return
		}
		of = "circle"
	}
	reach := points[0].Distance(centre)
	if off := b.Centre.Distance(centre); off > 2*toleranceMm && off < reach && b.Diameter > reach {
		c.Warn(c.Bores[0], BoreOffCentre, finding.Values{"label": b.Label, "off": unit.Length(off), "of": of})
	}
}

func (c check) boreOverFasteners(i int, b geometry.Bore) {
	var over, cut []string
	for k, f := range c.Joint.Fasteners {
		switch d := f.At.Distance(b.Centre); {
		case d < b.Diameter/2-toleranceMm:
			over = append(over, f.ID)
		case d < (b.Diameter+c.sizes[k].through)/2-toleranceMm:
			cut = append(cut, f.ID)
		}
	}
	if len(over) > 0 {
		c.Fail(c.Bores[i], BoreOverBolt, finding.Values{"diameter": unit.Length(b.Diameter), "label": b.Label, "ids": over})
	}
	if len(cut) > 0 {
		c.Warn(c.Bores[i], BoreCutsHole, finding.Values{"diameter": unit.Length(b.Diameter), "label": b.Label, "ids": cut})
	}
}
