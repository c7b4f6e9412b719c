package edit

import "drawdown/geometry/finding"

// Reasons why a pattern file is not changed.
const (
	Unreadable  finding.Code = "edit unreadable"   //
	NoPart      finding.Code = "edit no part"      // path
	Entangled   finding.Code = "edit entangled"    // path
	NoFastener  finding.Code = "edit no fastener"  // id
	IDTaken     finding.Code = "edit id taken"     // id
	NoOperation finding.Code = "edit no operation" // written
	LacksValue  finding.Code = "edit lacks value"  // do, key
	ErrorsFirst finding.Code = "edit errors first" //
	Elsewhere   finding.Code = "edit elsewhere"    // id
	TextChanged finding.Code = "edit text changed" //
	TooFew      finding.Code = "edit too few"      // do, least
	NotRegular  finding.Code = "edit not regular"  //
)
