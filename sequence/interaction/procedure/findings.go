package procedure

import "drawdown/geometry/finding"

// Reasons why the work of a plan cannot be read as passes.
const (
	ThreadUnknown  finding.Code = "work thread unknown"    // kind
	PitchUnknown   finding.Code = "work pitch unknown"     // kind
	PreloadUnknown finding.Code = "work preload unknown"   // kind, why
	NothingHolds   finding.Code = "work leaves no preload" // kind
)
