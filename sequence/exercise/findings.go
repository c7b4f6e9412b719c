package exercise

import "drawdown/geometry/finding"

const (
	HowMany finding.Code = "exercise how many" // count, most
	// OrderDeparts is of a file whose order does not keep the rules of the
	// trade, by which key, hints and grades go.
	OrderDeparts finding.Code = "exercise order departs" // usable, why
)
