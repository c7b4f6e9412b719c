package wrenches

import "drawdown/geometry/finding"

// Findings about a list of wrenches.
const (
	TooManyWrenches finding.Code = "reader too many wrenches"   // count, most
	WrenchTwice     finding.Code = "reader wrench twice"        // name
	NumberTwice     finding.Code = "reader wrench number twice" // number
	NoScaleStart    finding.Code = "reader no scale start"      // written, end
	NoDivision      finding.Code = "reader no scale division"   // written
	OtherUnit       finding.Code = "reader other unit"          // key, written, unit
	CalibratedAhead finding.Code = "reader calibrated ahead"    // date, today
	BelowZero       finding.Code = "reader below zero"          // key, written
)
