// Package advice turns a prediction into advice: how strongly the bolts act on
// each other, whether to ask the maker for another way, and the reasons. It
// uses figures, not forces. It may import limits, bounds and the meaning of 100
// %.
package advice

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/limits"
)

// Class describes how strongly bolts act on each other.
type Class string

const (
	Negligible Class = "negligible" // compared with the scatter of the torque
	Noticeable Class = "noticeable" // one repeat pass is worthwhile
	Strong     Class = "strong"     // several passes, or measured stretch
)

// ClassActs describes the class.
const ClassActs finding.Code = "class acts" // class

// Says returns the class as a finding.
func (c Class) Says() finding.Finding {
	return finding.Noted(ClassActs, finding.Values{"class": string(c)})
}

// ClassOf classifies by the worst bolt after the last pass.
func ClassOf(worstPercent float64) Class {
	switch {
	case worstPercent >= limits.NegligibleFromPercent:
		return Negligible
	case worstPercent >= limits.NoticeableFromPercent:
		return Noticeable
	}
	return Strong
}
