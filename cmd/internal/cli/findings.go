package cli

import "drawdown/geometry/finding"

// What can go wrong with a call, beside what the rooms below find.
const (
	OutputNotWritten finding.Code = "output not written"   // why
	SameName         finding.Code = "cards of one name"    // clashes: each a SameCard
	SameCard         finding.Code = "card of two patterns" // patterns, name
)
