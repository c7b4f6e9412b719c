package meaning

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

// checkStageKinds checks that every stage is for a fastener of the joint.
func (r *reader) checkStageKinds() {
	if r.fasteners.broken || len(r.input.Joint.Fasteners) == 0 || r.kinds.broken || r.kinds.unsure {
		return
	}
	fail := func(stages []plan.StageInput, at []*nodes.Node) {
		for _, i := range r.input.ForNone(stages) {
			r.Fail(at[i], StageForNone, finding.Values{"kinds": stages[i].Of})
		}
	}
	fail(r.input.Tighten, r.stages)
	fail(r.input.Loosen, r.loosened)
}

// checkStageOrder warns of stages in another order than the groups, and of
// fasteners that come out at full load.
func (r *reader) checkStageOrder() {
	if r.fasteners.broken || r.kinds.broken {
		return
	}
	warn := func(found map[int]finding.Finding, at []*nodes.Node) {
		for i, why := range found {
			r.Report(at[i].File, at[i].Line, at[i].Column, why)
		}
	}
	if r.tightened != nil {
		warn(r.input.FinishedOutOfTurn(), r.stages)
	}
	if r.removed != nil {
		warn(r.input.LoosenedOutOfTurn(), r.loosened)
		warn(r.input.OutUnturned(), r.loosened)
		warn(r.input.OddTurns(), r.loosened)
	}
}

// checkCovered warns of kinds that no stage tightens: another job may do so.
func (r *reader) checkCovered() {
	if r.tightened == nil {
		return
	}
	for _, kind := range r.usedKinds() {
		if !slices.ContainsFunc(r.input.Tighten, func(s plan.StageInput) bool {
			return s.Do != plan.BackOff && s.Covers(kind)
		}) {
			r.Warn(r.tightened, KindNotTightened, finding.Values{"kind": kind})
		}
	}
}

// checkShares checks that the torque behind a percentage can be calculated and
// is the same for all kinds of the stage.
func (r *reader) checkShares() {
	for i, s := range r.input.Tighten {
		if s.Do != plan.Percent {
			continue
		}
		var kinds []plan.Kind
		for _, k := range r.input.Kinds {
			if r.kinds.used[k.Name] && !r.kinds.faulty[k.Name] && s.Covers(k.Name) {
				kinds = append(kinds, k)
			}
		}
		if _, err := plan.TorqueShare(kinds, s.Percent); err != nil {
			r.Unreadable(r.stages[i], finding.Error, nil, err)
		}
	}
}

// checkRemoved checks that fasteners come out in the end, and warns of kinds
// that stay in: like a kind that no stage tightens, they may belong to another
// job.
func (r *reader) checkRemoved() {
	list, stages := r.removed, r.input.Loosen
	if list == nil {
		return
	}
	if stages[len(stages)-1].Do != plan.Remove {
		r.Fail(list.Items[len(list.Items)-1], NotTakenOut, finding.Values{"example": "{remove: true}"})
		return
	}
	for _, kind := range r.usedKinds() {
		if !slices.ContainsFunc(stages, func(s plan.StageInput) bool { return s.Do == plan.Remove && s.Covers(kind) }) {
			r.Warn(list, KindNotTakenOut, finding.Values{"kind": kind})
		}
	}
}
