package compliance

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/unit"
)

// Region reports whether a part or a gasket covers a point. Nil covers all.
type Region func(geometry.Point) bool

// Inside is the region inside closed paths; a path inside another is a hole.
func Inside(paths [][]geometry.Point) Region {
	return func(p geometry.Point) bool {
		inside := false
		for _, path := range paths {
			for i := range path {
				if crosses(path[i], path[(i+1)%len(path)], p) {
					inside = !inside
				}
			}
		}
		return inside
	}
}

// crosses reports whether the edge crosses a ray from p to the right.
func crosses(a, b, p geometry.Point) bool {
	return (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
}

// Bores is the region inside large holes, of a cylinder or a port.
func Bores(bores []geometry.Bore) Region {
	return func(p geometry.Point) bool {
		return slices.ContainsFunc(bores, func(b geometry.Bore) bool { return p.Distance(b.Centre) < b.Diameter/2 })
	}
}

// Openings is the region inside the openings of the part itself.
func Openings(bores []geometry.Bore) Region {
	through := slices.DeleteFunc(slices.Clone(bores), func(b geometry.Bore) bool { return !b.Through })
	return Bores(through)
}

// Between is the region of a ring: between two circles, by their diameters.
func Between(centre geometry.Point, inside, outside unit.Length) Region {
	return func(p geometry.Point) bool {
		across := unit.Length(2 * p.Distance(centre))
		return across > inside && across < outside
	}
}

// Without subtracts another region from this one.
func (r Region) Without(other Region) Region {
	return func(p geometry.Point) bool { return r.covers(p) && !other(p) }
}

// StripAlong is the region within a distance of width from the paths: the
// gasket of a cover, which follows its edge.
func StripAlong(paths [][]geometry.Point, width float64) Region {
	return func(p geometry.Point) bool { return FromEdge(paths, p) <= width }
}

// FromEdge is the distance of a point from the nearest of some closed paths.
func FromEdge(paths [][]geometry.Point, p geometry.Point) float64 {
	nearest := math.Inf(1)
	for _, path := range paths {
		for i := range path {
			nearest = math.Min(nearest, distanceToEdge(path[i], path[(i+1)%len(path)], p))
		}
	}
	return nearest
}

// And is the intersection of two regions.
func (r Region) And(other Region) Region {
	return func(p geometry.Point) bool { return r.covers(p) && other.covers(p) }
}

func (r Region) covers(p geometry.Point) bool { return r == nil || r(p) }

func distanceToEdge(a, b, p geometry.Point) float64 {
	ab, ap := b.Sub(a), p.Sub(a)
	square := ab.X*ab.X + ab.Y*ab.Y
	if square == 0 {
		return p.Distance(a)
	}
	along := math.Max(0, math.Min(1, (ap.X*ab.X+ap.Y*ab.Y)/square))
	return p.Distance(a.Add(ab.Scale(along)))
}

// samples is the number of points across a cell, in each direction, for the
// share of it that a region covers.
const samples = 4

// cover returns the share of a box that the part covers, and the share that
// both part and gasket cover.
func cover(box geometry.Box, part, gasket Region) (ofPart, ofGasket float64) {
	const each = 1.0 / (samples * samples)
	for i := range samples {
		for j := range samples {
			p := geometry.Point{
				X: box.Min.X + box.Width()*(float64(i)+0.5)/samples,
				Y: box.Min.Y + box.Height()*(float64(j)+0.5)/samples,
			}
			if !part.covers(p) {
				continue
			}
			ofPart += each
			if gasket.covers(p) {
				ofGasket += each
			}
		}
	}
	return ofPart, ofGasket
}

// AreaMm2 is the area of a region inside a box.
func (r Region) AreaMm2(box geometry.Box) float64 {
	const across = 300 // points in each direction: an edge is found within 1/600 of the box
	count := 0
	for i := range across {
		for j := range across {
			p := geometry.Point{X: box.Min.X + box.Width()*(float64(i)+0.5)/across, Y: box.Min.Y + box.Height()*(float64(j)+0.5)/across}
			if r.covers(p) {
				count++
			}
		}
	}
	return box.Width() * box.Height() * float64(count) / (across * across)
}

// Covers reports whether the region covers a point.
func (r Region) Covers(p geometry.Point) bool { return r.covers(p) }
