package head

import "drawdown/geometry/finding"

// Errors of a head, and assumptions where a file leaves something open.
const (
	NoSuchForm       finding.Code = "head unknown"              // written, allowed
	NoHexagon        finding.Code = "head no standard hexagon"  // thread
	NoSocket         finding.Code = "head no standard socket"   // thread, allowed
	NoHeadOfForm     finding.Code = "head no standard form"     // thread, form, standard, allowed
	SizeRange        finding.Code = "head size"                 // what: a dimension, size, thread, least, most
	FaceNotWider     finding.Code = "head face not wider"       // face, thread, hole
	AcrossTellsNone  finding.Code = "head across tells no face" // across, form, hexagon
	NoSuchWasher     finding.Code = "washer unknown"            // written, allowed
	NoStandardWasher finding.Code = "washer no standard"        // thread
	LimitUnknown     finding.Code = "material pressure unknown" // material, allowed
	NoPreload        finding.Code = "pressure preload none"     // preload
	FaceAssumed      finding.Code = "assumed face"              // face, standard
	FaceOfAcross     finding.Code = "assumed face of head"      // face, across
	HoleAssumed      finding.Code = "assumed hole"              // hole, standard
	WasherAssumed    finding.Code = "assumed washer"            // outer, thickness, hole, standard, hardness, beyond
	LimitAssumed     finding.Code = "assumed limiting pressure" // material, limit, source
)

// Dimensions of a head, as terms of the trade.
const (
	acrossMeasure finding.Term = "width across flats"
	faceMeasure   finding.Term = "bearing face"
	holeMeasure   finding.Term = "hole"
)
