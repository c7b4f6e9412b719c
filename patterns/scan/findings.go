package scan

import "drawdown/geometry/finding"

// Findings about pictures.
const (
	EmptyScan        finding.Code = "scan empty"           // file
	ScanTooLarge     finding.Code = "scan too large"       // file, most
	TooManyPixels    finding.Code = "scan too many pixels" // file, width, height, most
	TooMuchMemory    finding.Code = "scan too much memory" // file, size, most
	OddlyPacked      finding.Code = "scan oddly packed"    // file
	Damaged          finding.Code = "scan damaged"         // file, format, why
	IsPDF            finding.Code = "scan is pdf"          // file
	OtherPicture     finding.Code = "scan other picture"   // file, format
	NoPicture        finding.Code = "scan no picture"      // file
	NotAPhoto        finding.Code = "photo unreadable"     //
	PhotoOddlyPacked finding.Code = "photo oddly packed"   //
	PhotoTooLarge    finding.Code = "photo too large"      // width, height, most: in millions
	Unreadable       finding.Code = "scan unreadable"      // file, why
)
