package wrench

import "drawdown/geometry/finding"

// Errors of a wrench setting, and notes on it.
const (
	NoTorque          finding.Code = "wrench torque none"     // torque
	AdapterRange      finding.Code = "wrench adapter"         // adapter, most
	AdapterAngleRange finding.Code = "wrench adapter angle"   // angle
	NoLength          finding.Code = "wrench length missing"  // adapter, most
	LengthRange       finding.Code = "wrench length"          // length, adapter, most
	LeverTooShort     finding.Code = "wrench lever too short" // adapter, angle, lever, length
	NoneHasLength     finding.Code = "wrench lengths missing" // adapter, names
	OfWrench          finding.Code = "wrench faulty"          // name, why
	RangeFalls        finding.Code = "wrench range falls"     // name, min, max: as on its scale
	DivisionRange     finding.Code = "wrench division"        // name, division
	NoneFits          finding.Code = "wrench none fits"       // torque, ranges, skipped, least, most: of the scale of a wrench that would fit
	OutOfRange        finding.Code = "wrench out of range"    // name, least, most, setting
	CoarseScale       finding.Code = "wrench scale coarse"    // name, scale, torque, rounding
	HoldAtGrip        finding.Code = "wrench hold at grip"    //
	LeftOut           finding.Code = "wrench left out"        // names
	Breakaway         finding.Code = "wrench breakaway"       //
	PullTooGreat      finding.Code = "wrench pull too great"  // length, torque, force, limit
	LengthShort       finding.Code = "wrench length short"    // length, torque, limit
	LengthLong        finding.Code = "wrench length long"     // length, torque, force, limit
	ClickAssumed      finding.Code = "assumed click wrench"   // tolerance, small: its scale ends at 10 N·m
	UsableAssumed     finding.Code = "assumed wrench usable"  // name, least
)
