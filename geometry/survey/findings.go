package survey

import "drawdown/geometry/finding"

// What a survey found, by the ids of its holes. A next is what to measure, a
// list of Between.
const (
	WrongReading    finding.Code = "survey wrong reading"     // from, to, off, way: long or short, taken: as if it was in this Way
	RivalReadings   finding.Code = "survey rival readings"    // readings: Between
	Free            finding.Code = "survey free hole"         // hole, next: it can move and no reading changes
	Weak            finding.Code = "survey weak hole"         // hole, error, next: fixed, but with a large standard error
	TwoPlaces       finding.Code = "survey two places"        // hole, x, y, next: it fits in another place as well
	MirrorFits      finding.Code = "survey mirror fits"       //
	OneLine         finding.Code = "survey one line"          //
	Unchecked       finding.Code = "survey unchecked"         // readings: Between
	Agreement       finding.Code = "survey agreement"         // rms, reading, fine: printed to 0.001 mm; expected and stated where a reading counts for less, rounded: to what, where that is why
	WayRound        finding.Code = "survey way round"         // way: clockwise or anticlockwise, first
	LopsidedSide    finding.Code = "survey lopsided"          // side: above or below, named, against, holes, far
	AccuracyCoarse  finding.Code = "survey accuracy coarse"   // stated, rms, digit: of the readings, which agree far better
	AccuracyFine    finding.Code = "survey accuracy fine"     // stated, rms, digit: they agree far worse
	AccuracyOfDigit finding.Code = "survey accuracy of digit" // stated, rms, digit
	Between         finding.Code = "survey between"           // from, to
)

// What a regular layout is called. Sizes are in mm, to a thousandth.
const (
	GridLayout      finding.Code = "survey grid"      // columns, rows, x, y
	RectangleLayout finding.Code = "survey rectangle" // columns, rows, x, y
	CircleLayout    finding.Code = "survey circle"    // count, x
	RowLayout       finding.Code = "survey row"       // count, x
)

// NoNetwork refuses holes and readings that no survey file can hold.
const NoNetwork finding.Code = "survey no network"
