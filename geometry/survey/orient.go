package survey

import (
	"math"

	"drawdown/geometry"
)

// oriented turns, moves and mirrors places so that the level holes lie level, the
// first at the origin and on the left, and the holes above and below lie on
// their sides. Decided says that these tell the part from its mirror image.
func (n Network) oriented(at []geometry.Point, core []bool) (framed []geometry.Point, decided bool) {
	origin, turn := at[n.Level[0]], 0.0
	if n.Level[0] != n.Level[1] {
		turn = at[n.Level[1]].AngleFrom(origin)
	} else {
		axis := geometry.LongAxis(those(at, core))
		turn = axis.AngleFrom(geometry.Point{})
	}
	s, c := math.Sincos(-turn * math.Pi / 180)
	framed = make([]geometry.Point, len(at))
	for i, p := range at {
		d := p.Sub(origin)
		framed[i] = geometry.Point{X: c*d.X - s*d.Y, Y: s*d.X + c*d.Y}
	}
	if n.Level[0] != n.Level[1] {
		framed[n.Level[1]].Y = 0 // not the rounding of the turn
	}
	side := n.sideways(framed)
	if side < 0 || side == 0 && lean(framed, core) < 0 {
		for i, p := range framed {
			framed[i].Y = -p.Y
			if p.Y == 0 {
				framed[i].Y = 0
			}
		}
	}
	return framed, math.Abs(side) > 20*n.accuracy()
}

// sideways sums up how far the named holes lie on their sides of the line.
func (n Network) sideways(framed []geometry.Point) float64 {
	sum := 0.0
	for _, h := range n.Above {
		sum += framed[h].Y
	}
	for _, h := range n.Below {
		sum -= framed[h].Y
	}
	return sum
}

// astray counts the named holes that lie on the wrong side.
func (n Network) astray(framed []geometry.Point) int {
	count := 0
	for _, h := range n.Above {
		if framed[h].Y < 0 {
			count++
		}
	}
	for _, h := range n.Below {
		if framed[h].Y > 0 {
			count++
		}
	}
	return count
}

// lean is the height of the first hole that lies well off the level line.
func lean(framed []geometry.Point, core []bool) float64 {
	box := geometry.Bounds(those(framed, core))
	for i, p := range framed {
		if core[i] && math.Abs(p.Y) > 1e-3*(box.Width()+box.Height()) {
			return p.Y
		}
	}
	return 0
}

func those(at []geometry.Point, in []bool) []geometry.Point {
	var some []geometry.Point
	for i, p := range at {
		if in[i] {
			some = append(some, p)
		}
	}
	return some
}
