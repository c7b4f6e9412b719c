package judge

import (
	"math"
	"slices"

	"drawdown/geometry/family"
)

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

// judge measures the group and holds it against the rules.
func (w *work) judge() (GroupReport, []Finding) {
	findings := w.clusterFindings(w.free)
	if len(w.units) == 0 { // nothing but clusters that no spring presses on
		return GroupReport{Layout: w.layout}, findings
	}
	m, a := w.measure(w.order), w.yardstick()
	m.adjacent = slices.DeleteFunc(m.adjacent, func(k int) bool { return !w.follows(k) })
	m.Neighbours = len(m.adjacent)
	if w.fourThenRound(w.order) {
		m.PullStep = w.stepAfter(m.pullAt)
		return GroupReport{Layout: w.layout, Order: m.Figures, Own: a.own}, findings
	}
	for _, rule := range []func(measured, yardstick) (Finding, bool){
		w.judgeMiddle, w.judgeOutwards, w.judgeOneSide, w.judgeNeighbours, w.judgeAcross, w.judgeBalance, w.judgeSaddle,
	} {
		if f, found := rule(m, a); found {
			findings = append(findings, f)
		}
	}
	m.PullStep = w.stepAfter(m.pullAt)
	return GroupReport{Layout: w.layout, Order: m.Figures, Own: a.own}, findings
}

// follows says whether the unit at a position of the order comes straight after
// the one before, with no fastener of another group between.
func (w *work) follows(position int) bool {
	return w.firstStep(w.order[position]) == w.stepAfter(position-1)+1
}

// stepAfter is the step at which the last fastener of a unit is worked.
func (w *work) stepAfter(position int) int {
	u := w.byStep(w.units[w.order[position]])
	return w.step[u[len(u)-1]]
}

// judgeMiddle: an order starts in the middle. A bolt circle has none, and of
// separate flanges any may be the first.
func (w *work) judgeMiddle(measured, yardstick) (Finding, bool) {
	if w.layout == Circle || w.seen.Family == family.Flanges || w.startsInMiddle() {
		return Finding{}, false
	}
	f := Finding{Rule: Middle, Severity: Departure}
	f.Steps, f.IDs = w.at(0)
	for i, ring := range w.ring {
		if ring == 0 {
			f.Against = append(f.Against, w.joint.Fasteners[w.units[i][0]].ID)
		}
	}
	return f, true
}

// startsInMiddle: with one of the innermost ring, with a place inside where some
// lie inside, or with one that lies hardly further out than the nearest.
func (w *work) startsInMiddle() bool {
	first := w.order[0]
	if w.ring[first] == 0 || slices.Contains(w.seen.Inner, first) {
		return true
	}
	switch w.seen.Family {
	case family.Row, family.Grid, family.Circles:
		return false
	}
	out := func(i int) float64 { return w.Points[i].Distance(w.centroid) }
	nearest := math.Inf(1)
	for i := range w.units {
		nearest = math.Min(nearest, out(i))
	}
	return out(first)-nearest <= startSpacings*w.spacing
}

// judgeOutwards: an inner place is not left behind for an outer one. On rows and
// circles each such step counts; elsewhere how far all come out of their turn.
func (w *work) judgeOutwards(m measured, a yardstick) (Finding, bool) {
	severity := Severity("")
	switch {
	case w.layout == Circle:
	case m.Inwards > a.inwards:
		severity = Remark
		if m.Inwards-a.inwards >= inwardsByMuch {
			severity = Departure
		}
	case m.outwards > a.outwards && m.Inwards > 0:
		severity = Remark
		if m.outwards > outwardsByMuch && w.deep(deepByMuch) {
			severity = Departure
		}
	}
	if severity == "" {
		return Finding{}, false
	}
	f := Finding{Rule: Outwards, Severity: severity, Figure: float64(m.Inwards), Allowed: float64(a.inwards)}
	f.Steps, f.IDs = w.at(m.inward...)
	f.AgainstSteps, f.Against = w.at(m.beyond...)
	return f, true
}

// judgeOneSide: no long run on one side of the middle. On a layout that is
// neither row nor rows nor circle, a run matters where it draws the part there:
// which side a place is on depends too much on where one takes the middle.
func (w *work) judgeOneSide(m measured, a yardstick) (Finding, bool) {
	limit := a.run
	if m.Run <= limit || m.Run < leastRun || !w.evenSides() && !beyondPull(m, a) {
		return Finding{}, false
	}
	f := Finding{Rule: OneSide, Severity: Remark, Figure: float64(m.Run), Allowed: float64(a.run)}
	if m.Run-limit >= runByMuch {
		f.Severity = Departure
	}
	for k := range m.Run {
		steps, names := w.at(m.runFrom + k)
		f.Steps, f.IDs = append(f.Steps, steps...), append(f.IDs, names...)
	}
	return f, true
}

// judgeNeighbours: neighbours do not follow each other where it can be helped.
func (w *work) judgeNeighbours(m measured, a yardstick) (Finding, bool) {
	more := m.Neighbours - a.neighbours
	if more <= 0 {
		return Finding{}, false
	}
	f := Finding{Rule: Neighbours, Severity: Remark, Figure: float64(m.Neighbours), Allowed: float64(a.neighbours)}
	if more >= neighboursByMuch && float64(more) >= neighboursShareByMuch*float64(len(w.order)-1) {
		f.Severity = Departure
	}
	f.Steps, f.IDs = w.at(m.adjacent...)
	f.AgainstSteps, f.Against = w.at(before(m.adjacent)...)
	return f, true
}

// judgeAcross: round a bolt circle each is followed by one across, or four
// share the circle between them.
func (w *work) judgeAcross(m measured, a yardstick) (Finding, bool) {
	steps, not := float64(len(w.order)-1), len(m.notAcross)
	beyond := float64(not) - float64(a.notAcross)
	if w.layout != Circle || beyond <= 0 {
		return Finding{}, false
	}
	f := Finding{Rule: Across, Severity: Remark, Figure: float64(not), Allowed: float64(a.notAcross), Of: len(w.order) - 1}
	if beyond >= acrossShareByMuch*steps {
		f.Severity = Departure
	}
	f.Steps, f.IDs = w.at(m.notAcross...)
	f.AgainstSteps, f.Against = w.at(before(m.notAcross)...)
	return f, true
}

// evenSides says that the places lie so evenly that each has its side.
func (w *work) evenSides() bool {
	switch w.seen.Family {
	case family.Row, family.Grid, family.Circle:
		return true
	}
	return false
}

func beyondPull(m measured, a yardstick) bool { return m.Pull > pullTimes*a.pull+pullMore+hair }

// judgeBalance: what is tight never pulls far to one side.
func (w *work) judgeBalance(m measured, a yardstick) (Finding, bool) {
	if !beyondPull(m, a) {
		return Finding{}, false
	}
	f := Finding{Rule: Balance, Severity: Remark, Figure: m.Pull, Allowed: a.pull}
	if m.Pull > pullTimesByMuch*a.pull+pullMoreByMuch+hair {
		f.Severity = Departure
	}
	f.Steps, f.IDs = []int{w.stepAfter(m.pullAt)}, []string{w.name(w.order[m.pullAt])}
	return f, true
}

// judgeSaddle: two opposite sides are not drawn down before the others.
func (w *work) judgeSaddle(m measured, a yardstick) (Finding, bool) {
	if m.Saddle <= a.saddle+hair {
		return Finding{}, false
	}
	f := Finding{Rule: Saddle, Severity: Remark, Figure: m.Saddle, Allowed: a.saddle}
	if m.Saddle > a.saddle+saddleByMuch+hair {
		f.Severity = Departure
	}
	f.Steps, f.IDs = []int{w.stepAfter(m.saddleAt)}, []string{w.name(w.order[m.saddleAt])}
	return f, true
}

// before gives the positions before these.
func before(positions []int) []int {
	earlier := make([]int, len(positions))
	for k, p := range positions {
		earlier[k] = p - 1
	}
	return earlier
}
