package places

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

// numbersApart compares rows of the same numbers: caps, bores, stations 1 to 5. Along the
// row they are as far apart at each number; the one that is not has the wrong place.
func (c check) numbersApart() {
	caps := c.namedCaps()
	stations := series(geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label }),
		geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At }), c.Stations, make([]float64, len(c.Joint.Stations)))
	bores := series(geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) string { return b.Label }),
		geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) geometry.Point { return b.Centre }), c.Bores, make([]float64, len(c.Joint.Bores)))
	for _, station := range stations {
		for _, of := range append(append([]*numbered{}, caps...), bores...) {
			if c.apart(station, of) {
				return
			}
		}
	}
	for _, capRow := range caps {
		for _, bore := range bores {
			if c.apart(capRow, bore) {
				return
			}
		}
	}
}

// apart warns of the one of a row that is off the place beside its number in another.
func (c check) apart(row, of *numbered) bool {
	const fewest = 4
	if len(row.at) < fewest || len(row.at) != len(of.at) {
		return false
	}
	at := map[int]geometry.Point{}
	for i, n := range of.numbers {
		at[n] = of.at[i]
	}
	axis := geometry.LongAxis(of.at)
	var offs []float64
	for i, n := range row.numbers {
		p, there := at[n]
		if !there {
			return false
		}
		offs = append(offs, row.at[i].Sub(p).Dot(axis))
	}
	odd := -1
	for i := range offs {
		same := 0
		for k := range offs {
			if k != i && math.Abs(offs[k]-offs[(i+1)%len(offs)]) <= toleranceMm {
				same++
			}
		}
		if same == len(offs)-1 && math.Abs(offs[i]-offs[(i+1)%len(offs)]) > 2*toleranceMm {
			odd = i
		}
	}
	if odd < 0 {
		return false
	}
	usual := offs[(odd+1)%len(offs)]
	other := ""
	for i, n := range of.numbers {
		if n == row.numbers[odd] {
			other = of.names[i]
		}
	}
	c.Warn(row.nodes[odd], NumbersApart, finding.Values{"name": problem.Quoted(row.names[odd]), "other": problem.Quoted(other), "off": unit.Length(math.Abs(offs[odd] - usual))})
	return true
}
