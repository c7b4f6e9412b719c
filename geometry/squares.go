package geometry

import "math"

// Squares stores numbered places in a grid of squares, to find those within one
// side length of a place without looking at all of them.
type Squares struct {
	Side float64
	in   map[[2]int64][]int
}

func (s *Squares) square(p Point) [2]int64 {
	return [2]int64{int64(math.Floor(p.X / s.Side)), int64(math.Floor(p.Y / s.Side))}
}

// Add stores a place under its number.
func (s *Squares) Add(p Point, number int) {
	if s.in == nil {
		s.in = map[[2]int64][]int{}
	}
	s.in[s.square(p)] = append(s.in[s.square(p)], number)
}

// Find returns the number of a place near p for which near returns true.
func (s *Squares) Find(p Point, near func(number int) bool) (number int, found bool) {
	at := s.square(p)
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			for _, number := range s.in[[2]int64{at[0] + dx, at[1] + dy}] {
				if near(number) {
					return number, true
				}
			}
		}
	}
	return 0, false
}
