package figures

import "drawdown/geometry/unit"

// Thresholds for the findings, each with its reason.
const (
	// leastShare is the share of yield stress below which a bolt is hardly
	// tightened, so that the unit is probably wrong (common practice, no
	// source: plastic covers take more; a torque in kgf·m typed as N·m takes
	// less).
	leastShare = 0.1

	// shareOfUsedOnce is the share of yield stress below which a bolt tightened
	// by torque alone has no reason to be used only once (common practice, no
	// source: bolts are replaced that were near yield or past it).
	shareOfUsedOnce = 0.75

	// leastTurn is the angle below which a finding asks about it: less than a
	// wrench twists and an angle gauge can show (common practice, no source;
	// makers use 30° and more).
	leastTurn unit.Angle = 15

	// wholeTurn is the angle above which a finding asks about it (common
	// practice, no source: head bolts take half a turn, the longest structural
	// bolts two thirds). Long tie rods that stay below yield take more.
	wholeTurn unit.Angle = 360

	// mostTurns is more than any bolt bears, and still within the range of the
	// calculations.
	mostTurns = 10 * wholeTurn

	// mostOfStretch is the share of its uniform elongation that a bolt may use
	// up (common practice, no source: the nut rotations of RCSC, table 8.2, use
	// up to a sixth of it in short bolts; the rest covers the scatter of torque
	// and angle).
	mostOfStretch = 0.5

	// breakingWhereUnknown is the ratio of breaking to yield if only one stress
	// is stated: that of class 12.9, ISO 898-1, table 3.
	breakingWhereUnknown = 1220. / 1100.

	// byHand is the torque above which no hand wrench is used (common practice,
	// no source: the largest wrenches for one person reach about 1,000 N·m).
	byHand unit.Torque = 1000

	// lengthRounding is the rounding of lengths, which files give in whole
	// millimetres.
	lengthRounding unit.Length = 0.5

	// mostBeyondThread is how far a bolt may extend beyond its engagement, and
	// mostBeyondNut beyond its nut, in diameters (common practice, no source).
	mostBeyondThread = 1
	mostBeyondNut    = 3

	// leastNut is the height of a nut in diameters: ISO 4032 has 0.8 to 0.93.
	leastNut = 0.8

	// leastAcross and mostAcross limit the width across flats of heads and
	// nuts, in diameters: ISO 4014, 4032 and 15071 and ASME B18.2.1 and B18.2.2
	// have 1.25 to 2.
	leastAcross, mostAcross = 1.1, 2.05

	// leastNutAcross is the limit for nuts, which have no narrow forms such as
	// twelve-point heads: the small series of ISO 15071 begins at 1.25.
	leastNutAcross = 1.24

	// leastClearance is the hole size in diameters below which a bolt is a
	// tight fit: the fine series of ISO 273 has 1.04 to 1.07.
	leastClearance = 1.01

	// leastFriction and mostFriction limit the friction of bolts: VDI 2230 Part
	// 1, table A5, has 0.04 for its lowest class and 0.30 upwards for its
	// highest.
	leastFriction, mostFriction = 0.04, 0.4

	// muchSettlement is the share of the preload from which a loss is reported
	// (common practice, no source).
	muchSettlement = 0.15
)

// strongestClass is used if the class is unknown: the yield stress of class
// 12.9, ISO 898-1, table 3.
const strongestClass = "1100 MPa"

// softestUsual is the softest of the usual clamped parts.
const softestUsual = "cast aluminium"

// Bearing faces in diameters, if the thread has no standard head.
const (
	usualFace   = 1.5 // Shigley 9th ed., section 8-5
	usualFlange = 1.9 // ISO 4162: 1.86 to 1.93
)
