package judge

import "slices"

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
	// Steps of a bolt circle that do not go across: up to this share of the
	// steps is nothing, since four that share the circle are balanced too; that
	// share beyond it is much.
	acrossShare       = 0.25
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
	m, a := w.measure(w.order), w.allowed()
	m.adjacent = slices.DeleteFunc(m.adjacent, func(k int) bool { return !w.follows(k) })
	m.Neighbours = len(m.adjacent)
	for _, rule := range []func(measured, allowed) (Finding, bool){
		w.judgeMiddle, w.judgeOutwards, w.judgeOneSide, w.judgeNeighbours, w.judgeAcross, w.judgeBalance,
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

// judgeMiddle: an order starts in the middle. A bolt circle has none.
func (w *work) judgeMiddle(measured, allowed) (Finding, bool) {
	first, innermost := w.order[0], w.order[0]
	for i := range w.units {
		if w.radius[i] < w.radius[innermost] {
			innermost = i
		}
	}
	near := w.ring[first] == 0
	if !w.Filled() {
		limit := startSpacings
		if w.Regular {
			limit = insideSpacings
		}
		near = near || w.radius[first]-w.radius[innermost] <= limit*w.spacing
	}
	if w.layout == Circle || near {
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

// judgeOutwards: an inner place is not left behind for an outer one.
func (w *work) judgeOutwards(m measured, a allowed) (Finding, bool) {
	if w.layout == Circle || m.Inwards <= a.inwards {
		return Finding{}, false
	}
	f := Finding{Rule: Outwards, Severity: Remark, Figure: float64(m.Inwards), Allowed: float64(a.inwards)}
	if m.Inwards-a.inwards >= inwardsByMuch {
		f.Severity = Departure
	}
	f.Steps, f.IDs = w.at(m.inward...)
	f.AgainstSteps, f.Against = w.at(m.beyond...)
	return f, true
}

// judgeOneSide: no long run on one side of the middle.
func (w *work) judgeOneSide(m measured, a allowed) (Finding, bool) {
	limit := a.run
	if w.layout == Circle {
		limit = max(limit, leastRun)
	}
	if m.Run <= limit || m.Run < leastRun {
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
func (w *work) judgeNeighbours(m measured, a allowed) (Finding, bool) {
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
func (w *work) judgeAcross(m measured, a allowed) (Finding, bool) {
	steps, not := float64(len(w.order)-1), len(m.notAcross)
	beyond := float64(not) - max(float64(a.notAcross), acrossShare*steps)
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

// judgeBalance: what is tight never pulls far to one side.
func (w *work) judgeBalance(m measured, a allowed) (Finding, bool) {
	if m.Pull <= pullTimes*a.pull+pullMore+hair {
		return Finding{}, false
	}
	f := Finding{Rule: Balance, Severity: Remark, Figure: m.Pull, Allowed: a.pull}
	if m.Pull > pullTimesByMuch*a.pull+pullMoreByMuch+hair {
		f.Severity = Departure
	}
	f.Steps, f.IDs = []int{w.stepAfter(m.pullAt)}, []string{w.name(w.order[m.pullAt])}
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
