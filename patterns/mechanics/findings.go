package mechanics

import "drawdown/geometry/finding"

// Errors in what a pattern states about bolts and clamped parts.
const (
	RowAndFlange     finding.Code = "reader row and flange"         //
	PartThick        finding.Code = "reader part thick"             // thickness, grip
	PartThin         finding.Code = "reader part thin"              // thickness, grip
	IntoOther        finding.Code = "reader into other"             // kind, into, counterpart
	StiffnessTwice   finding.Code = "reader gasket stiffness twice" //
	HalfRing         finding.Code = "reader half ring"              //
	RingAndStrip     finding.Code = "reader ring and strip"         //
	CrushedFirst     finding.Code = "reader crushed first"          // crush, least
	PressureAlone    finding.Code = "reader pressure alone"         //
	SealedAlone      finding.Code = "reader sealed alone"           //
	RowOffLine       finding.Code = "reader row off line"           //
	RowTooShort      finding.Code = "reader row too short"          // length, span, start
	HalfPipe         finding.Code = "reader half pipe"              //
	FullFace         finding.Code = "reader full face"              //allowed
	GasketInsideOut  finding.Code = "reader gasket inside out"      // inner, outer
	FlangeOffCircle  finding.Code = "reader flange off circle"      //
	FlangeOrder      finding.Code = "reader flange order"           // circle, bore, outer
	GasketStandsOut  finding.Code = "reader gasket stands out"      // gasket, flange
	PipeUnfit        finding.Code = "reader pipe unfit"             // radius, bore
	NoHead           finding.Code = "reader no head"                // found, meant, allowed
	InspectUnasked   finding.Code = "reader inspect unasked"        // kind
	InspectOnStud    finding.Code = "reader inspect on stud"        // kind
	InspectOff       finding.Code = "reader inspect off"            // limit, length, most
	ThreadTooLong    finding.Code = "reader thread too long"        // threaded, length
	ShankAndSections finding.Code = "reader shank and sections"     //
	SectionsTooLong  finding.Code = "reader sections too long"      // sections, length
	StudWithHead     finding.Code = "reader stud with head"         // kind
	StudWithoutNut   finding.Code = "reader stud without nut"       // kind
	HeadOnStud       finding.Code = "reader head on stud"           // kind
	NoCoefficients   finding.Code = "reader no coefficients"        // what, found
	SpreadWide       finding.Code = "reader spread wide"            // mean, spread, least, most
	HighestFirst     finding.Code = "reader highest first"          // what, low, high
	NoShare          finding.Code = "reader no share"               // what, found
	GoesWithSqueezed finding.Code = "reader goes with squeezed"     //
	TheKind          finding.Code = "reader the kind"               // kind
	GripShort        finding.Code = "reader grip short"             // kind, grip, both: thickness of the parts
)
