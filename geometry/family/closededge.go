package family

import (
	"math"
	"slices"

	"drawdown/geometry"
)

const (
	// edgeShare is how deep inside the outline of the outermost, in spacings, a
	// place lies at the most that belongs to the edge: places measured a third
	// of the pitch off, each way, lie no deeper.
	edgeShare = 0.7
	// cornerShare is how far from a corner of the rectangle its place lies at the
	// most, in spacings.
	cornerShare = 0.5
	// innerShare is how many places may lie inside, as a share of those along the
	// edge.
	innerShare = 0.5
	// fewestEdge is the least number of places that make an edge.
	fewestEdge = 5
)

// perimeter: along the sides of a rectangle, with a place at three corners or
// all four.
func (s *seer) perimeter() (Seen, bool) {
	if len(s.points) < 6 {
		return Seen{Edge: geometry.Round(s.points)}, false
	}
	rect := smallestRectangle(s.points)
	edge, inner, offMm := s.parted(rect.depth)
	var corners []int
	for corner := range 4 {
		i, apart := rect.nearestTo(corner, s.points)
		if apart <= cornerShare*s.spacing && slices.Contains(edge, i) && !slices.Contains(corners, i) {
			corners = append(corners, i)
		}
	}
	fits := len(corners) >= leastCorners(len(edge)) && len(edge) > len(corners) &&
		float64(len(inner)) <= innerShare*float64(len(edge))
	if !s.named && (!fits || s.smoothRound(edge, inner)) {
		return Seen{}, false
	}
	return Seen{Family: Perimeter, Edge: inRound(s.points, edge), Corners: corners, Inner: inner, OffMm: offMm}, true
}

// parted parts the places by their depth into those of an edge, with how far these
// lie off it at the most, and those inside.
func (s *seer) parted(depth func(geometry.Point) float64) (edge, inner []int, offMm float64) {
	for i, p := range s.points {
		if d := depth(p); d > edgeShare*s.spacing {
			inner = append(inner, i)
		} else {
			edge, offMm = append(edge, i), max(offMm, d)
		}
	}
	return edge, inner, offMm
}

// leastCorners is how many of the four corners have a place at the least. On a
// part of a few places three of them are soon found by chance.
func leastCorners(edge int) int {
	if edge < 10 {
		return 4
	}
	return 3
}

// curve: along one closed edge.
func (s *seer) curve() (Seen, bool) {
	if len(s.points) < fewestEdge {
		return Seen{Edge: geometry.Round(s.points)}, false
	}
	round := outline(s.points)
	edge, inner, offMm := s.parted(func(p geometry.Point) float64 { return depthIn(round, p) })
	if s.smoothRound(edge, inner) {
		return Seen{Family: Curve, Edge: s.round}, true
	}
	seen := Seen{Family: Curve, Edge: inRound(s.points, edge), Inner: inner, OffMm: offMm}
	return seen, len(edge) >= fewestEdge && float64(len(inner)) <= innerShare*float64(len(edge)) || s.named
}

// inRound sorts the places of an edge along it.
func inRound(points []geometry.Point, edge []int) []int {
	return geometry.Picked(edge, geometry.Round(geometry.Picked(points, edge)))
}

const (
	// sharpDeg is how much an edge turns at one place at the most; where it
	// turns more, the way went into the inside and back.
	sharpDeg = 105
	// mostDeep is how many times as many places as lie near the outline of all may
	// lie deep, for all of them to form one edge.
	mostDeep = 3
	// othersShare is how many pairs of neighbours, as a share of the places, may
	// not follow each other along an edge.
	othersShare = 0.1
)

// smoothRound reports whether the round through all places is one edge, though some
// of them lie deep: at none of these it turns sharply, and hardly a place has
// another neighbour than the two along the edge.
func (s *seer) smoothRound(near, deep []int) bool {
	if len(deep) == 0 || len(deep) > mostDeep*len(near) {
		return false
	}
	if s.round == nil {
		s.round = geometry.Round(s.points)
	}
	points, round := s.points, s.round
	n, place := len(round), make([]int, len(round))
	for k, i := range round {
		place[i] = k
	}
	for _, i := range deep {
		last, next := round[(place[i]+n-1)%n], round[(place[i]+1)%n]
		if geometry.Apart(points[i].AngleFrom(points[last]), points[next].AngleFrom(points[i])) > sharpDeg {
			return false
		}
	}
	others := 0
	for i, p := range points {
		for k := range i {
			steps := (place[i] - place[k] + n) % n
			if steps > 1 && steps < n-1 && geometry.Neighbours(p, points[k], s.spacing) {
				others++
			}
		}
	}
	return float64(others) <= othersShare*float64(n)
}

// side is one of a convex outline: a point on it, and the direction across it.
type side struct{ at, across geometry.Point }

// outline returns the sides of the convex outline of places.
func outline(points []geometry.Point) []side {
	hull := geometry.Hull(points)
	return geometry.Mapped(geometry.Count(len(hull)), func(k int) side {
		along := hull[(k+1)%len(hull)].Sub(hull[k])
		length := math.Max(along.Distance(geometry.Point{}), 1e-9)
		return side{hull[k], geometry.Point{X: -along.Y / length, Y: along.X / length}}
	})
}

// depthIn returns how deep inside a convex outline a point lies.
func depthIn(outline []side, p geometry.Point) float64 {
	least := math.Inf(1)
	for _, side := range outline {
		least = math.Min(least, math.Abs(p.Sub(side.at).Dot(side.across)))
	}
	return least
}

// rectangle lies in the direction along, round a middle.
type rectangle struct {
	middle, along geometry.Point
	half          geometry.Point // of its length and width
}

// smallestRectangle returns the one with the least area round the points; a side
// of it lies along a side of their hull. Of equal ones, which are many round a
// triangle, the one with the shortest sides.
func smallestRectangle(points []geometry.Point) rectangle {
	hull := geometry.Hull(points)
	var best rectangle
	least := math.Inf(1)
	for k, a := range hull {
		side := hull[(k+1)%len(hull)].Sub(a)
		length := side.Distance(geometry.Point{})
		if length == 0 {
			continue
		}
		r := rectangleAlong(hull, side.Scale(1/length))
		area := r.half.X * r.half.Y
		shorter := area < least*(1+1e-6) && r.half.X+r.half.Y < (best.half.X+best.half.Y)*(1-1e-6)
		if area < least*(1-1e-6) || shorter {
			best, least = r, area
		}
	}
	return best
}

func rectangleAlong(points []geometry.Point, along geometry.Point) rectangle {
	across := geometry.Point{X: -along.Y, Y: along.X}
	box := geometry.Box{Min: geometry.Point{X: math.Inf(1), Y: math.Inf(1)}, Max: geometry.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	for _, p := range points { // as many times as the hull has sides
		x, y := p.Dot(along), p.Dot(across)
		box.Min.X, box.Max.X = min(box.Min.X, x), max(box.Max.X, x)
		box.Min.Y, box.Max.Y = min(box.Min.Y, y), max(box.Max.Y, y)
	}
	c := box.Min.Add(box.Max).Scale(0.5)
	return rectangle{
		middle: along.Scale(c.X).Add(across.Scale(c.Y)), along: along,
		half: geometry.Point{X: box.Width() / 2, Y: box.Height() / 2},
	}
}

// within returns a point's place along and across, from the middle.
func (r rectangle) within(p geometry.Point) geometry.Point {
	d := p.Sub(r.middle)
	return geometry.Point{X: d.Dot(r.along), Y: d.Dot(geometry.Point{X: -r.along.Y, Y: r.along.X})}
}

// depth returns how deep inside the nearest side a point lies.
func (r rectangle) depth(p geometry.Point) float64 {
	at := r.within(p)
	return min(r.half.X-math.Abs(at.X), r.half.Y-math.Abs(at.Y))
}

// nearestTo returns the point nearest to one of the four corners.
func (r rectangle) nearestTo(corner int, points []geometry.Point) (nearest int, apart float64) {
	at := geometry.Point{X: r.half.X * float64(1-2*(corner%2)), Y: r.half.Y * float64(1-2*(corner/2))}
	apart = math.Inf(1)
	for i, p := range points {
		if d := r.within(p).Distance(at); d < apart {
			nearest, apart = i, d
		}
	}
	return nearest, apart
}
