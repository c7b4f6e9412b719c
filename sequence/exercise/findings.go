package exercise

import "drawdown/geometry/finding"

const (
	HowMany finding.Code = "exercise how many" // count, most
	// OrderDeparts reports a file whose order breaks the rules of the trade,
	// which the key, the hints and the grades follow.
	OrderDeparts finding.Code = "exercise order departs" // usable, why
)
