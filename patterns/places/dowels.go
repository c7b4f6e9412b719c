package places

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// overlaps warns of bores that overlap, and of dowels that overlap fasteners. A
// bore may be inside another, and a dowel may be a sleeve round its bolt.
func (c check) overlaps() {
	for i, b := range c.Joint.Bores {
		for k, other := range c.Joint.Bores[:i] {
			apart, least := b.Centre.Distance(other.Centre), (b.Diameter+other.Diameter)/2
			within := max(b.Diameter, other.Diameter) - least
			if apart < least-toleranceMm && apart > within+toleranceMm || apart < toleranceMm && within < toleranceMm {
				c.Warn(c.Bores[i], BoresOverlap, finding.Values{"first": c.Bores[k].Stood(c.Bores[i]), "apart": unit.Length(apart), "need": unit.Length(least)})
				break
			}
		}
	}
	c.dowelsDiffer()
	for i, d := range c.Joint.Dowels {
		if k := slices.IndexFunc(c.Joint.Bores, func(b geometry.Bore) bool { return d.Centre.Distance(b.Centre)+d.Diameter/2 < b.Diameter/2 }); k >= 0 {
			c.Warn(c.Dowels[i], DowelInBore, finding.Values{"diameter": unit.Length(d.Diameter), "label": c.Joint.Bores[k].Label})
		}
		for k, f := range c.Joint.Fasteners {
			apart, through := d.Centre.Distance(f.At), c.sizes[k].through
			sleeve := apart < toleranceMm && d.Diameter > through
			if through > 0 && !sleeve && apart < (d.Diameter+through)/2-toleranceMm {
				c.Warn(c.Dowels[i], DowelOnBolt, finding.Values{"diameter": unit.Length(d.Diameter), "id": f.ID})
				break
			}
		}
	}
}

// timesDowel is how many times as wide as the other dowel of a pair one may be:
// one with flats or a sleeve has another size, but not twice as large (common
// practice, no source).
const timesDowel = 2

func (c check) dowelsDiffer() {
	dowels := c.Joint.Dowels
	if len(dowels) != 2 {
		return
	}
	if a, b := dowels[0].Diameter, dowels[1].Diameter; max(a, b) >= timesDowel*min(a, b) {
		c.Warn(c.Dowels[1], DowelsDiffer, finding.Values{"diameter": unit.Length(b), "other": unit.Length(a)})
	}
}

// mostSpacing is the greatest usual distance between a fastener and its
// nearest, in diameters (common practice, no source: sealing joints have 4 to
// 10, cabinet doors and feet of machines some tens).
const mostSpacing = 100

// farApart warns if every fastener is far from its nearest: the places are
// probably in another unit.
func (c check) farApart() {
	nearest := geometry.NearestDistances(c.Joint.Points())
	if len(nearest) < 2 {
		return
	}
	least := 0
	for i, apart := range nearest {
		if through := c.sizes[i].through; through == 0 || apart < mostSpacing*through {
			return
		}
		if apart < nearest[least] {
			least = i
		}
	}
	c.Warn(c.Fasteners[least], FarApart, finding.Values{
		"apart": unit.Length(nearest[least]), "through": unit.Length(c.sizes[least].through), "times": int(nearest[least] / c.sizes[least].through),
	})
}
