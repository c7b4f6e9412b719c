package gate

import "drawdown/geometry/finding"

// Why a device does not get in.
const (
	WrongCode   finding.Code = "bench wrong code"    // left: tries
	WaitForCode finding.Code = "bench wait for code" // minutes
	ManyCodes   finding.Code = "bench many codes"    // most
)
