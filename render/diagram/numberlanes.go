package diagram

import (
	"math"

	"drawdown/render/scene"
)

// Where fasteners lie so close on a string that a number is wider than the way
// from one to the next, leaders must be combed: every other one goes to the
// other side, and on one side the numbers stand in shells, one behind the
// other, so that the leaders of the outer pass between the numbers of the
// inner. A lane is the comb's place for one number; the search begins there.
type lane struct {
	inward bool
	shell  int
	upward bool
	across float64 // direction of the lane, in degrees
	first  float64 // reach of the first shell, in millimetres
	pitch  float64 // from shell to shell
	shells int
}

// lane gives a fastener's lane, where its string is so close that it needs one.
func (s *sketch) lane(i int, extent scene.Point) (lane, bool) {
	across, strung := s.across(i)
	if !strung {
		return lane{}, false
	}
	if math.Abs(math.Remainder(across-s.away(i), 360)) > 90 {
		across += 180
	}
	step := s.closest() * s.view.scale
	const between = 2*leaderAir + 0.25 // for a leader and its air
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

// inLanes lists the places for a text in the comb: its own lane first.
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
