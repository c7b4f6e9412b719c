package book

import "drawdown/geometry/finding"

// What the papers of a joint tell.
const (
	OfJoint   finding.Code = "book joint"          // joint, what
	TrayNoUse finding.Code = "book tray of no use" // joint, why
)
