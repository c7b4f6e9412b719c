package unit

import "drawdown/geometry/finding"

// Reasons why a text is not a quantity. written is the whole text.
const (
	NoQuantity       finding.Code = "unit no quantity"       // written, examples
	NoTorque         finding.Code = "unit no torque"         // written, examples
	NoUnit           finding.Code = "unit missing"           // written, examples
	Unknown          finding.Code = "unit unknown"           // written, unit, allowed
	Unreadable       finding.Code = "unit unreadable"        // written, why
	TooLarge         finding.Code = "unit too large"         // written
	NotSensible      finding.Code = "unit not sensible"      // written, end: least or most, least, most
	DoubtfulComma    finding.Code = "unit doubtful comma"    // number, thousands, decimal: how to write either
	ThousandsSigns   finding.Code = "unit thousands signs"   // number
	ImproperFraction finding.Code = "unit improper fraction" // fraction
	NotAsked         finding.Code = "unit not asked"         // unit, allowed: no unit to print in
	NoStiffness      finding.Code = "unit no stiffness"      // written, least, most, unit, examples
	TooManyFigures   finding.Code = "unit too many figures"  // written, example
	FallingFigures   finding.Code = "unit falling figures"   // written, example
	NoDecimal        finding.Code = "unit no decimal"        // written, most: decimals
	NoGauge          finding.Code = "unit no gauge"          // written, allowed: of a measured value
)
