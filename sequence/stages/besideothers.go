package stages

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// Findings about an error or a missing stage, from the stages beside it.
const (
	StepTooLarge finding.Code = "stage step large"   // kind, stage, torque, after: a later stage, afterTorque
	StepTooSmall finding.Code = "stage step small"   // kind, stage, torque, before, beforeTorque
	AllAtOnce    finding.Code = "stage all at once"  // kind, stage, torque, count
	WaitsShort   finding.Code = "stage waits short"  // stage, wait, least
	WaitsSet     finding.Code = "stage waits set"    // stage, wait, kind, most
	EqualsApart  finding.Code = "stage equals apart" // kind, stage, torque, thread; other, otherStage, otherTorque
)

// Limits for a stage compared with others. Common practice, no source: makers
// increase the torque by a factor of two or three from stage to stage, and wait
// for minutes to hours.
const (
	mostStep     = 8                 // times the torque of the stage before
	leastStep    = 1.08              // times the torque of the stage before: bolts at rest hardly turn for less
	leastWait    = unit.Duration(1)  // minutes
	mostUnset    = unit.Duration(30) // minutes in which what sets in a thread stays soft
	fewestAtOnce = 8                 // fasteners that are not tightened in one go
	leastAtOnce  = 12                // mm of their thread
	leastOfEqual = 0.6               // of the torque of an equal bolt
)

// slips finds the figures of a kind that do not fit those of its other stages.
func slips(p plan.Plan, kind string) (found []finding.Finding) {
	var before plan.Stage
	rises := 0 // a check pass does not count
	for _, s := range p.Tighten.Stages {
		switch {
		case !slices.Contains(s.Kinds, kind):
			continue
		case s.Do != plan.Tighten:
			before = plan.Stage{}
			rises++
			continue
		case before.Number > 0 && float64(s.Torque.Nm()) > mostStep*float64(before.Torque.Nm()):
			values := finding.Values{"kind": kind, "stage": before.Number, "torque": before.Torque, "after": s.Number, "afterTorque": s.Torque}
			found = append(found, finding.Warned(StepTooLarge, values).From(finding.CommonPractice).About(finding.Place{Kind: kind, Stage: before.Number}))
		}
		if compared(s, before) > 0 {
			if before.Number > 0 && s.Way != sequence.Circular && float64(s.Torque.Nm()) < leastStep*float64(before.Torque.Nm()) {
				values := finding.Values{"kind": kind, "stage": s.Number, "torque": s.Torque, "before": before.Number, "beforeTorque": before.Torque}
				found = append(found, finding.Warned(StepTooSmall, values).From(finding.CommonPractice).About(finding.Place{Kind: kind, Stage: s.Number}))
			}
			rises++
			before = s
		}
	}
	if rises == 1 && before.Number > 0 && p.Count(kind) >= fewestAtOnce && p.Kind(kind).MajorMm() >= leastAtOnce {
		values := finding.Values{"kind": kind, "stage": before.Number, "torque": before.Torque, "count": p.Count(kind)}
		found = append(found, finding.Warned(AllAtOnce, values).From(finding.CommonPractice).About(finding.Place{Kind: kind, Stage: before.Number}))
	}
	return found
}

// shortWaits finds the waits that are too short to settle.
func shortWaits(p plan.Plan) (found []finding.Finding) {
	for _, s := range p.Tighten.Stages {
		if s.Do == plan.Wait && s.Wait < leastWait {
			values := finding.Values{"stage": s.Number, "wait": s.Wait, "least": leastWait}
			found = append(found, finding.Warned(WaitsShort, values).From(finding.CommonPractice).About(finding.Place{Stage: s.Number}))
		}
	}
	return found
}

// waitsSet finds the waits in which what is on the threads sets, before they are turned
// again.
func waitsSet(p plan.Plan) (found []finding.Finding) {
	for i, s := range p.Tighten.Stages {
		if s.Do != plan.Wait || s.Wait <= mostUnset {
			continue
		}
		for _, k := range p.Kinds {
			of := func(s plan.Stage) bool { return s.Do != plan.Wait && slices.Contains(s.Kinds, k.Name) }
			if screw.Sets(k.Lubricant) && slices.ContainsFunc(p.Tighten.Stages[:i], of) && slices.ContainsFunc(p.Tighten.Stages[i+1:], of) {
				values := finding.Values{"stage": s.Number, "wait": s.Wait, "kind": k.Name, "most": mostUnset}
				found = append(found, finding.Warned(WaitsSet, values).From(finding.CommonPractice).About(finding.Place{Stage: s.Number}))
				break
			}
		}
	}
	return found
}

// equalsApart finds a kind that ends with far less torque than another whose
// bolts differ only in length: a later stage probably left it out.
func equalsApart(p plan.Plan) (found []finding.Finding) {
	for _, less := range p.Kinds {
		for _, more := range p.Kinds {
			few, much := lastTorque(p, less.Name), lastTorque(p, more.Name)
			if few.Number == 0 || much.Number == 0 || !plan.EqualButLength([]plan.Kind{less, more}) || float64(few.Torque.Nm()) >= leastOfEqual*float64(much.Torque.Nm()) {
				continue
			}
			values := finding.Values{
				"kind": less.Name, "stage": few.Number, "torque": few.Torque, "thread": less.ThreadName(),
				"other": more.Name, "otherStage": much.Number, "otherTorque": much.Torque,
			}
			found = append(found, finding.Warned(EqualsApart, values).About(finding.Place{Kind: less.Name, Stage: few.Number}))
			break
		}
	}
	return found
}
