package holes

import "drawdown/geometry/finding"

// What a range of diameters can lack.
const (
	NoRange      finding.Code = "holes no range"      // written
	FallingRange finding.Code = "holes falling range" // written, from, to
	SharedRange  finding.Code = "holes shared range"  // use, range, other, otherRange: uses are those of a hole
)
