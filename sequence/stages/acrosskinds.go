package stages

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
)

// Findings from comparing kinds with each other.
const (
	UnitsMixed  finding.Code = "stage units mixed"  // kind, stage, torque, before, beforeTorque
	SmallerMore finding.Code = "stage smaller more" // kind, stage, torque, thread, class; other, otherTorque, otherThread
)

// mixedUnits finds a kind with metric and inch torques: one figure probably has
// the wrong unit.
func mixedUnits(p plan.Plan, kind string) []finding.Finding {
	var before plan.Stage
	for _, s := range p.Tighten.Stages {
		if s.Do != plan.Tighten || s.Percent > 0 || !slices.Contains(s.Kinds, kind) {
			continue
		}
		if before.Number > 0 && metric(s.Torque) != metric(before.Torque) && !s.Torque.Near(before.Torque) {
			values := finding.Values{"kind": kind, "stage": s.Number, "torque": s.Torque, "before": before.Number, "beforeTorque": before.Torque}
			return []finding.Finding{finding.Warned(UnitsMixed, values).About(finding.Place{Kind: kind, Stage: s.Number})}
		}
		before = s
	}
	return nil
}

func metric(t unit.GivenTorque) bool {
	return t.Unit == unit.NewtonMetre || t.Unit == unit.KilogramForceMetre
}

// smallerMore finds a smaller thread that is tightened to more than a larger
// one of the same class, friction and tapped part: their figures were probably
// swapped. Kinds that end on an angle have no torque to compare. Torques
// already reported by the judge of figures are left out.
func smallerMore(p plan.Plan) (found []finding.Finding) {
	for _, small := range p.Kinds {
		for _, large := range p.Kinds {
			few, more := lastTorque(p, small.Name), lastTorque(p, large.Name)
			if !differInSize(small, large) || few.Number == 0 || more.Number == 0 || float64(few.Torque.Nm()) <= float64(more.Torque.Nm())*(1+dust) || told(p, small.Name) || told(p, large.Name) {
				continue
			}
			values := finding.Values{
				"kind": small.Name, "stage": few.Number, "torque": few.Torque, "thread": small.ThreadName(), "class": small.Class,
				"other": large.Name, "otherTorque": more.Torque, "otherThread": large.ThreadName(),
			}
			found = append(found, finding.Warned(SmallerMore, values).About(finding.Place{Kind: small.Name, Stage: few.Number}))
			break
		}
	}
	return found
}

// differInSize reports whether two kinds differ only in size.
func differInSize(small, large plan.Kind) bool {
	return small.MajorMm() > 0 && small.MajorMm() < large.MajorMm() && small.EqualButSize(large)
}

// lastTorque returns the stage with the final torque of a kind; Number 0 if an
// angle follows, or if there is none.
func lastTorque(p plan.Plan, kind string) (last plan.Stage) {
	for _, s := range p.Tighten.Stages {
		switch {
		case !slices.Contains(s.Kinds, kind):
		case s.Do == plan.Tighten:
			last = s
		case s.Do == plan.Advance, s.Do == plan.BackOff:
			last = plan.Stage{}
		}
	}
	return last
}

// told reports whether the torques of a kind already have a warning.
func told(p plan.Plan, kind string) bool {
	return slices.ContainsFunc(p.Figures, func(f finding.Finding) bool {
		return f.At.Kind == kind && f.Severity == finding.Warning &&
			slices.Contains([]finding.Code{figures.TorqueOver, figures.TorquePastYield, figures.TorqueHardlyAny, figures.TorqueOneFriction}, f.Code)
	})
}
