package survey

import "drawdown/geometry/finding"

// Findings of a survey, by the ids of its holes. next lists what to measure, as
// Between findings.
const (
	WrongReading      finding.Code = "survey wrong reading"       // from, to, off, way: long or short, taken: the Way that would explain it
	RivalReadings     finding.Code = "survey rival readings"      // readings: Between
	Free              finding.Code = "survey free hole"           // hole, next: it can move without changing a reading
	Weak              finding.Code = "survey weak hole"           // hole, error, next: fixed, but with a large standard error
	Disputed          finding.Code = "survey disputed hole"       // hole, readings: Between, error, next: several of its readings are wrong, and too few agree
	BadDiameter       finding.Code = "survey bad diameter"        // hole, stated, fits, count: readings over its edges
	DiameterOrReading finding.Code = "survey diameter or reading" // hole, stated, fits, count
	TwoPlaces         finding.Code = "survey two places"          // hole, x, y, next: it also fits in another place
	MirrorFits        finding.Code = "survey mirror fits"         //
	OneLine           finding.Code = "survey one line"            //
	Unchecked         finding.Code = "survey unchecked"           // readings: Between
	Agreement         finding.Code = "survey agreement"           // rms, reading, fine: printed to 0.001 mm; expected and stated if a reading counts for less; rounded: to what, if that is the reason
	WayRound          finding.Code = "survey way round"           // way: clockwise or anticlockwise, first
	LopsidedSide      finding.Code = "survey lopsided"            // side: above or below, named, against, holes, far
	AccuracyCoarse    finding.Code = "survey accuracy coarse"     // stated, rms, digit: of the readings, which agree much better
	AccuracyFine      finding.Code = "survey accuracy fine"       // stated, rms, digit: they agree much worse
	AccuracyOfDigit   finding.Code = "survey accuracy of digit"   // stated, rms, digit
	Between           finding.Code = "survey between"             // from, to
)

// Names of regular layouts. Sizes are in mm, to a thousandth.
const (
	GridLayout      finding.Code = "survey grid"      // columns, rows, x, y
	RectangleLayout finding.Code = "survey rectangle" // columns, rows, x, y
	CircleLayout    finding.Code = "survey circle"    // count, x
	RowLayout       finding.Code = "survey row"       // count, x
)

// NoNetwork rejects holes and readings that no survey file can contain.
const NoNetwork finding.Code = "survey no network"
