package places

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

// isCylinder matches the label of a cylinder, in the languages of the sheets.
var isCylinder = expression.Lazily(`(?i)^(?:cyl|zyl|cil)`)

// stationsOffLine warns of the one station beside the line through all others.
func (c check) stationsOffLine() {
	s := &numbered{nodes: c.Stations}
	for _, x := range c.Joint.Stations {
		s.at, s.names = append(s.at, x.At), append(s.names, x.ID)
	}
	c.offLine(s)
}

// numbersDiffer warns of two rows of stations of as many, such as in 1 to 4 and ex 1 to
// 5 without 4: all numbers but one are the same.
func (c check) numbersDiffer() {
	labels := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label })
	at := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At })
	all := series(labels, at, c.Stations, make([]float64, len(labels)))
	for i, s := range all {
		for _, other := range all[:i] {
			if len(s.numbers) != len(other.numbers) || len(s.numbers) < fewestOfSeries {
				continue
			}
			of, own := other.without(s.numbers), s.without(other.numbers)
			if len(own) == 1 && len(of) == 1 {
				c.Warn(s.nodes[own[0]], NumberAlone, finding.Values{"name": problem.Quoted(s.names[own[0]]), "other": problem.Quoted(other.names[of[0]])})
			}
		}
	}
}

// without lists those whose numbers are none of some.
func (s *numbered) without(numbers []int) (all []int) {
	for i, n := range s.numbers {
		if !slices.Contains(numbers, n) {
			all = append(all, i)
		}
	}
	return all
}

// frontAcross warns of a front beside a row of cylinders: an engine's front is at an end
// of its crankshaft, along which the cylinders are (first principles).
func (c check) frontAcross(s *numbered) {
	order := s.alongRow(fewestOfSeries)
	towards, known := directions[c.Joint.Front]
	if order == nil || c.Front == nil || !known || !isCylinder.MatchString(s.names[0]) {
		return
	}
	along := s.at[order[len(order)-1]].Sub(s.at[order[0]])
	if math.Abs(along.Dot(towards)) < math.Hypot(along.X, along.Y)*math.Sqrt2/4 {
		c.Warn(c.Front, FrontAcross, finding.Values{"first": problem.Quoted(s.names[order[0]]), "last": problem.Quoted(s.names[order[len(order)-1]]), "front": string(c.Joint.Front)})
	}
}

// idsExchanged warns of two ids of one row that are exchanged: all others of the row rise
// or fall.
func (c check) idsExchanged() {
	const fewest = 5
	for _, row := range rowsByID(c.Joint) {
		var indexes, numbers []int
		var at []geometry.Point
		for n, i := range row.index {
			indexes, numbers, at = append(indexes, i), append(numbers, n), append(at, c.Joint.Fasteners[i].At)
		}
		if len(at) < fewest || !geometry.OneLine(at) {
			continue
		}
		axis := geometry.LongAxis(at)
		order := geometry.Sorted(len(at), func(k int) float64 { return at[k].Dot(axis) })
		along := geometry.Mapped(order, func(k int) int { return numbers[k] })
		if along[0] > along[len(along)-1] {
			slices.Reverse(along)
			slices.Reverse(order)
		}
		sorted := slices.Sorted(slices.Values(along))
		var off []int
		for k := range along {
			if along[k] != sorted[k] {
				off = append(off, indexes[order[k]])
			}
		}
		if len(off) == 2 {
			a, b := c.Joint.Fasteners[min(off[0], off[1])], c.Joint.Fasteners[max(off[0], off[1])]
			c.Warn(c.Fasteners[max(off[0], off[1])], IDsExchanged, finding.Values{"id": b.ID, "other": a.ID, "letters": strings.TrimRight(a.ID, "0123456789")})
		}
	}
}

// pairOfDigits warns of a pair of dowels, or of the only two fasteners of a kind, that
// are mirror images of each other but for two digits of one coordinate.
func (c check) pairOfDigits() {
	if d := c.Joint.Dowels; len(d) == 2 {
		if written, meant, found := almostMirrored(d[0].Centre, d[1].Centre); found {
			c.Warn(c.Dowels[1], PairOfDigits, finding.Values{"written": written, "meant": meant})
		}
	}
	of := map[string][]int{}
	for i, f := range c.Joint.Fasteners {
		of[f.Kind] = append(of[f.Kind], i)
	}
	for i, f := range c.Joint.Fasteners {
		pair := of[f.Kind]
		if len(pair) != 2 || i != pair[1] || len(c.Joint.Fasteners) < 4 || !written(c.Fasteners[i]) || !written(c.Fasteners[pair[0]]) {
			continue
		}
		if was, meant, found := almostMirrored(c.Joint.Fasteners[pair[0]].At, f.At); found {
			c.Warn(c.Fasteners[i], PairOfDigits, finding.Values{"written": was, "meant": meant})
		}
	}
}

// almostMirrored reports whether two places agree in one coordinate, but for its sign, and
// in the other but for two digits.
func almostMirrored(a, b geometry.Point) (written, meant float64, found bool) {
	alike := func(x, y float64) bool { return x != 0 && math.Abs(x) == math.Abs(y) }
	swapped := func(x, y float64) bool { return slices.Contains(exchanges(math.Abs(x)), math.Abs(y)) }
	switch {
	case alike(a.X, b.X) && swapped(b.Y, a.Y):
		return b.Y, a.Y, true
	case alike(a.Y, b.Y) && swapped(b.X, a.X):
		return b.X, a.X, true
	}
	return 0, 0, false
}

// allInTheMiddle warns of fasteners that are many times further out than all else on the
// part: their unit, or a decimal point, has probably slipped.
func (c check) allInTheMiddle() {
	const least, share = 2, 0.12 // things; of the way to the fasteners (common practice, no source)
	box := geometry.Bounds(c.Joint.Points())
	middle, reach, n := box.Min.Add(box.Max).Scale(0.5), 0.0, 0
	out := func(p geometry.Point, radius float64) {
		n, reach = n+1, max(reach, p.Distance(middle)+radius)
	}
	for _, b := range c.Joint.Bores {
		out(b.Centre, b.Diameter/2)
	}
	for _, d := range c.Joint.Dowels {
		out(d.Centre, d.Diameter/2)
	}
	for _, s := range c.Joint.Stations {
		out(s.At, 0)
	}
	for _, l := range c.Joint.Labels {
		out(l.At, 0)
	}
	if half := max(box.Width(), box.Height()) / 2; n >= least && reach > 0 && len(c.Joint.Fasteners) > 2 && reach < share*half && len(c.Joint.Outline) == 0 {
		c.Warn(c.Fasteners[0], AllInTheMiddle, finding.Values{"reach": unit.Length(reach), "out": unit.Length(half)})
	}
}
