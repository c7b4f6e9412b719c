package gate

import "drawdown/geometry/finding"

// Reasons to refuse a device.
const (
	WrongCode   finding.Code = "bench wrong code"    // left: tries
	WaitForCode finding.Code = "bench wait for code" // minutes
	ManyCodes   finding.Code = "bench many codes"    // most
)
