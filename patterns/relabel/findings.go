package relabel

import "drawdown/geometry/finding"

// Findings about new names.
const (
	NoRelabel    finding.Code = "relabel none"          // found, example
	NoAddend     finding.Code = "relabel no addend"     // found, most
	MadeAlike    finding.Code = "relabel alike"         // first, second, name
	NamesNothing finding.Code = "relabel names nothing" // name, meant
	NoNumbers    finding.Code = "relabel no numbers"    //
	Exchanged    finding.Code = "relabel exchanged"     // first, second: old names
	BanksShare   finding.Code = "relabel banks share"   // labels: that both banks have
	BanksGap     finding.Code = "relabel banks gap"     // missing, least, most
)
