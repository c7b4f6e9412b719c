package fixes

import "drawdown/geometry/finding"

// What can be wrong with the corrections of a scan.
const (
	NoPlace      finding.Code = "fixes no place"   // key, found, example
	NoPixels     finding.Code = "fixes no pixels"  // count, found
	SmallCrop    finding.Code = "fixes small crop" // least
	TooManyFixes finding.Code = "fixes too many"   // count, most
)
