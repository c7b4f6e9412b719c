package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// layout is a set of places with what the ways ask of it. The places are
// sorted from left to right, so that the listing of a joint has no say.
type layout struct {
	geometry.Layout
	seen    family.Seen
	at      []geometry.Point // the true places
	listed  []int            // where each place stood in the caller's list
	centre  geometry.Point
	radius  []float64 // distance from the centre
	angle   []float64 // direction from the centre, degrees anticlockwise from the right
	spacing float64
	slack   float64     // places that differ by less than this count as level
	reaches []float64   // of the places, where they are known; 0: not yet
	around  [][]float64 // the surroundings of the places, where they are known
	// tied leaves, of places that tie here, those that a larger part prefers of
	// which these are a group; nil where there is none.
	tied func(places []int) []int
}

func newLayout(points []geometry.Point) *layout { return layoutAs(points, "") }

// layoutAs sees the places as a family; empty: as the family that they are.
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

// given names places as the caller's list does.
func (l *layout) given(places []int) []int { return geometry.Picked(l.listed, places) }

// central reports whether a place lies so near the centre that it has no
// direction.
func (l *layout) central(i int) bool { return l.radius[i] < geometry.CentralShare*l.spacing }

// turned returns how far place i lies beyond the direction fromDeg in the sense
// of the turn, in [0, 360).
func (l *layout) turned(i int, fromDeg float64, turn Turn) float64 {
	if turn == TurnRight {
		return geometry.Turn(fromDeg - l.angle[i])
	}
	return geometry.Turn(l.angle[i] - fromDeg)
}
