package sheet

import "drawdown/geometry/finding"

// What did not fit on the paper. where is tighten, loosen, condition or
// drawing.
const (
	NumbersNoRoom finding.Code = "sheet numbers no room" // where, left, of, paper
	MostNoRoom    finding.Code = "sheet most no room"    // left, of, paper: "" if no paper helps
	LabelNoRoom   finding.Code = "sheet label no room"   // where, label, paper
	SmallNoRoom   finding.Code = "sheet small no room"   // where, left, paper
	TheseNoRoom   finding.Code = "sheet these no room"   // left, words
	WordsNoRoom   finding.Code = "sheet words no room"   // words, paper
	EmptySheet    finding.Code = "sheet empty"           // name: left out
	PieceTooLarge finding.Code = "sheet piece too large" // name, paper
	TooManySheets finding.Code = "sheets too many"       // width, height, sheets, paper, most
	WordsCut      finding.Code = "sheet words cut"       // name, paper
)
