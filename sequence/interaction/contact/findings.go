package contact

import "drawdown/geometry/finding"

// What keeps forces from being found.
const (
	CannotStand finding.Code = "joint gives energy back"
	NoRest      finding.Code = "joint comes to no rest"
	NoRate      finding.Code = "joint repeat without a rate"
)
