package contact

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"drawdown/geometry"
)

// Plane measures how level and how flat a part is over its bolts.
type Plane struct{ tilts [][]float64 } // orthonormal: up, along, across

// PlaneThrough returns the measure for fasteners at these places.
func PlaneThrough(at []geometry.Point) Plane {
	raw := make([][]float64, 3)
	for _, p := range at {
		raw[0] = append(raw[0], 1)
		raw[1] = append(raw[1], p.X)
		raw[2] = append(raw[2], p.Y)
	}
	var l Plane
	for _, tilt := range raw { // Gram–Schmidt; a row of bolts has no tilt across
		size := floats.Norm(tilt, 2)
		for range 2 { // the second time removes rounding
			for _, t := range l.tilts {
				floats.AddScaled(tilt, -floats.Dot(t, tilt), t)
			}
		}
		if left := floats.Norm(tilt, 2); left > 1e-9*size {
			floats.Scale(1/left, tilt)
			l.tilts = append(l.tilts, tilt)
		}
	}
	return l
}

// Warp is the largest distance of the closures from their least-squares plane,
// in their unit.
func (l Plane) Warp(closure []float64) float64 {
	rest := slices.Clone(closure)
	for _, t := range l.tilts {
		floats.AddScaled(rest, -floats.Dot(t, closure), t)
	}
	return largest(rest)
}

// Tilt is the height difference, over the bolts, of the least-squares plane
// through the closures, in their unit.
func (l Plane) Tilt(closure []float64) float64 {
	plane := make([]float64, len(closure))
	for _, t := range l.tilts {
		floats.AddScaled(plane, floats.Dot(t, closure), t)
	}
	return Unevenness(plane)
}

// Unevenness is the largest closure minus the smallest: tilt and warp together.
func Unevenness(closure []float64) float64 {
	if len(closure) == 0 {
		return 0
	}
	return floats.Max(closure) - floats.Min(closure)
}
