package writing

import "drawdown/geometry/finding"

// Texts in a pattern file for the person who fills it in.
const (
	Version      finding.Code = "draft version"       //
	MachineIs    finding.Code = "draft machine"       //
	DateIs       finding.Code = "draft date"          //
	KindsAre     finding.Code = "draft kinds"         //
	ThreadFrom   finding.Code = "draft thread"        // from: how it is known
	AcrossFlats  finding.Code = "draft across"        //
	FastenersAre finding.Code = "draft fasteners"     //
	Offered      finding.Code = "draft offer"         // off, layout
	NoOutline    finding.Code = "draft no outline"    //
	NoTighten    finding.Code = "draft no tighten"    //
	StagesAre    finding.Code = "draft stages"        //
	SourceIs     finding.Code = "draft source"        //
	SomeManual   finding.Code = "draft manual"        //
	SomeLabel    finding.Code = "draft label"         //
	MarkIs       finding.Code = "draft mark"          //
	Look         finding.Code = "draft look"          // found
	LookAt       finding.Code = "draft look at"       // id, diameter, place, found
	HoldCard     finding.Code = "draft hold card"     //
	HoleUnsure   finding.Code = "draft hole unsure"   // id, row and column: where it lies
	HolesUnsure  finding.Code = "draft holes unsure"  // n
	PlaceUnsure  finding.Code = "draft place unsure"  // id, row and column: where it lies
	SizeLeftOut  finding.Code = "draft size left out" // holes, diameter
	OfLayout     finding.Code = "draft of layout"     // layout
	OfTable      finding.Code = "draft of table"      // points
	Title        finding.Code = "draft title"         // shape, columns, rows, count
)
