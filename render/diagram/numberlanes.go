package diagram

import (
	"math"

	"drawdown/render/scene"
)

// lane is the place of one number in a comb. Where fasteners on a string are
// closer together than their numbers are wide, every second number goes to the
// other side. On each side the numbers are in shells, one behind the other, and
// the leaders of an outer shell pass between the numbers of the inner ones. The
// search starts from the lanes.
type lane struct {
	inward bool
	shell  int
	upward bool
	across float64 // direction of the lane, in degrees
	first  float64 // reach of the first shell, in millimetres
	pitch  float64 // from shell to shell
	shells int
}

func (s *sketch) lane(i int, extent scene.Point) (lane, bool) {
	across, strung := s.across(i)
	if !strung {
		return lane{}, false
	}
	if math.Abs(math.Remainder(across-s.away(i), 360)) > 90 {
		across += 180
	}
	step := s.closest() * s.view.scale
	const between = 2*leaderAir + 0.25 // for a leader and its clearance
	sin, cos := math.Sincos(across * math.Pi / 180)
	sin, cos = math.Abs(sin), math.Abs(cos)
	flat := extent.X*sin + extent.Y*cos // along the string
	tall := extent.Y*sin + extent.X*cos
	l := lane{across: across, first: 3, upward: tall < flat}
	if l.upward {
		flat, tall = tall, flat
	}
	l.pitch = tall + 0.6
	if 2*step > flat+between || 2*step < between+0.1 {
		return lane{}, false
	}
	l.shells = int(math.Ceil((flat + 2*leaderAir - between) / (2*step - between)))
	k := s.alongString()[i]
	l.inward = k%2 == 1
	l.shell = k / 2 % l.shells
	return l, true
}

// inLanes lists the placements for a text in the comb, its own lane first.
func (s *sketch) inLanes(i int, extent scene.Point, l lane) []placement {
	var out []placement
	add := func(p placement) {
		if s.fits(i, p, cramped) {
			out = append(out, p)
		}
	}
	for shell := range l.shells + 2 {
		reach := l.first + float64(shell)*l.pitch
		for _, inward := range []bool{false, true} {
			for k, turn := range spokes {
				deg := l.across + turn
				cost := math.Abs(float64(shell-l.shell))*2 + float64(k)*0.3
				if inward {
					deg += 180
				}
				if inward != l.inward {
					cost += 5
				}
				flat, tall := cost, cost+upwardCost
				if l.upward {
					flat, tall = tall, flat
				}
				add(s.beside(i, extent, deg, reach, flat))
				add(s.upward(i, extent, deg, reach, tall))
			}
		}
	}
	return out
}

// alongString numbers the fasteners from neighbour to neighbour.
func (s *sketch) alongString() []int {
	if s.along != nil {
		return s.along
	}
	s.along = make([]int, len(s.marks))
	for i := range s.along {
		s.along[i] = nowhere
	}
	here := 0
	for k := range s.marks {
		s.along[here] = k
		next, least := nowhere, math.Inf(1)
		for j, m := range s.marks {
			if s.along[j] != nowhere {
				continue
			}
			dx, dy := m.at.X-s.marks[here].at.X, m.at.Y-s.marks[here].at.Y
			if d := dx*dx + dy*dy; d < least {
				next, least = j, d
			}
		}
		here = max(0, next)
	}
	return s.along
}

// Fasteners are often on a string: a circle, the perimeter of a part, a row.
// There is no room along the string, but plenty on both sides of it.

// across returns the direction across the string of a fastener, in degrees, and
// whether it is on a string.
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

// mostlyStrung reports whether most fasteners are on strings. Otherwise they
// fill a field.
func (s *sketch) mostlyStrung() bool {
	n := 0
	for i := range s.marks {
		if _, strung := s.across(i); strung {
			n++
		}
	}
	return 2*n > len(s.marks)
}

// findString returns the direction across the string through a fastener, or
// NaN. Its nearest neighbours must be on opposite sides of it, and no other
// fastener may be close except ahead or behind.
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
