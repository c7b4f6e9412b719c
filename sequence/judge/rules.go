package judge

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
)

// judge measures the group and holds it against the rules.
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

// follows reports whether the unit at a position of the order comes straight after
// the one before, with no fastener of another group between.
func (w *work) follows(position int) bool {
	return w.firstStep(w.order[position]) == w.stepAfter(position-1)+1
}

// stepAfter is the step at which the last fastener of a unit is worked.
func (w *work) stepAfter(position int) int {
	u := w.units[w.order[position]]
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
			f.Against = append(f.Against, w.joint.Fasteners[w.listed[i]].ID)
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
	out := geometry.Mapped(w.Points, w.centroid.Distance)
	return out[first]-slices.Min(out) <= startSpacings*w.spacing
}

// judgeOutwards: an inner place is not left behind for an outer one. On rows and
// circles each such step counts; elsewhere how far all come out of their turn.
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

// judgeOneSide: no long run on one side of the middle. On a layout that is
// neither row nor rows nor circle, a run matters where it draws the part there:
// which side a place is on depends too much on where one takes the middle.
func (w *work) judgeOneSide(m measured, a yardstick) (Finding, bool) {
	if m.Run <= a.run || m.Run < leastRun || !w.evenSides() && !beyondPull(m, a) {
		return Finding{}, false
	}
	f := Finding{Rule: OneSide, Severity: byMuch(m.Run-a.run >= runByMuch), Figure: float64(m.Run), Allowed: float64(a.run)}
	f.Steps, f.IDs = w.at(geometry.Count(len(w.order))[m.runFrom : m.runFrom+m.Run]...)
	return f, true
}

// judgeNeighbours: neighbours do not follow each other where it can be helped.
func (w *work) judgeNeighbours(m measured, a yardstick) (Finding, bool) {
	more := m.Neighbours - a.neighbours
	if more <= 0 {
		return Finding{}, false
	}
	much := more >= neighboursByMuch && float64(more) >= neighboursShareByMuch*float64(len(w.order)-1)
	f := Finding{Rule: Neighbours, Severity: byMuch(much), Figure: float64(m.Neighbours), Allowed: float64(a.neighbours)}
	return w.pairs(f, m.adjacent), true
}

// judgeAcross: round a bolt circle each is followed by one across, or four
// share the circle between them.
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
	much := m.Pull > pullTimesByMuch*a.pull+pullMoreByMuch+hair
	return w.after(Finding{Rule: Balance, Severity: byMuch(much), Figure: m.Pull, Allowed: a.pull}, m.pullAt), true
}

// judgeSaddle: two opposite sides are not drawn down before the others.
func (w *work) judgeSaddle(m measured, a yardstick) (Finding, bool) {
	if m.Saddle <= a.saddle+hair {
		return Finding{}, false
	}
	much := m.Saddle > a.saddle+saddleByMuch+hair
	return w.after(Finding{Rule: Saddle, Severity: byMuch(much), Figure: m.Saddle, Allowed: a.saddle}, m.saddleAt), true
}

// pairs puts the units at these positions into a finding, each with the one before.
func (w *work) pairs(f Finding, positions []int) Finding {
	f.Steps, f.IDs = w.at(positions...)
	f.AgainstSteps, f.Against = w.at(geometry.Mapped(positions, func(k int) int { return k - 1 })...)
	return f
}

// after puts the step into a finding after which it holds.
func (w *work) after(f Finding, position int) Finding {
	f.Steps, f.IDs = []int{w.stepAfter(position)}, []string{w.name(w.order[position])}
	return f
}
