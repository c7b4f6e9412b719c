package photo

import (
	"math"
	"slices"

	"drawdown/geometry"
)

// line is a straight line through a place, with its direction of length 1.
type line struct{ at, along geometry.Point }

// lineThrough lays a line by least squares of the distances from it.
func lineThrough(points []geometry.Point) line {
	var mean geometry.Point
	for _, p := range points {
		mean = mean.Add(p)
	}
	mean = mean.Scale(1 / max(float64(len(points)), 1))
	var xx, xy, yy float64
	for _, p := range points {
		d := p.Sub(mean)
		xx, xy, yy = xx+d.X*d.X, xy+d.X*d.Y, yy+d.Y*d.Y
	}
	s, c := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	return line{mean, geometry.Point{X: c, Y: s}}
}

// off is the distance of a place from the line, with its side as the sign.
func (l line) off(p geometry.Point) float64 {
	d := p.Sub(l.at)
	return l.along.X*d.Y - l.along.Y*d.X
}

// cross returns where two lines meet.
func (l line) cross(o line) (geometry.Point, bool) {
	det := l.along.X*o.along.Y - l.along.Y*o.along.X
	if math.Abs(det) < 0.1 { // 6°: no corner of a rectangle looks like that
		return geometry.Point{}, false
	}
	d := o.at.Sub(l.at)
	return l.at.Add(l.along.Scale((d.X*o.along.Y - d.Y*o.along.X) / det)), true
}

// middling is the median distance of places from a line.
func middling(points []geometry.Point, l line) float64 {
	off := make([]float64, len(points))
	for i, p := range points {
		off[i] = math.Abs(l.off(p))
	}
	return median(off)
}

func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	slices.Sort(values)
	return values[len(values)/2]
}
