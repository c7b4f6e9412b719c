package survey

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// oriented rotates, moves and mirrors places so that the level holes are level,
// the first at the origin and on the left, and the holes named above and below
// are on their sides. decided reports that these holes distinguish the part
// from its mirror image.
func (n Network) oriented(at []geometry.Point, core []bool) (framed []geometry.Point, decided bool) {
	origin, turn := at[n.Level[0]], 0.0
	if n.Level[0] != n.Level[1] {
		turn = at[n.Level[1]].AngleFrom(origin)
	} else {
		turn = geometry.LongAxis(those(at, core)).AngleFrom(geometry.Point{})
	}
	s, c := math.Sincos(-turn * math.Pi / 180)
	framed = make([]geometry.Point, len(at))
	for i, p := range at {
		d := p.Sub(origin)
		framed[i] = geometry.Point{X: c*d.X - s*d.Y, Y: s*d.X + c*d.Y}
	}
	if n.Level[0] != n.Level[1] {
		framed[n.Level[1]].Y = 0 // removes the rounding of the rotation
	}
	side, _ := n.sideways(framed)
	if side < 0 || side == 0 && lean(framed, core) < 0 {
		for i := range framed {
			framed[i].Y = 0 - framed[i].Y // avoids −0
		}
	}
	return framed, math.Abs(side) > 20*n.accuracy()
}

// sideways adds up how far the named holes are on their sides of the line, and
// counts those on the wrong side.
func (n Network) sideways(framed []geometry.Point) (sum float64, astray int) {
	for k, h := range slices.Concat(n.Above, n.Below) {
		way := framed[h].Y
		if k >= len(n.Above) {
			way = -way
		}
		sum += way
		if way < 0 {
			astray++
		}
	}
	return sum, astray
}

func (n Network) astray(framed []geometry.Point) int {
	_, count := n.sideways(framed)
	return count
}

// lean is the height of the first hole that is clearly off the level line.
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
