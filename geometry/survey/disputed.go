package survey

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// agreeing is the least number of readings that locate a hole from which
// several others were left out. Two readings always meet in a place, and a third
// may agree with them by chance.
const agreeing = 4

// disputed returns the holes at which several readings were left out and too few
// agree, each with its readings; also those whose diameter may be wrong.
func (s Solution) disputed(readings []Reading, wrong []WrongDiameter) map[int][]int {
	found := map[int][]int{}
	if s.Straight {
		return found
	}
	for h := range s.Points {
		var of []int
		out := 0
		for i, r := range readings {
			if r.From == h || r.To == h {
				if of = append(of, i); s.Out[i] {
					out++
				}
			}
		}
		orDiameter := slices.ContainsFunc(wrong, func(w WrongDiameter) bool { return w.Hole == h && w.OrReading })
		if kept := len(of) - out; orDiameter || out >= 2 && (kept < agreeing || out >= kept) {
			found[h] = of
		}
	}
	return found
}

// widen adds to the errors what it would change if another reading were the
// wrong one: one of the rivals, or one at a disputed hole. Where several rivals
// meet in a hole, two of them may be wrong; then the hole can be off by as much
// as the reading that is furthest off.
func (s *Solution) widen(readings []Reading, rivals []int, disputed map[int][]int, stiff stiffness, statedMm []float64) {
	for _, k := range rivals {
		var rest []Reading
		for i, r := range readings {
			if !s.Out[i] && i != k {
				rest = append(rest, r)
			}
		}
		moved := s.over(adjust(s.Points, rest, nil, fully))
		for h, p := range moved {
			s.ErrorsMm[h] = math.Max(s.ErrorsMm[h], p.Distance(s.Points[h]))
		}
	}
	doubtful := map[int][]int{}
	for _, k := range s.Suspect {
		for _, h := range []int{readings[k].From, readings[k].To} {
			doubtful[h] = append(doubtful[h], k)
		}
	}
	for h, of := range doubtful {
		for _, k := range of {
			if len(of) > 1 && len(rivals) > 0 {
				s.ErrorsMm[h] = math.Max(s.ErrorsMm[h], math.Abs(s.Residuals[k])/math.Max(stiff.checked(readings[k]), hardlyChecked))
			}
		}
	}
	for _, w := range s.WrongDiameters {
		if w.OrReading {
			s.ErrorsMm[w.Hole] = math.Max(s.ErrorsMm[w.Hole], math.Abs(w.FitsMm-statedMm[w.Hole]))
		}
	}
	for h, of := range disputed {
		for _, i := range of {
			s.ErrorsMm[h] = math.Max(s.ErrorsMm[h], math.Abs(s.Residuals[i]))
		}
	}
}

// rivals are the suspect readings that were not left out.
func (s Solution) rivals() (numbers []int) {
	for _, i := range s.Suspect {
		if !s.Out[i] {
			numbers = append(numbers, i)
		}
	}
	return numbers
}

// over moves and turns places so that they are nearest to those of the
// solution.
func (s *Solution) over(at []geometry.Point) []geometry.Point {
	from, to := geometry.Centroid(at), geometry.Centroid(s.Points)
	var dot, cross float64
	for i, p := range at {
		a, b := p.Sub(from), s.Points[i].Sub(to)
		dot, cross = dot+a.X*b.X+a.Y*b.Y, cross+a.X*b.Y-a.Y*b.X
	}
	length := math.Hypot(dot, cross)
	if length == 0 {
		return at
	}
	c, w := dot/length, cross/length
	moved := make([]geometry.Point, len(at))
	for i, p := range at {
		a := p.Sub(from)
		moved[i] = to.Add(geometry.Point{X: c*a.X - w*a.Y, Y: w*a.X + c*a.Y})
	}
	return moved
}
