package service

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
)

// unsafe are the notes of other rooms about what a joint does not hold at one
// end of the range of friction.
var unsafe = []finding.Code{figures.TorquePastYield, figures.SnugBreaks}

// Doubts picks from all findings about the figures of a plan those that speak
// against its joint, warnings first: every warning, every note about the joint,
// and notes that a bolt may yield.
func Doubts(found []finding.Finding) []finding.Finding {
	var warnings, notes []finding.Finding
	for _, f := range found {
		switch {
		case f.Severity != finding.Note:
			warnings = append(warnings, figures.Placed(f))
		case slices.Contains(judged, f.Code):
			notes = append(notes, f)
		case slices.Contains(unsafe, f.Code):
			notes = append(notes, figures.Placed(f))
		}
	}
	return append(warnings, notes...)
}

// judged are the codes of Judge.
var judged = []finding.Code{Crushes, NotSeated, BelowWork, YieldsHot, PartsOpen, Fatigues, LimitPassed, NothingFits}
