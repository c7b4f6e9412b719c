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
	NameOther       finding.Code = "reader wrench name other"   // name, end
	ScaleWide       finding.Code = "reader scale wide"          // from, to
	DivisionCoarse  finding.Code = "reader division coarse"     // written, end
	CalibratedLong  finding.Code = "reader calibrated long ago" // date, newest: of the others
)
