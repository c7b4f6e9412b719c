package places

import "drawdown/geometry/finding"

// Findings about the places of things.
const (
	HolesOverlap     finding.Code = "places holes overlap"       // id, other, first, apart, need, holes: yes or no
	HeadsOverlap     finding.Code = "places heads overlap"       // id, other, first, apart, need
	BoreTooWide      finding.Code = "places bore too wide"       // diameter, span
	BoreOverBolt     finding.Code = "places bore over bolt"      // label, diameter, ids
	BoreCutsHole     finding.Code = "places bore cuts hole"      // label, diameter, ids
	BoresOverlap     finding.Code = "places bores overlap"       // first, apart, need
	DowelOnBolt      finding.Code = "places dowel on bolt"       // diameter, id
	FarApart         finding.Code = "places far apart"           // apart, through, times
	StationOff       finding.Code = "places station off"         // id
	OutlineCrosses   finding.Code = "places outline crosses"     // first, second
	OutlineHoldsNone finding.Code = "places outline holds none"  // count
	FastenersOff     finding.Code = "places fasteners off"       // count, ids, outline: it is probably wrong
	BoreOff          finding.Code = "places bore off"            // label, place
	DowelOff         finding.Code = "places dowel off"           // place
	BoreOffOwnEdge   finding.Code = "places bore off own edge"   // label, place
	DowelOffOwnEdge  finding.Code = "places dowel off own edge"  // diameter, place
	DowelInBore      finding.Code = "places dowel in bore"       // diameter, label
	KindOdd          finding.Code = "places kind odd"            // id, kind, letters, usual: the kind of the others with these letters
	ClusterOffBore   finding.Code = "places cluster off bore"    // names, count, apart: the first from the bore of its name
	IDMissing        finding.Code = "places id missing"          // id, before
	NumbersJumbled   finding.Code = "places numbers jumbled"     // name, before
	NumberMissing    finding.Code = "places number missing"      // name, before
	BoreOtherSize    finding.Code = "places bore other size"     // name, diameter, usual
	BoreOffPitch     finding.Code = "places bore off pitch"      // name, off, pitch
	LabelFar         finding.Code = "places label far"           // label, place
	LabelTwice       finding.Code = "places label twice"         // label, first
	StationsTogether finding.Code = "places stations together"   // id, other, first
	FrontFacesView   finding.Code = "places front faces view"    // view, front
	OffItsRow        finding.Code = "places off its row"         // id, off, place
	EndOffPitch      finding.Code = "places end off pitch"       // name, apart, pitch
	BoreOffLine      finding.Code = "places bore off line"       // name, off
	DowelsDiffer     finding.Code = "places dowels differ"       // diameter, other
	FrontAtLast      finding.Code = "places front at last"       // name, front
	OutlineSlants    finding.Code = "places outline slants"      // first, second: ends of the edge
	StationFar       finding.Code = "places station far"         // id, place
	BoreOffCentre    finding.Code = "places bore off centre"     // label, off, of: circle, bolts
	NumbersApart     finding.Code = "places numbers apart"       // name, other: of the same number, off
	StationOffMirror finding.Code = "places station off mirror"  // id, other, off
	LabelsTogether   finding.Code = "places labels together"     // label, other
	SidesTogether    finding.Code = "places sides together"      // label, other
	FlywheelAtFront  finding.Code = "places flywheel at front"   // label, front
	LabelUpsideDown  finding.Code = "places label upside down"   // label
	DowelsTogether   finding.Code = "places dowels together"     // first, apart, need
	DigitsExchanged  finding.Code = "places digits exchanged"    // id, written, meant
	FastenerLost     finding.Code = "places fastener lost"       // id, at
	LabelsExchanged  finding.Code = "places labels exchanged"    // label, other
	BoresOutside     finding.Code = "places bores outside"       // labels
	InnerOuter       finding.Code = "places inner outer"         // inner, outer: kinds
	AtPlace          finding.Code = "places at"                  // x, y
	NumberAlone      finding.Code = "places number alone"        // name, other
	FrontAcross      finding.Code = "places front across"        // first, last, front
	IDsExchanged     finding.Code = "places ids exchanged"       // id, other, letters
	PairOfDigits     finding.Code = "places pair of digits"      // written, meant
	AllInTheMiddle   finding.Code = "places all in the middle"   // reach, out
	FrontLabelAtRear finding.Code = "places front label at rear" // label, front
	CircleTurned     finding.Code = "places circle turned"       // off, count
)
