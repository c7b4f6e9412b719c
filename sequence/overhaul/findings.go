package overhaul

import "drawdown/geometry/finding"

// What the steps of a machine file say that does not go together. The place is the
// step, from 1.
const (
	PartTooEarly   finding.Code = "machine part too early"  // part, title
	GasketOfOther  finding.Code = "machine gasket twice"    // gasket, title, other
	GasketUnlisted finding.Code = "machine gasket missing"  // title
	LockStaysIn    finding.Code = "machine lock stays in"   // lock
	LockInAgain    finding.Code = "machine lock in again"   // lock
	LockOutAgain   finding.Code = "machine lock out again"  // lock
	PartOtherSide  finding.Code = "machine part other side" // part, title
	OffTooEarly    finding.Code = "machine off too early"   // part, title, joint: that asks for it

	TitleTwice      finding.Code = "machine title twice"        // title
	PartBehind      finding.Code = "machine part behind"        // part, over
	DrainedLate     finding.Code = "machine drained late"       // text, side, name
	TurnedOnce      finding.Code = "machine turned once"        // text, side: that lacks it
	StopperStays    finding.Code = "machine stopper stays"      // text
	TextOfOther     finding.Code = "machine text of other"      // text, side: where it stands
	ItemOfOtherSide finding.Code = "machine item of other side" // item, name
	GasketNowhere   finding.Code = "machine gasket nowhere"     // gasket, title
	SisterLacks     finding.Code = "machine sister lacks"       // name, sister, item
	SisterMissing   finding.Code = "machine sister missing"     // part, title
	SistersOrder    finding.Code = "machine sisters order"      // first, second, later, earlier
	MassesDiffer    finding.Code = "machine masses differ"      // text, name, other, sister
	BanksDiffer     finding.Code = "machine banks differ"       // title, other, turn: of other
	FrontUnturned   finding.Code = "machine front unturned"     // title, sister, front
	CylindersShared finding.Code = "machine cylinders shared"   // title, other, labels
	CylinderUnknown finding.Code = "machine cylinder unknown"   // title, labels, other: that has the bores
	ItemOfOther     finding.Code = "machine item of other"      // item, name
	ItemTwice       finding.Code = "machine item twice"         // item, name, other: that it is named after
	FluidOneWay     finding.Code = "machine fluid one way"      // text, side: that lacks it
	SwitchedOn      finding.Code = "machine switched on"        // text, side
	ToolMissing     finding.Code = "machine tool missing"       // text
	TooHeavy        finding.Code = "machine too heavy"          // text, each
	GearTooWeak     finding.Code = "machine gear too weak"      // text, load, gear
	MassUnlikeJoint finding.Code = "machine mass unlike joint"  // text, other
	CylinderLeftOut finding.Code = "machine cylinder left out"  // what, missing
	CylinderNowhere finding.Code = "machine cylinder nowhere"   // what, labels, most: number of the joints
	LimitsDiffer    finding.Code = "machine limits differ"      // what, title, sister
)
