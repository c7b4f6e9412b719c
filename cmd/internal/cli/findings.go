package cli

import "drawdown/geometry/finding"

// What can go wrong with a call, beside what the rooms below find.
const (
	OutputNotWritten finding.Code = "output not written"   // why
	BatchFailed      finding.Code = "batch failed"         // failed, n, drawn
	ErrorsInFile     finding.Code = "batch errors"         // n
	NoWrenchList     finding.Code = "wrench list missing"  // file
	SameName         finding.Code = "cards of one name"    // clashes: each a SameCard
	SameCard         finding.Code = "card of two patterns" // patterns, name
)
