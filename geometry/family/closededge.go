package family

import (
	"math"
	"slices"

	"drawdown/geometry"
)

const (
	// edgeShare is how deep inside the outline, in spacings, a place of the
	// edge may be. Places measured a third of the pitch off, each way, are no
	// deeper.
	edgeShare = 0.7
	// cornerShare is how far a place may be from its corner of the rectangle,
	// in spacings.
	cornerShare = 0.5
	// innerShare is how many places may be inside, as a fraction of those along
	// the edge.
	innerShare = 0.5
	// fewestEdge is the smallest number of places in an edge.
	fewestEdge = 5
)

// perimeter recognizes places along the sides of a rectangle, with at least
// three of its corners.
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

// parted divides the places by their depth into those of an edge and those
// inside. offMm is the largest depth among those of the edge.
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

// leastCorners is how many of the four corners must have a place. With few
// places, three corners match by chance.
func leastCorners(edge int) int {
	if edge < 10 {
		return 4
	}
	return 3
}

// curve recognizes places along one closed edge.
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
	// sharpDeg is the largest turn of an edge at one place. A sharper turn
	// means that the path went into the interior and back.
	sharpDeg = 105
	// mostDeep limits the number of deep places, as a multiple of those near
	// the outline, if all are to form one edge.
	mostDeep = 3
	// othersShare limits the pairs of neighbours that are not consecutive along
	// an edge, as a fraction of the places.
	othersShare = 0.1
)

// smoothRound reports whether the round through all places is one edge although
// some are deep inside the outline. It must not turn sharply at any of these,
// and almost no place may have a neighbour other than the two along the edge.
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

// side is one side of a convex outline: a point on it, and the direction across
// it.
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

// depthIn returns how deep a point is inside a convex outline.
func depthIn(outline []side, p geometry.Point) float64 {
	least := math.Inf(1)
	for _, side := range outline {
		least = math.Min(least, math.Abs(p.Sub(side.at).Dot(side.across)))
	}
	return least
}

// rectangle is a rectangle around a middle, with its length in the direction
// along.
type rectangle struct {
	middle, along geometry.Point
	half          geometry.Point // half of its length and width
}

// smallestRectangle returns the rectangle of least area around the points. One
// of its sides is along a side of their hull. If several have the same area, as
// around a triangle, it returns the one with the shortest sides.
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
	for _, p := range points { // runs once for each side of the hull
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

// within returns a point's coordinates along and across, from the middle.
func (r rectangle) within(p geometry.Point) geometry.Point {
	d := p.Sub(r.middle)
	return geometry.Point{X: d.Dot(r.along), Y: d.Dot(geometry.Point{X: -r.along.Y, Y: r.along.X})}
}

// depth returns the distance of a point from the nearest side, positive inside.
func (r rectangle) depth(p geometry.Point) float64 {
	at := r.within(p)
	return min(r.half.X-math.Abs(at.X), r.half.Y-math.Abs(at.Y))
}

// nearestTo returns the point nearest to one of the four corners, and its
// distance.
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
