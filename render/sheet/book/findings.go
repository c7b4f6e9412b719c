package book

import "drawdown/geometry/finding"

// Notes about the sheets of a joint.
const (
	OfJoint   finding.Code = "book joint"          // joint, what
	TrayNoUse finding.Code = "book tray of no use" // joint, why
)
