package measured

import (
	"fmt"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

const measuredExample = "[[A, B, 95.02], {from: A, to: C, outside: 142.10}]"

// The ways to measure between two holes.
const (
	centreMeasure  = "centre"  // centre to centre
	outsideMeasure = "outside" // over the far edges
	insideMeasure  = "inside"  // between the near edges
)

var measures = []string{centreMeasure, outsideMeasure, insideMeasure}

func (s *reader) readMeasured(f form.Fields) {
	if s.blank && !f.Has("measured") && !f.Mistyped("measured") {
		return
	}
	n := f.Need("measured", measuredExample)
	if n == nil {
		return
	}
	items := s.TrueList(n, "measured", measuredExample)
	if len(items) > survey.MostReadings {
		s.Fail(n, TooManyReadings, finding.Values{"count": len(items), "most": survey.MostReadings})
		return
	}
	for _, item := range items {
		if item.Shape == nodes.List {
			s.readTriple(item)
		} else {
			s.readEdges(item)
		}
	}
}

// readTriple reads [A, B, 95.02], centre to centre.
func (s *reader) readTriple(item *nodes.Node) {
	if len(item.Items) != 3 {
		s.Fail(item, NoReading, finding.Values{"found": item.Found()})
		return
	}
	s.addReading(item, item.Items[0], item.Items[1], centreMeasure, item.Items[2])
}

// readEdges reads {from: A, to: C, outside: 142.10} and similar readings.
func (s *reader) readEdges(item *nodes.Node) {
	f, ok := s.Fields(item, finding.Term("a reading"), append([]string{"from", "to"}, measures...)...)
	if !ok {
		return
	}
	from, to := f.Need("from", "A"), f.Need("to", "C")
	given := slices.DeleteFunc(slices.Clone(measures), func(key string) bool { return !f.Has(key) })
	switch {
	case len(given) > 1:
		s.Fail(item, TwoReadings, finding.Values{"first": given[0], "second": given[1]})
	case len(given) == 1:
		if distance := f.Get(given[0]); from != nil && to != nil && distance != nil {
			s.addReading(item, from, to, given[0], distance)
		}
	case !f.Mistyped(measures...):
		s.Fail(item, NoDistance, finding.Values{"allowed": measures})
	}
}

func (s *reader) addReading(item, from, to *nodes.Node, how string, distance *nodes.Node) {
	a, okA := s.hole(from)
	b, okB := s.hole(to)
	length, okLength := s.LengthMm(distance, finding.Failed(Between, finding.Values{"from": problem.Shortened(from.Text), "to": problem.Shortened(to.Text)}), unit.Sensible.Reading)
	if !okA || !okB || !okLength {
		return
	}
	if a == b {
		s.Fail(item, ReadingToItself, finding.Values{"id": from.Text})
		return
	}
	centre, ok := s.centreDistance(item, a, b, how, length)
	if !ok || s.isRepeated(item, a, b, how, centre) {
		return
	}
	s.noteDigit(distance)
	s.made.Network.Readings = append(s.made.Network.Readings, survey.Reading{From: a, To: b, Distance: centre})
	s.made.Network.Ways = append(s.made.Network.Ways, survey.Way(how))
	s.made.ReadingsAt = append(s.made.ReadingsAt, item.Place())
}

// noteDigit keeps the finest last digit of all readings, because trailing zeros
// are often omitted.
func (s *reader) noteDigit(distance *nodes.Node) {
	digit, err := unit.LastDigit(distance.Text, s.BareUnit)
	network := &s.made.Network
	if mm := float64(digit); err == nil && (network.RoundedToMm == 0 || mm < network.RoundedToMm) {
		network.RoundedToMm = mm
	}
}

// isRepeated warns about a repeated reading with the same figure, which counts
// once. A pair measured again with another figure counts twice.
func (s *reader) isRepeated(item *nodes.Node, a, b int, how string, centreMm float64) bool {
	this := measure{min(a, b), max(a, b), fmt.Sprint(how, centreMm)}
	if first := s.first[this]; first != nil {
		s.Warn(item, ReadingTwice, finding.Values{"from": s.made.IDs[a], "to": s.made.IDs[b], "first": first.Stood(item)})
		return true
	}
	s.first[this] = item
	return false
}

// centreDistance converts a measurement over edges to one from centre to
// centre.
func (s *reader) centreDistance(item *nodes.Node, a, b int, how string, length float64) (float64, bool) {
	diameterA, diameterB := s.made.Network.Diameters[a], s.made.Network.Diameters[b]
	centre := length
	if how != centreMeasure {
		for _, h := range []int{a, b} {
			if s.made.Network.Diameters[h] == 0 {
				if !s.broken {
					s.Fail(item, DiameterMissing, finding.Values{"how": how, "id": s.made.IDs[h]})
				}
				return 0, false
			}
		}
		centre -= survey.Way(how).OverCentre(diameterA, diameterB)
	}
	if edge := (diameterA + diameterB) / 2; diameterA > 0 && diameterB > 0 && centre <= edge {
		s.Fail(item, HolesOverlap, finding.Values{"first": s.made.IDs[a], "second": s.made.IDs[b], "centre": centre, "least": edge})
		return 0, false
	}
	return centre, true
}
