package figures

import "drawdown/geometry/unit"

// The thresholds of the verdicts, each with its ground.
const (
	// leastShare is the share of its yield stress below which a bolt is hardly
	// tightened at all, so that the unit is probably another one (common
	// practice, no source: covers of plastic take more; a torque in kgf·m
	// typed as N·m takes less).
	leastShare = 0.1

	// shareOfUsedOnce is the share of its yield stress below which a bolt that is
	// tightened by torque alone has no reason to be used once (common practice, no
	// source: bolts are replaced that have been near yield or past it).
	shareOfUsedOnce = 0.75

	// leastTurn is the angle below which one is asked for: it is within what a
	// wrench springs and an angle gauge is read to (common practice, no source;
	// makers turn by 30° and more).
	leastTurn unit.Angle = 15

	// wholeTurn is the angle past which one is asked for (common practice, no
	// source: head bolts take half a turn, the longest bolts of structures two
	// thirds). Long tie rods that stay below yield take more.
	wholeTurn unit.Angle = 360

	// mostTurns is more than any bolt bears, and within what the mechanics take.
	mostTurns = 10 * wholeTurn

	// mostOfStretch is the share of its even stretch that a bolt may use up
	// (common practice, no source: the nut rotations of RCSC, table 8.2, use up
	// to a sixth of it in short bolts; what is left covers the scatter of torque
	// and angle).
	mostOfStretch = 0.5

	// breakingWhereUnknown is what breaks a bolt over what brings it to yield
	// where only one stress is stated: that of class 12.9, ISO 898-1, table 3.
	breakingWhereUnknown = 1220. / 1100.

	// lengthRounding is that of lengths, which files give in whole millimetres.
	lengthRounding unit.Length = 0.5

	// mostBeyondThread is how far a bolt may reach beyond its engagement, and
	// mostBeyondNut beyond its nut, in diameters (common practice, no source).
	mostBeyondThread = 1
	mostBeyondNut    = 3

	// leastNut is the height of a nut in diameters: ISO 4032 has 0.8 to 0.93.
	leastNut = 0.8

	// leastAcross and mostAcross bound the width across flats of heads and nuts,
	// in diameters: ISO 4014, 4032 and 15071 and ASME B18.2.1 and B18.2.2 have
	// 1.25 to 2.
	leastAcross, mostAcross = 1.1, 2.05

	// leastNutAcross bounds nuts, which have no narrow forms as heads with twelve
	// points have: the small series of ISO 15071 begins at 1.25.
	leastNutAcross = 1.24

	// leastClearance is the hole in diameters under which a bolt is a tight fit:
	// the fine series of ISO 273 has 1.04 to 1.07.
	leastClearance = 1.01

	// leastFriction and mostFriction bound what bolts turn against: VDI 2230
	// Part 1, table A5, has 0.04 for its lowest class and 0.30 upwards for its
	// highest.
	leastFriction, mostFriction = 0.04, 0.4

	// muchSettlement is the share of the preload from which on a loss is worth a
	// word (common practice, no source).
	muchSettlement = 0.15
)

// strongestClass stands in where the class is not known: the yield stress of
// class 12.9, ISO 898-1, table 3.
const strongestClass = "1100 MPa"

// softestUsual is the most yielding of the usual clamped parts.
const softestUsual = "cast aluminium"

// Bearing faces in diameters where the thread has no standard head.
const (
	usualFace   = 1.5 // Shigley 9th ed., section 8-5
	usualFlange = 1.9 // ISO 4162: 1.86 to 1.93
)
