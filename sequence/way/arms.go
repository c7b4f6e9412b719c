package way

import (
	"slices"

	"drawdown/geometry"
)

// squareDeg is the least turn of an edge at a knee between two arms, and at the
// corners of their ends. It is less than 90° to allow for measuring errors.
const squareDeg = 70.0

// arms returns the places at the ends of arms, and the corners, of a part whose
// edge turns inwards at a knee, such as an L or a T. An end is between two
// corners and further out than all places along the sides. The sides come
// before it, so that a bulge there can spread outwards. A knee between two
// corners is a notch or a fold, and no arm begins there.
func (l *layout) arms() (ends, corners []int) {
	edge, turns := l.seen.Edge, turnsAlong(l.at, l.seen.Edge)
	n, centre := len(edge), geometry.Centroid(l.at)
	knee, sides := false, 0.0
	for k, i := range edge {
		between := turns[(k+n-1)%n] > squareDeg && turns[(k+1)%n] > squareDeg
		switch {
		case turns[k] > squareDeg:
			corners = append(corners, i)
		case turns[k] < -squareDeg && between:
			return nil, nil
		case between:
			ends = append(ends, i)
		default:
			knee = knee || turns[k] < -squareDeg
			sides = max(sides, l.at[i].Distance(centre))
		}
	}
	inward := func(i int) bool { return l.at[i].Distance(centre) <= sides }
	if !knee || len(ends) < 2 || slices.ContainsFunc(ends, inward) {
		return nil, nil
	}
	return ends, corners
}
