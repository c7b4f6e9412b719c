package flag

import "drawdown/geometry/finding"

// What is wrong with its flags.
const (
	FlagOutside   finding.Code = "predict flag outside"    // what, written, least, most, example
	SeedUnread    finding.Code = "predict seed unreadable" // written
	RingUnread    finding.Code = "predict ring unreadable" // written
	TooManyPasses finding.Code = "predict too many passes" // n, most
	PassesFall    finding.Code = "predict passes fall"     // flag, from, to, unit, example
	StatedHere    finding.Code = "predict stated here"     // flags
)
