package geometry

// RoundPart reports whether the fasteners are on a bolt circle, so that the
// part is drawn round.
func RoundPart(fasteners []Point) (rim Disc, round bool) {
	const least = 5 // fewer may be on a circle by chance
	rim = Enclose(fasteners)
	return rim, len(fasteners) >= least && OneCircle(fasteners, rim.Centre)
}

// EdgeAllowance is the distance from the fasteners to an edge drawn around
// them, in millimetres of the part.
func EdgeAllowance(fasteners []Point) float64 {
	if spacing := Spacing(fasteners); spacing > 0 {
		return 0.5 * spacing
	}
	return 10
}

// InsideOwnEdge returns how far a point is inside the edge drawn around the
// fasteners of a part without an outline. It is negative outside.
func InsideOwnEdge(p Point, fasteners []Point) float64 {
	allowance := EdgeAllowance(fasteners)
	if rim, round := RoundPart(fasteners); round {
		return rim.Radius + allowance - p.Distance(rim.Centre)
	}
	hull := Hull(fasteners)
	if Inside(p, hull) {
		return allowance + FromEdge(p, hull)
	}
	return allowance - FromEdge(p, hull)
}
