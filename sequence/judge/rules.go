package judge

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// judge measures the group and checks it against the rules.
func (w *work) judge() (GroupReport, []Finding) {
	findings := w.clusterFindings()
	m, a := w.measure(w.order), w.yardstick()
	m.adjacent = slices.DeleteFunc(m.adjacent, func(k int) bool { return !w.follows(k) })
	m.Neighbours = len(m.adjacent)
	m.PullStep = w.stepAfter(m.pullAt)
	report := GroupReport{Layout: w.layout, Order: m.Figures, Own: a.own}
	if w.fourThenRound(w.order) {
		return report, findings
	}
	for _, rule := range []func(measured, yardstick) (Finding, bool){
		w.judgeMiddle, w.judgeOutwards, w.judgeOneSide, w.judgeNeighbours, w.judgeAcross, w.judgeBalance, w.judgeSaddle,
	} {
		if f, found := rule(m, a); found {
			findings = append(findings, f)
		}
	}
	return report, findings
}

// follows reports whether the unit at a position of the order comes directly
// after the one before, with no fastener of another group between them.
func (w *work) follows(position int) bool {
	return w.firstStep(w.order[position]) == w.stepAfter(position-1)+1
}

// stepAfter is the step of the last fastener of a unit.
func (w *work) stepAfter(position int) int {
	u := w.units[w.order[position]]
	return w.step[u[len(u)-1]]
}

// judgeMiddle checks that an order starts in the middle. A bolt circle has
// none, and with separate flanges any may be first.
func (w *work) judgeMiddle(measured, yardstick) (Finding, bool) {
	if w.layout == Circle || w.seen.Family == family.Flanges || w.startsInMiddle() {
		return Finding{}, false
	}
	f := Finding{Rule: Middle, Severity: Departure}
	f.Steps, f.IDs = w.at(0)
	for i, ring := range w.ring {
		if ring == 0 {
			f.Against = append(f.Against, w.joint.Fasteners[w.listed[i]].ID)
		}
	}
	return f, true
}

// startsInMiddle reports whether the first unit is in the innermost ring,
// inside an edge, or hardly further out than the nearest.
func (w *work) startsInMiddle() bool {
	first := w.order[0]
	if w.ring[first] == 0 || slices.Contains(w.seen.Inner, first) {
		return true
	}
	switch w.seen.Family {
	case family.Row, family.Grid, family.Circles:
		return false
	}
	out := geometry.Mapped(w.Points, w.centroid.Distance)
	return out[first]-slices.Min(out) <= startSpacings*w.spacing
}

// judgeOutwards checks that no inner place is left for later than an outer one.
// On rows and circles each such step counts; elsewhere it measures how far the
// whole order deviates.
func (w *work) judgeOutwards(m measured, a yardstick) (Finding, bool) {
	var much bool
	switch {
	case w.layout == Circle:
		return Finding{}, false
	case m.Inwards > a.inwards:
		much = m.Inwards-a.inwards >= inwardsByMuch
	case m.outwards > a.outwards && m.Inwards > 0:
		much = m.outwards > outwardsByMuch && w.deep(deepByMuch)
	default:
		return Finding{}, false
	}
	f := Finding{Rule: Outwards, Severity: byMuch(much), Figure: float64(m.Inwards), Allowed: float64(a.inwards)}
	f.Steps, f.IDs = w.at(m.inward...)
	f.AgainstSteps, f.Against = w.at(m.beyond...)
	return f, true
}

// judgeOneSide checks for a long run on one side of the middle. On layouts
// other than rows, grids and circles, a run matters only if it pulls the part
// to that side: which side a place is on depends too much on the choice of the
// middle.
func (w *work) judgeOneSide(m measured, a yardstick) (Finding, bool) {
	if m.Run <= a.run || m.Run < leastRun || !w.evenSides() && !beyondPull(m, a) {
		return Finding{}, false
	}
	f := Finding{Rule: OneSide, Severity: byMuch(m.Run-a.run >= runByMuch), Figure: float64(m.Run), Allowed: float64(a.run)}
	f.Steps, f.IDs = w.at(geometry.Count(len(w.order))[m.runFrom : m.runFrom+m.Run]...)
	return f, true
}

// judgeNeighbours checks that neighbours do not follow each other where
// avoidable.
func (w *work) judgeNeighbours(m measured, a yardstick) (Finding, bool) {
	more := m.Neighbours - a.neighbours
	if more <= 0 {
		return Finding{}, false
	}
	much := more >= neighboursByMuch && float64(more) >= neighboursShareByMuch*float64(len(w.order)-1)
	f := Finding{Rule: Neighbours, Severity: byMuch(much), Figure: float64(m.Neighbours), Allowed: float64(a.neighbours)}
	return w.pairs(f, m.adjacent), true
}

// judgeAcross checks that on a bolt circle each is followed by one across, or
// that the order goes by quarters.
func (w *work) judgeAcross(m measured, a yardstick) (Finding, bool) {
	steps, not := float64(len(w.order)-1), len(m.notAcross)
	beyond := float64(not) - float64(a.notAcross)
	if w.layout != Circle || beyond <= 0 {
		return Finding{}, false
	}
	much := beyond >= acrossShareByMuch*steps
	f := Finding{Rule: Across, Severity: byMuch(much), Figure: float64(not), Allowed: float64(a.notAcross), Of: len(w.order) - 1}
	return w.pairs(f, m.notAcross), true
}

// evenSides reports whether the places are so even that each has a definite
// side.
func (w *work) evenSides() bool {
	switch w.seen.Family {
	case family.Row, family.Grid, family.Circle:
		return true
	}
	return false
}

func beyondPull(m measured, a yardstick) bool { return m.Pull > pullTimes*a.pull+pullMore+hair }

// judgeBalance checks that what is tight never pulls far to one side.
func (w *work) judgeBalance(m measured, a yardstick) (Finding, bool) {
	if !beyondPull(m, a) {
		return Finding{}, false
	}
	much := m.Pull > pullTimesByMuch*a.pull+pullMoreByMuch+hair
	return w.after(Finding{Rule: Balance, Severity: byMuch(much), Figure: m.Pull, Allowed: a.pull}, m.pullAt), true
}

// judgeSaddle checks that two opposite sides are not tightened before the
// others.
func (w *work) judgeSaddle(m measured, a yardstick) (Finding, bool) {
	if m.Saddle <= a.saddle+hair {
		return Finding{}, false
	}
	much := m.Saddle > a.saddle+saddleByMuch+hair
	return w.after(Finding{Rule: Saddle, Severity: byMuch(much), Figure: m.Saddle, Allowed: a.saddle}, m.saddleAt), true
}

// pairs adds the units at some positions to a finding, each with the one before
// it.
func (w *work) pairs(f Finding, positions []int) Finding {
	f.Steps, f.IDs = w.at(positions...)
	f.AgainstSteps, f.Against = w.at(geometry.Mapped(positions, func(k int) int { return k - 1 })...)
	return f
}

// after adds the step to a finding after which it applies.
func (w *work) after(f Finding, position int) Finding {
	f.Steps, f.IDs = []int{w.stepAfter(position)}, []string{w.name(w.order[position])}
	return f
}
