package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
)

const (
	// An edge that turns by bluntDeg begins to count as a corner; from sharpDeg
	// it counts in full.
	bluntDeg, sharpDeg = 45.0, 90.0
	// clearlyIn is how much further in than others a place must be to be
	// trapped between them, or to be passed over for them, in units of the
	// farthest place.
	clearlyIn = 0.02
)

// along describes a place on an edge.
type along struct {
	last, next int     // its neighbours
	trapped    float64 // cost of tightening it after both
	corner     float64 // cost of tightening it before one of them
}

// lookAlong examines each place of an edge and its two neighbours.
func (o *objective) lookAlong(edge []int) {
	o.along = make([]along, len(o.at))
	n, turns := len(edge), turnsAlong(o.at, edge)
	for k, i := range edge {
		last, next := edge[(k+n-1)%n], edge[(k+1)%n]
		further := min(o.far[last], o.far[next]) - o.far[i]
		o.along[i] = along{
			last: last, next: next,
			trapped: weighsTrapped * share(further, clearlyIn),
			corner:  weighsCorner * share(turns[k]-bluntDeg, sharpDeg-bluntDeg),
		}
		if o.along[i].corner == 0 {
			o.sides = append(o.sides, i)
		}
	}
	slices.SortStableFunc(o.sides, func(a, b int) int { return cmp.Compare(o.far[a], o.far[b]) })
}

// turnsAlong returns, for each place of an edge, the angle in degrees by which
// the edge turns there: positive at a corner, negative at a knee.
func turnsAlong(at []geometry.Point, edge []int) []float64 {
	n, sense, turns := len(edge), sense(at, edge), make([]float64, len(edge))
	for k, i := range edge {
		last, next := at[edge[(k+n-1)%n]], at[edge[(k+1)%n]]
		turns[k] = geometry.Turn(sense*(next.AngleFrom(at[i])-at[i].AngleFrom(last))+180) - 180
	}
	return turns
}

// share is of/whole, limited to 0…1.
func share(of, whole float64) float64 { return min(1, max(0, of/whole)) }

// sense is 1 if an edge runs anticlockwise, otherwise -1.
func sense(at []geometry.Point, edge []int) float64 {
	area := 0.0
	for k, i := range edge {
		a, b := at[i], at[edge[(k+1)%len(edge)]]
		area += a.X*b.Y - a.Y*b.X
	}
	if area < 0 {
		return -1
	}
	return 1
}

// closing is the cost of tightening a place, depending on which of its
// neighbours along the edge are tight.
func (o *objective) closing(i int, tight []bool) float64 {
	a := o.along[i]
	switch {
	case a.trapped == 0 && a.corner == 0:
		return 0
	case tight[a.last] && tight[a.next]:
		return a.trapped
	case tight[a.last] || tight[a.next]:
		return a.corner
	}
	return 2 * a.corner
}

// passedOver is the cost of tightening a place while others of the edge,
// further in on the other side, are left, and what is tight leans away from
// them. Corners have their own rule. sides are the remaining sides, or tight
// since, nearest first.
func (o *objective) passedOver(i int, sides []int, tight []bool, pull geometry.Point) float64 {
	if o.along[i].corner > 0 {
		return 0
	}
	cost := 0.0
	for _, k := range sides {
		further := o.far[i] - o.far[k] - clearlyIn
		if further <= 0 {
			break
		}
		if tight[k] || o.at[i].Dot(o.at[k]) >= 0 {
			continue
		}
		if away := -pull.Dot(o.at[k]) / o.far[k]; away > 0 {
			cost += weighsPassed * further * away
		}
	}
	return cost
}
