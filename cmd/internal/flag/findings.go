package flag

import "drawdown/geometry/finding"

// Findings about the flags of any command.
const (
	NotKnown    finding.Code = "flag unknown value"    // flag, written, meant, allowed
	NoValue     finding.Code = "flag value missing"    // flag, words: that it takes
	Unread      finding.Code = "flag value unreadable" // flag, written, sort: of the value
	NotThere    finding.Code = "flag not there"        // command, flag, meant, flags
	Together    finding.Code = "flags together"        // flags, allowed
	NeedsOther  finding.Code = "flag needs other"      // flag, other, example
	ForSheets   finding.Code = "flag for sheets"       // flag
	AboveZero   finding.Code = "flag above zero"       // flag, written
	TurnMissing finding.Code = "flag turn missing"     // written
	NoTurn      finding.Code = "flag turn none"        // written, turn
)

// Findings about the flags of predict.
const (
	FlagOutside   finding.Code = "predict flag outside"    // what, written, least, most, example
	SeedUnread    finding.Code = "predict seed unreadable" // written
	RingUnread    finding.Code = "predict ring unreadable" // written
	TooManyPasses finding.Code = "predict too many passes" // n, most
	PassesFall    finding.Code = "predict passes fall"     // flag, from, to, unit, example
	StatedHere    finding.Code = "predict stated here"     // flags
)
