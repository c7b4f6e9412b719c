package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
)

const (
	// bluntDeg is how much an edge turns at the least where a corner begins to
	// count as one, sharpDeg how much where it counts in full.
	bluntDeg, sharpDeg = 45.0, 90.0
	// clearlyIn is how much further in than others a place lies that is trapped
	// between them, or that is passed over for them, in units of the farthest place.
	clearlyIn = 0.02
)

// along is what a place has to do with the edge that it lies along.
type along struct {
	last, next int     // its neighbours
	trapped    float64 // what it costs to work it after both
	corner     float64 // what it costs to work it before one of them
}

// lookAlong looks at each place of an edge and at the two beside it.
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

// turnsAlong returns for each place of an edge how far, in degrees, the edge turns
// there: outwards at a corner, below 0 at a knee.
func turnsAlong(at []geometry.Point, edge []int) []float64 {
	n, sense, turns := len(edge), sense(at, edge), make([]float64, len(edge))
	for k, i := range edge {
		last, next := at[edge[(k+n-1)%n]], at[edge[(k+1)%n]]
		turns[k] = geometry.Turn(sense*(next.AngleFrom(at[i])-at[i].AngleFrom(last))+180) - 180
	}
	return turns
}

// share is how much of a whole there is, between nothing and all.
func share(of, whole float64) float64 { return min(1, max(0, of/whole)) }

// sense is 1 where an edge goes anticlockwise, else -1.
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

// closing is what it costs to work a place, by which of those beside it along
// the edge are tight.
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

// passedOver is what it costs to work a place when others of the edge are left
// that lie further in on the other side, and what is tight with it leans away
// from them. Corners have a rule of their own. Of the sides, these are left or
// tight since, the nearest first.
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
