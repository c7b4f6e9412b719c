package places

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

// numbersApart compares rows of the same numbers: caps, bores, stations 1 to 5. Along the
// row they are as far apart at each number; the one that is not has the wrong place. It
// reports whether there is one.
func (c check) numbersApart() bool {
	caps := c.namedCaps()
	stations := series(geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label }),
		geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At }), c.Stations, make([]float64, len(c.Joint.Stations)))
	bores := series(geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) string { return b.Label }),
		geometry.Mapped(c.Joint.Bores, func(b geometry.Bore) geometry.Point { return b.Centre }), c.Bores, make([]float64, len(c.Joint.Bores)))
	for i, station := range stations {
		for _, of := range slices.Concat(caps, bores, stations[:i]) {
			if c.apart(station, of) {
				return true
			}
		}
	}
	for _, capRow := range caps {
		for _, bore := range bores {
			if c.apart(capRow, bore) {
				return true
			}
		}
	}
	return false
}

// apart warns of the one of a row that is off the place beside its number in another. Of
// two rows the even one is right, and one of three needs it.
func (c check) apart(row, of *numbered) bool {
	if row.even() && !of.even() {
		row, of = of, row
	}
	const fewest, enough = 3, 4
	if len(row.at) < fewest || len(row.at) != len(of.at) || len(row.at) < enough && !of.even() {
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

// even reports whether a row has one pitch.
func (s *numbered) even() bool {
	order := s.alongRow(fewestOfSeries)
	if order == nil {
		return false
	}
	first := s.at[order[1]].Distance(s.at[order[0]])
	for k := 2; k < len(order); k++ {
		if math.Abs(s.at[order[k]].Distance(s.at[order[k-1]])-first) > toleranceMm {
			return false
		}
	}
	return true
}

// mirroredStations warns of the one pair of stations in a row that is not mirrored about
// the middle of all others.
func (c check) mirroredStations() {
	const fewest = 6
	at := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At })
	if _, found := geometry.FindOdd(at); found || len(at) < fewest || !geometry.OneLine(at) {
		return
	}
	axis := geometry.LongAxis(at)
	along := func(i int) float64 { return at[i].Dot(axis) }
	order := geometry.Sorted(len(at), along)
	var sums []float64 // of the first and the last, and so on inwards
	for k := range (len(order) + 1) / 2 {
		sums = append(sums, along(order[k])+along(order[len(order)-1-k]))
	}
	usual := slices.Sorted(slices.Values(sums))[len(sums)/2]
	odd := -1
	for k := range sums {
		switch {
		case math.Abs(sums[k]-usual) <= toleranceMm:
		case odd >= 0:
			return // no pair alone
		default:
			odd = k
		}
	}
	if odd < 0 || 2*odd == len(order)-1 {
		return
	}
	a, b := order[odd], order[len(order)-1-odd]
	c.Warn(c.Stations[max(a, b)], StationOffMirror, finding.Values{
		"id": c.Joint.Stations[max(a, b)].ID, "other": c.Joint.Stations[min(a, b)].ID, "off": unit.Length(math.Abs(sums[odd] - usual)),
	})
}
