package diagram

import "math"

// Fasteners often lie on a string: a circle, the perimeter of a part, a row.
// There is no room along the string, but all the more to both sides of it.

// across gives the direction, in degrees, straight across the string that a
// fastener is on, if it is on one.
func (s *sketch) across(fastener int) (deg float64, strung bool) {
	if s.strings == nil {
		s.strings = make([]float64, len(s.marks))
		for i := range s.marks {
			s.strings[i] = math.NaN()
			if len(s.marks) <= hopeless {
				s.strings[i] = s.findString(i)
			}
		}
	}
	deg = s.strings[fastener]
	return deg, !math.IsNaN(deg)
}

// mostlyStrung says whether most fasteners lie on strings; else they fill a
// field.
func (s *sketch) mostlyStrung() bool {
	n := 0
	for i := range s.marks {
		if _, strung := s.across(i); strung {
			n++
		}
	}
	return 2*n > len(s.marks)
}

// findString gives the direction across the string through a fastener, or NaN:
// its nearest neighbours must lie on both sides of it, and no other near by
// but ahead or behind.
func (s *sketch) findString(i int) float64 {
	const sideways, reach = 35.0, 2.2 // of the distance to the second neighbour
	at := s.marks[i].at
	first, second := nowhere, nowhere
	square := func(k int) float64 {
		dx, dy := s.marks[k].at.X-at.X, s.marks[k].at.Y-at.Y
		return dx*dx + dy*dy
	}
	direction := func(k int) float64 {
		return math.Atan2(at.Y-s.marks[k].at.Y, s.marks[k].at.X-at.X) * 180 / math.Pi
	}
	for k := range s.marks {
		switch {
		case k == i:
		case first == nowhere || square(k) < square(first):
			first, second = k, first
		case second == nowhere || square(k) < square(second):
			second = k
		}
	}
	if second == nowhere {
		return math.NaN()
	}
	ahead, back := direction(first), direction(second)+180
	if math.Abs(math.Remainder(ahead-back, 360)) > 40 {
		return math.NaN()
	}
	for k := range s.marks {
		if k != i && square(k) < reach*reach*square(second) && math.Abs(math.Remainder(direction(k)-ahead, 180)) > sideways {
			return math.NaN()
		}
	}
	return ahead + math.Remainder(back-ahead, 360)/2 + 90
}
