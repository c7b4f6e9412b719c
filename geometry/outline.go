package geometry

import "math"

// Inside reports whether a point is inside a closed path.
func Inside(p Point, path []Point) bool {
	in := false
	for k, q := range path {
		r := path[(k+1)%len(path)]
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	}
	return in
}

// FromEdge returns the distance from a point to the nearest edge of a closed path.
func FromEdge(p Point, path []Point) float64 {
	nearest := math.Inf(1)
	for k, q := range path {
		nearest = math.Min(nearest, p.fromSegment(q, path[(k+1)%len(path)]))
	}
	return nearest
}

func (p Point) fromSegment(a, b Point) float64 {
	along := b.Sub(a)
	share := 0.0
	if square := along.Dot(along); square > 0 {
		share = math.Min(1, math.Max(0, p.Sub(a).Dot(along)/square))
	}
	return p.Distance(a.Add(along.Scale(share)))
}

// Opening reports whether an outline of a part is an opening: one that is
// inside the first outline.
func Opening(outline [][]Point, k int) bool {
	return k > 0 && len(outline[k]) > 0 && Inside(outline[k][0], outline[0])
}

// OnPart reports whether a point is inside one of the outlines of a part and in
// no opening, or within a tolerance of an edge.
func OnPart(p Point, outline [][]Point, tolerance float64) bool {
	on := false
	for k, path := range outline {
		if FromEdge(p, path) <= tolerance {
			return true
		}
		if Inside(p, path) {
			if Opening(outline, k) {
				return false
			}
			on = true
		}
	}
	return on
}
