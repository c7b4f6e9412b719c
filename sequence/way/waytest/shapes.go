package waytest

import (
	"math"
	"math/rand/v2"
	"slices"

	"drawdown/geometry"
)

type point = geometry.Point

// along returns count evenly spaced places along a closed line, the first at
// its start.
func along(outline []point, count int) []point {
	length, n := 0.0, len(outline)
	for k, p := range outline {
		length += p.Distance(outline[(k+1)%n])
	}
	var places []point
	k, passed := 0, 0.0
	for c := range count {
		want := length * float64(c) / float64(count)
		for step := outline[k].Distance(outline[(k+1)%n]); passed+step < want-1e-9; step = outline[k].Distance(outline[(k+1)%n]) {
			k, passed = k+1, passed+step
		}
		a, b := outline[k], outline[(k+1)%n]
		places = append(places, a.Add(b.Sub(a).Scale((want-passed)/a.Distance(b))))
	}
	return places
}

// oval is an ellipse with dents.
func oval(length, width, dent2, dent3, turnDeg float64) []point {
	const fine = 720
	outline := make([]point, fine)
	for k := range outline {
		t := 2 * math.Pi * float64(k) / fine
		f := 1 + dent2*math.Cos(2*t+0.7) + dent3*math.Cos(3*t+0.4)
		outline[k] = turned(point{X: length / 2 * f * math.Cos(t), Y: width / 2 * f * math.Sin(t)}, turnDeg)
	}
	return outline
}

func turned(p point, deg float64) point {
	s, c := math.Sincos(deg * math.Pi / 180)
	return point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y}
}

func shifted(points []point, x, y float64) []point {
	return geometry.Mapped(points, func(p point) point { return p.Add(point{X: x, Y: y}) })
}

// off moves each place by up to a share of the spacing, in x and in y.
func off(points []point, share float64, seed uint64) []point {
	r, spacing := rand.New(rand.NewPCG(seed, 41)), geometry.Spacing(points)
	return geometry.Mapped(points, func(p point) point {
		return p.Add(point{X: share * spacing * (2*r.Float64() - 1), Y: share * spacing * (2*r.Float64() - 1)})
	})
}

func without(points []point, gone ...int) []point {
	var left []point
	for k, p := range points {
		if !slices.Contains(gone, k) {
			left = append(left, p)
		}
	}
	return left
}

// at converts pairs of coordinates to points.
func at(xy ...float64) []point {
	var points []point
	for k := 0; k+1 < len(xy); k += 2 {
		points = append(points, point{X: xy[k], Y: xy[k+1]})
	}
	return points
}
