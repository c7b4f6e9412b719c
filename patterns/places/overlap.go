package places

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
)

// fasteners reports fasteners whose holes or shanks overlap, which is
// impossible, or whose heads overlap, which is possible only at different
// heights. Two entries of the file are reported once.
func (c check) fasteners() {
	reported := map[[2]*nodes.Node]bool{}
	c.pairs(func(s size) float64 { return s.through }, reported, func(i, other int, v finding.Values) {
		v["holes"] = "no"
		if c.sizes[i].hole && c.sizes[other].hole {
			v["holes"] = "yes"
		}
		c.Fail(c.Fasteners[i], HolesOverlap, v)
	})
	c.pairs(func(s size) float64 { return s.head }, reported, func(i, other int, v finding.Values) {
		c.Warn(c.Fasteners[i], HeadsOverlap, v)
	})
}

// pairs finds fasteners that are nearer to each other than half the sum of
// their widths. Those on the same spot are reported elsewhere.
func (c check) pairs(across func(size) float64, reported map[[2]*nodes.Node]bool, report func(i, other int, v finding.Values)) {
	widest := 0.0
	for _, s := range c.sizes {
		widest = max(widest, across(s))
	}
	if widest == 0 {
		return
	}
	const dust = 1e-6
	squares := geometry.Squares{Side: widest}
	for i, f := range c.Joint.Fasteners {
		need := func(k int) float64 { return (across(c.sizes[i]) + across(c.sizes[k])) / 2 }
		other, found := squares.Find(f.At, func(k int) bool {
			apart := c.Joint.Fasteners[k].At.Distance(f.At)
			return apart >= toleranceMm && apart < need(k)-dust && across(c.sizes[i]) > 0 && across(c.sizes[k]) > 0
		})
		squares.Add(f.At, i)
		if !found {
			continue
		}
		here, there := c.Fasteners[i], c.Fasteners[other]
		if pair := [2]*nodes.Node{here, there}; !reported[pair] {
			reported[pair] = true
			second := c.Joint.Fasteners[other]
			report(i, other, finding.Values{
				"id": f.ID, "other": second.ID, "first": there.Stood(here),
				"apart": unit.Length(second.At.Distance(f.At)), "need": unit.Length(need(other)),
			})
		}
	}
}
