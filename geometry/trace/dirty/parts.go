package dirty

import (
	"math"

	"drawdown/geometry"
)

// line is a closed line of the part.
type line []geometry.Point

func (l line) size() geometry.Point {
	b := geometry.Bounds(l)
	return geometry.Point{X: b.Width(), Y: b.Height()}
}

type part struct {
	outline line
	holes   []Hole
	ports   []line
}

// parts are invented: a rectangular cover, a round flange and a narrow head.
var parts = []func(p *painter) part{cover, flange, head}

func cover(p *painter) part {
	w, h := 90+20*p.Float64(), 55+15*p.Float64()
	across, down := 4+p.IntN(2), 3
	diameter := 6.6 + 3*p.Float64()
	made := part{outline: box(-w, -h, w, h, 10)}
	for i := range across {
		x := -w + 10 + (2*w-20)*float64(i)/float64(across-1)
		made.bolt(x, h-10, diameter)
		made.bolt(x, -h+10, diameter)
	}
	for k := 1; k < down-1; k++ {
		made.bolt(-w+10, 0, diameter)
		made.bolt(w-10, 0, diameter)
	}
	made.holes = append(made.holes, Hole{At: geometry.Point{X: 0.35 * w, Y: 0}, DiameterMm: 44})
	made.ports = append(made.ports, box(-0.7*w, -0.4*h, -0.1*w, 0.4*h, 8))
	return made
}

func flange(p *painter) part {
	n, radius, diameter := 6+2*p.IntN(4), 62+10*p.Float64(), 9+4*p.Float64()
	made := part{outline: circle(geometry.Point{}, radius+14)}
	for i := range n {
		at := geometry.Polar(geometry.Point{}, radius, 90+360*float64(i)/float64(n))
		made.bolt(at.X, at.Y, diameter)
	}
	made.holes = append(made.holes, Hole{DiameterMm: 2 * (radius - 22)})
	return made
}

func head(p *painter) part {
	made := part{outline: box(-125, -52, 125, 52, 12)}
	for i := range 5 {
		x := -110 + 55*float64(i)
		made.bolt(x, 40, 11.5)
		made.bolt(x, -40, 11.5)
	}
	for i := range 4 {
		made.holes = append(made.holes, Hole{At: geometry.Point{X: -82.5 + 55*float64(i)}, DiameterMm: 46})
	}
	return made
}

func (m *part) bolt(x, y, diameter float64) {
	m.holes = append(m.holes, Hole{At: geometry.Point{X: x, Y: y}, DiameterMm: diameter, Bolt: true})
}

func box(left, bottom, right, top, radius float64) line {
	var l line
	for k, c := range []geometry.Point{{X: right - radius, Y: top - radius}, {X: left + radius, Y: top - radius}, {X: left + radius, Y: bottom + radius}, {X: right - radius, Y: bottom + radius}} {
		for i := range 25 {
			l = append(l, geometry.Polar(c, radius, 90*float64(k)+90*float64(i)/24))
		}
	}
	return fine(l)
}

func circle(at geometry.Point, radius float64) line {
	l := make(line, 240)
	for i := range l {
		l[i] = geometry.Polar(at, radius, 1.5*float64(i))
	}
	return l
}

func straight(corners ...geometry.Point) line { return fine(corners) }

// fine adds points every 2 mm, so that a lens bends the line.
func fine(l line) line {
	var out line
	for i, a := range l {
		b := l[(i+1)%len(l)]
		n := max(1, int(math.Ceil(a.Distance(b)/2)))
		for k := range n {
			out = append(out, a.Add(b.Sub(a).Scale(float64(k)/float64(n))))
		}
	}
	return out
}
