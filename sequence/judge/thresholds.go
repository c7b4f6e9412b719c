package judge

// What the trade allows, in terms of the objective. Common practice, no source:
// the values were chosen so that the orders of the trade pass, one slip of a
// learner gives a remark, and what an instructor marks as wrong departs.
const (
	// mostPull is how many fasteners at the edge may pull to one side: one, if
	// each is followed by one across.
	mostPull = 1.0
	// pullMissing is the additional pull allowed for each place of a circle
	// without a fastener: the one across has nothing against it.
	pullMissing = 0.5
	// mostSaddle is how many fasteners at the edge may bend the part along one
	// line more than across it: a pair, which the next pair balances.
	mostSaddle, saddleByMuch = 2.4, 0.3
	// mostOutwards is the allowed deviation from the order by distance, as a
	// share of that of a random order. deepTimes is how many times as far out
	// as the nearest place the farthest must be for it to matter; deepByMuch,
	// for it to matter much.
	mostOutwards, outwardsByMuch = 0.65, 0.75
	deepTimes, deepByMuch        = 1.35, 1.5
	// neighboursShare is the share of steps that may go to a neighbour around a
	// closed layout.
	neighboursShare = 0.2
	// strewnShare is the same for places scattered over an area, where each has
	// more neighbours.
	strewnShare = 0.4
	// longestStar is the smallest odd count of a circle that no star of single
	// places suits.
	longestStar = 9
	// fewestForFour is the smallest number of places for four crosswise and
	// then around.
	fewestForFour = 6
)

// Limits of places. The angles are not multiples of the steps of common
// circles, so that a measuring error cannot decide.
const (
	// insideSpacings is how much closer to the middle a place must be to count
	// as further in, in spacings, if the layout has no rings.
	insideSpacings = 0.25
	// sideDeg is how much less than 180° a run on one side spans.
	sideDeg = 3.7
	// quarterDeg is the smallest angle from the two before for a bolt that
	// shares the circle with them.
	quarterDeg = 77
	// longShare is the ratio of length to width from which places have a
	// length.
	longShare = 1.3
	// mostNarrow is the largest number of rows of a head that may also be
	// tightened by columns.
	mostNarrow = 3
)

// How far beyond what the layout allows an order departs by much rather than by
// little. Common practice, no source: the values were chosen so that the orders
// of the trade pass and one slip of a learner gives a remark.
const (
	// Steps back inwards, and fasteners in a run on one side: one more is a
	// remark.
	inwardsByMuch = 2
	runByMuch     = 2
	// leastRun is the shortest run that is reported: in an order by quarters,
	// as many end up on one side of a slanted line.
	leastRun = 3
	// Neighbours in succession: this many more, and this share of the steps.
	neighboursByMuch      = 2
	neighboursShareByMuch = 0.3
	// Steps of a bolt circle that do not go across: more than this share of the
	// steps beyond every second one is much.
	acrossShareByMuch = 0.3
	// The pull to one side: this many times as much, and this many fasteners
	// more.
	pullTimes, pullMore             = 1.3, 0.3
	pullTimesByMuch, pullMoreByMuch = 2, 0.5
	// hair keeps rounding from deciding: on regular places a pull often equals
	// its limit.
	hair = 1e-6
	// farTravel is how many times the travel of drawdown's own order is
	// reported.
	farTravel = 1.25
	// startSpacings is how much further from the middle than the innermost
	// place the first may be, in spacings, if the layout has no rings.
	startSpacings = 0.5
)

// byMuch returns the severity of a departure from a rule.
func byMuch(much bool) Severity {
	if much {
		return Departure
	}
	return Remark
}
