package judge

// What the trade allows, in the terms of the objective. Common practice, no
// source: they were set so that the orders of the trade stay clean, one slip of
// a learner makes a remark, and what an instructor marks as wrong departs.
const (
	// mostPull is how many fasteners at the edge pull to one side at the most:
	// one, where each is followed by one across.
	mostPull = 1.0
	// pullMissing is how much more of it there may be for each place of a circle
	// that has no fastener: what lies across has none against it.
	pullMissing = 0.5
	// mostSaddle is how many fasteners at the edge bend the part along one line
	// more than across it: a pair, which is balanced by the next.
	mostSaddle, saddleByMuch = 2.4, 0.3
	// mostOutwards is how far from the order by distance one may be, as a share
	// of a random order; deepTimes how many times as far out as the nearest the
	// farthest has to lie for it to matter, and to matter much.
	mostOutwards, outwardsByMuch = 0.65, 0.75
	deepTimes, deepByMuch        = 1.35, 1.5
	// neighboursShare is how many of the steps may go to a neighbour round a
	// closed layout.
	neighboursShare = 0.2
	// strewnShare is the same of places strewn over an area, where each has more
	// neighbours.
	strewnShare = 0.4
	// longestStar is the least odd count of a circle that no star of single
	// places serves.
	longestStar = 9
	// fewestForFour is the least number of places of which four are tightened
	// crosswise before the others round.
	fewestForFour = 6
)

// How places lie. The angles are no whole number of steps of any usual circle,
// so that a hole measured off its place decides nothing.
const (
	// insideSpacings is how much further in a place must be to count as further
	// in, in spacings, where no grid tells its rings.
	insideSpacings = 0.25
	// sideDeg is how much narrower than a half circle a run on one side is.
	sideDeg = 3.7
	// quarterDeg is how far from the two before a bolt lies that shares the
	// circle with them.
	quarterDeg = 77
	// longShare is how many times as long as wide places lie that have a length.
	longShare = 1.3
	// mostNarrow is how many rows a head has at the most that is also worked by
	// columns.
	mostNarrow = 3
)

// How far beyond what the layout allows an order departs by much and not by
// little. Common practice, no source: they were set so that the orders of the
// trade stay clean and one slip of a learner makes a remark.
const (
	// Steps back inwards, and fasteners in a run on one side: one more is a
	// remark.
	inwardsByMuch = 2
	runByMuch     = 2
	// leastRun is the shortest run worth a word: round the quarters of a circle
	// as many come to lie on one side of a slanting line.
	leastRun = 3
	// Neighbours in succession: so many more, and this share of the steps.
	neighboursByMuch      = 2
	neighboursShareByMuch = 0.3
	// Steps of a bolt circle that do not go across: this share of the steps
	// beyond every other one is much.
	acrossShareByMuch = 0.3
	// The pull to one side: this many times, and so many fasteners more.
	pullTimes, pullMore             = 1.3, 0.3
	pullTimesByMuch, pullMoreByMuch = 2, 0.5
	// hair keeps the last digit from deciding: on regular places a pull often
	// comes to just its limit.
	hair = 1e-6
	// farTravel is how many times as far as in drawdown's own order the wrench
	// goes before it is worth a word.
	farTravel = 1.25
	// startSpacings is how much further from the middle than the innermost
	// place the first may lie, in spacings, where no grid tells its rings.
	startSpacings = 0.5
)

// byMuch returns the severity of a departure from a rule.
func byMuch(much bool) Severity {
	if much {
		return Departure
	}
	return Remark
}
