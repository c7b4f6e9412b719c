package patterns

import (
	"fmt"

	"drawdown/geometry/survey"
)

const measuredExample = "[[A, B, 95.02], {from: A, to: C, outside: 142.10}]"

// The ways to measure between two holes.
const (
	centreMeasure  = "centre"  // centre to centre
	outsideMeasure = "outside" // over the far edges
	insideMeasure  = "inside"  // between the near edges
)

func (s *surveyReader) readMeasured(f fields) {
	n := f.need("measured", measuredExample)
	if n == nil {
		return
	}
	items := s.trueList(n, "measured", measuredExample)
	if len(items) > survey.MostReadings {
		s.fail(n, "", "the survey has %d readings; at most %d can be worked out", len(items), survey.MostReadings)
		return
	}
	for _, item := range items {
		if item.shape == listShape {
			s.readTriple(item)
		} else {
			s.readEdges(item)
		}
	}
}

// readTriple reads [A, B, 95.02], centre to centre.
func (s *surveyReader) readTriple(item *node) {
	if len(item.items) != 3 {
		s.fail(item, "", "a reading is two holes and a distance, for example [A, B, 95.02], not %s", item.found())
		return
	}
	s.addReading(item, item.items[0], item.items[1], centreMeasure, item.items[2])
}

// readEdges reads {from: A, to: C, outside: 142.10} and its like.
func (s *surveyReader) readEdges(item *node) {
	f, ok := s.fields(item, "a reading", "from", "to", centreMeasure, outsideMeasure, insideMeasure)
	if !ok {
		return
	}
	from, to := f.need("from", "A"), f.need("to", "C")
	var how string
	for _, key := range []string{centreMeasure, outsideMeasure, insideMeasure} {
		if !f.has(key) {
			continue
		}
		if how != "" {
			s.fail(item, "", "the reading has %s and %s at once; write two readings", how, key)
			return
		}
		how = key
	}
	if how == "" {
		if !f.mistyped(centreMeasure, outsideMeasure, insideMeasure) {
			s.fail(item, "centre, outside, inside", "the reading has no distance")
		}
		return
	}
	if distance := f.get(how); from != nil && to != nil && distance != nil {
		s.addReading(item, from, to, how, distance)
	}
}

func (s *surveyReader) addReading(item, from, to *node, how string, distance *node) {
	a, okA := s.hole(from)
	b, okB := s.hole(to)
	length, okLength := s.sizeMm(distance, fmt.Sprintf("%s to %s", shortened(from.text), shortened(to.text)))
	if !okA || !okB || !okLength {
		return
	}
	if a == b {
		s.fail(item, "", "the reading goes from %s to itself", from.text)
		return
	}
	centre, ok := s.centreDistance(item, a, b, how, length)
	if !ok || s.isRepeated(item, a, b, how, centre) {
		return
	}
	s.made.Network.Readings = append(s.made.Network.Readings, survey.Reading{From: a, To: b, Distance: centre})
	s.made.Ways = append(s.made.Ways, survey.Way(how))
}

// isRepeated warns of the same reading with the same figure: it counts once. A
// pair that was measured again with another figure counts twice.
func (s *surveyReader) isRepeated(item *node, a, b int, how string, centreMm float64) bool {
	this := measure{min(a, b), max(a, b), fmt.Sprint(how, centreMm)}
	if first := s.first[this]; first != nil {
		s.warn(item, "%s to %s stands here twice with the same figure, first %s; it counts once",
			s.made.IDs[a], s.made.IDs[b], first.placeSeenFrom(item))
		return true
	}
	s.first[this] = item
	return false
}

// centreDistance turns a measure over edges into one from centre to centre.
func (s *surveyReader) centreDistance(item *node, a, b int, how string, length float64) (float64, bool) {
	diameterA, diameterB := s.made.Network.Diameters[a], s.made.Network.Diameters[b]
	centre := length
	if how != centreMeasure {
		for _, h := range []int{a, b} {
			if s.made.Network.Diameters[h] == 0 {
				if !s.broken {
					s.fail(item, "", "%s measures over the edges: holes must give the diameter of %s", how, s.made.IDs[h])
				}
				return 0, false
			}
		}
		if how == outsideMeasure {
			centre = survey.CentreFromOutside(length, diameterA, diameterB)
		} else {
			centre = survey.CentreFromInside(length, diameterA, diameterB)
		}
	}
	if edge := (diameterA + diameterB) / 2; diameterA > 0 && diameterB > 0 && centre <= edge {
		s.fail(item, "", "%s and %s would run into each other: %.2f mm from centre to centre, where their diameters alone need %.2f mm",
			s.made.IDs[a], s.made.IDs[b], centre, edge)
		return 0, false
	}
	return centre, true
}
