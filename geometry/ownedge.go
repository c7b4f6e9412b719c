package geometry

// RoundPart reports whether the fasteners lie on a bolt circle, so that the part
// is drawn round.
func RoundPart(fasteners []Point) (rim Disc, round bool) {
	const least = 5 // fewer may lie on a circle by chance
	rim = Enclose(fasteners)
	return rim, len(fasteners) >= least && OneCircle(fasteners, rim.Centre)
}

// EdgeAllowance is how far an edge that is drawn round the fasteners lies from
// them, in millimetres of the part.
func EdgeAllowance(fasteners []Point) float64 {
	if spacing := Spacing(fasteners); spacing > 0 {
		return 0.5 * spacing
	}
	return 10
}

// InsideOwnEdge returns how far a point lies inside the edge that is drawn round
// the fasteners of a part without an outline; below 0 outside of it.
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
