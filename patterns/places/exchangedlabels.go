package places

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// exchangedLabels warns of the one number whose two stations are the other way round than
// all others of two rows: in 1 below ex 1, and every other in above its ex.
func (c check) exchangedLabels() {
	labels := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) string { return s.Label })
	at := geometry.Mapped(c.Joint.Stations, func(s geometry.Station) geometry.Point { return s.At })
	all := series(labels, at, c.Stations, make([]float64, len(labels)))
	for i, one := range all {
		for _, other := range all[i+1:] {
			if c.exchangedIn(one, other) {
				return
			}
		}
	}
}

func (c check) exchangedIn(one, other *numbered) bool {
	if len(one.at) < fewestOfSeries || len(one.at) != len(other.at) {
		return false
	}
	of := map[int]int{}
	for k, n := range other.numbers {
		of[n] = k
	}
	apart := make([]geometry.Point, len(one.at))
	for i, n := range one.numbers {
		k, known := of[n]
		if !known {
			return false
		}
		apart[i] = one.at[i].Sub(other.at[k])
	}
	for i := range apart {
		usual := apart[(i+1)%len(apart)]
		if math.Hypot(usual.X, usual.Y) <= 2*toleranceMm || apart[i].Distance(usual.Scale(-1)) > toleranceMm || !alikeBut(apart, i, usual) || c.alongTheRow(one, i, usual) {
			continue
		}
		k := of[one.numbers[i]]
		c.Warn(one.nodes[i], LabelsExchanged, finding.Values{"label": problem.Quoted(one.names[i]), "other": problem.Quoted(other.names[k])})
		return true
	}
	return false
}

func alikeBut(apart []geometry.Point, but int, usual geometry.Point) bool {
	for k, a := range apart {
		if k != but && a.Distance(usual) > toleranceMm {
			return false
		}
	}
	return true
}

// alongTheRow reports whether two stations are beside each other in their row, where
// makers turn the order round from cylinder to cylinder.
func (c check) alongTheRow(s *numbered, but int, apart geometry.Point) bool {
	var first, last geometry.Point
	found := false
	for k, p := range s.at {
		if k == but {
			continue
		}
		if !found {
			first, found = p, true
		}
		last = p
	}
	along := last.Sub(first)
	return math.Abs(along.Dot(apart)) > 0.5*math.Hypot(along.X, along.Y)*math.Hypot(apart.X, apart.Y)
}
