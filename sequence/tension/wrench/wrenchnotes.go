package wrench

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// muchRounding is the share from which rounding to the scale is reported: the
// tolerance of the wrench itself.
const muchRounding = 0.04

func (w Work) notes(r Result) []finding.Finding {
	var notes []finding.Finding
	if r.Wrench != nil && math.Abs(r.RoundingShare) > muchRounding {
		notes = append(notes, finding.Warned(CoarseScale, finding.Values{"name": r.Wrench.Name, "scale": r.Scale, "torque": r.Given, "rounding": r.RoundingShare}))
	}
	if doubt, found := w.doubtLength(r); found {
		notes = append(notes, doubt)
	}
	if w.Adapter > 0 {
		notes = append(notes, finding.Noted(HoldAtGrip, nil))
	}
	if len(r.Skipped) > 0 {
		notes = append(notes, finding.Noted(LeftOut, finding.Values{"names": r.Skipped}))
	}
	if w.Again {
		// Static friction is higher than sliding friction.
		notes = append(notes, finding.Noted(Breakaway, nil).From(finding.CommonPractice))
	}
	return notes
}

func (w Work) assumptions(r Result) []finding.Finding {
	small := r.Wrench == nil && r.ToleranceShare > Tolerance(math.Inf(1))
	found := []finding.Finding{finding.Noted(ClickAssumed, finding.Values{"tolerance": r.ToleranceShare, "small": small}).From("ISO 6789:2003, table 3")}
	if r.Wrench == nil {
		return found
	}
	if least := LeastUsable * r.Wrench.Max; r.Wrench.Min < least {
		found = append(found, finding.Noted(UsableAssumed, finding.Values{"name": r.Wrench.Name, "least": unit.GivenTorque{Value: tidy(least), Unit: r.Wrench.Unit}}).From("ISO 6789:2003, section 5.1.5.2"))
	}
	return found
}
