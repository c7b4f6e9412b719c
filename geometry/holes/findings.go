package holes

import "drawdown/geometry/finding"

// Errors in a range of diameters, and doubts without one.
const (
	NoRange      finding.Code = "holes no range"      // written
	FallingRange finding.Code = "holes falling range" // written, from, to
	BySizeAlone  finding.Code = "holes by size alone" // sizes
	SharedRange  finding.Code = "holes shared range"  // use, range, other, otherRange: uses are those of a hole
)
