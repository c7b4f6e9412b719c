package compliance

import "drawdown/geometry/finding"

// Reasons why a part cannot be calculated. Fasteners count from 1.
const (
	NoFasteners   finding.Code = "joint has no fasteners"
	NotPositive   finding.Code = "joint figure not above zero" // what, value, unit
	NoPoisson     finding.Code = "joint poisson's ratio"       // value
	RowTooLong    finding.Code = "joint row too long"          // length, reach, times
	OffTheRow     finding.Code = "joint fastener off the row"  // number, at, length
	OffThePart    finding.Code = "joint fastener off the part" // number, x, y
	Afloat        finding.Code = "joint part hangs on nothing"
	NoFlange      finding.Code = "joint flange without a ring"    // outer, bore
	CircleOff     finding.Code = "joint bolt circle off the ring" // circle, bore, outer
	GasketOff     finding.Code = "joint gasket off the ring"      // inner, outer, most
	GasketUnknown finding.Code = "joint gasket unknown"           // written, allowed
	Misused       finding.Code = "joint misused"                  // what, have, want: a bug in the program
)

// Misuse is the error for a caller that breaks the contract of a function.
func Misuse(what string, have, want any) finding.Finding {
	return finding.Failed(Misused, finding.Values{"what": what, "have": have, "want": want})
}
