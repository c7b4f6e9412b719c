package drawn

import "drawdown/geometry/finding"

// What a drawing leaves open for a pattern.
const (
	DrawnAgain       finding.Code = "drawing drawn again"        // count
	RoundSmaller     finding.Code = "drawing round smaller"      // count
	ThroughCentres   finding.Code = "drawing through centres"    // count
	SmallerThanAsked finding.Code = "drawing smaller than asked" // count, diameter, range
	CentreMarks      finding.Code = "drawing centre marks"       // count
	MarkedAgain      finding.Code = "drawing marked again"       // count
	NoFasteners      finding.Code = "drawing no fasteners"       //
	TooManyFasteners finding.Code = "drawing too many fasteners" // count, most
	TextsLeftOut     finding.Code = "drawing texts left out"     // count
	LongOutline      finding.Code = "drawing long outline"       // count, most
	OutsideEdge      finding.Code = "drawing outside edge"       // ids, count
	OnlyOpenings     finding.Code = "drawing only openings"      // count: closed lines
	SlotRead         finding.Code = "drawing slot"               // width, length, x, y: of its middle
	FrameLeftOut     finding.Code = "drawing frame"              // width, height
	OtherViews       finding.Code = "drawing other views"        // lines, circles: outside the part
	SeveralParts     finding.Code = "drawing several parts"      // count: closed lines side by side with fasteners in them
	FarAway          finding.Code = "drawing far away"           // metres
)

// Notes in a pattern file about the drawing that it came from.
const (
	OfDrawing   finding.Code = "draft of drawing"     // file, unit, width, height
	ByRule      finding.Code = "draft by rule"        //
	Lacks       finding.Code = "draft lacks"          //
	HolesTaken  finding.Code = "draft holes taken"    // diameter, count, use
	LayersRead  finding.Code = "draft drawing layers" // layers, unread: with their counts
	PointsTaken finding.Code = "draft points taken"   // count
)
