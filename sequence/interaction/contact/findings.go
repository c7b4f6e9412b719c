package contact

import "drawdown/geometry/finding"

// Reasons why forces cannot be calculated.
const (
	CannotStand finding.Code = "joint gives energy back"
	NoRest      finding.Code = "joint comes to no rest"
	NoRate      finding.Code = "joint repeat without a rate"
)
