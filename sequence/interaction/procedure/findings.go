package procedure

import "drawdown/geometry/finding"

// What keeps the work of a plan from being read as passes.
const (
	ThreadUnknown  finding.Code = "work thread unknown"    // kind
	PitchUnknown   finding.Code = "work pitch unknown"     // kind
	PreloadUnknown finding.Code = "work preload unknown"   // kind, why
	NothingHolds   finding.Code = "work leaves no preload" // kind
)
