package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// layout is a set of places with what the ways need. The places are sorted from
// left to right, so that the listing order of a joint does not matter.
type layout struct {
	geometry.Layout
	seen    family.Seen
	at      []geometry.Point // the exact places
	listed  []int            // index of each place in the caller's list
	centre  geometry.Point
	radius  []float64 // distance from the centre
	angle   []float64 // direction from the centre, degrees anticlockwise from the right
	spacing float64
	slack   float64     // places that differ by less than this are level
	reaches []float64   // of the places; 0 until computed
	around  [][]float64 // surroundings of the places; nil until computed
	// tied keeps, of places that tie here, those that the larger part prefers
	// of which these are a group; nil if there is none.
	tied func(places []int) []int
}

func newLayout(points []geometry.Point) *layout { return layoutAs(points, "") }

// layoutAs treats the places as a family, or as the family recognized if as is
// empty.
func layoutAs(points []geometry.Point, as family.Family) *layout {
	l := &layout{listed: geometry.Count(len(points))}
	slices.SortFunc(l.listed, func(a, b int) int {
		return cmp.Or(cmp.Compare(points[a].X, points[b].X), cmp.Compare(points[a].Y, points[b].Y), a-b)
	})
	l.seen = family.As(geometry.Picked(points, l.listed), as)
	l.Layout = l.seen.Layout
	l.at = l.Points
	l.centre = geometry.Enclose(l.at).Centre
	l.spacing = geometry.Spacing(l.at)
	l.slack = geometry.LevelShare * l.spacing
	for _, p := range l.at {
		l.radius = append(l.radius, p.Distance(l.centre))
		l.angle = append(l.angle, p.AngleFrom(l.centre))
	}
	return l
}

// given converts places to indices of the caller's list.
func (l *layout) given(places []int) []int { return geometry.Picked(l.listed, places) }

// central reports whether a place is too close to the centre to have a
// direction.
func (l *layout) central(i int) bool { return l.radius[i] < geometry.CentralShare*l.spacing }

// turned returns the angle of place i from the direction fromDeg in the
// direction of the turn, in [0, 360).
func (l *layout) turned(i int, fromDeg float64, turn Turn) float64 {
	if turn == TurnRight {
		return geometry.Turn(fromDeg - l.angle[i])
	}
	return geometry.Turn(l.angle[i] - fromDeg)
}
