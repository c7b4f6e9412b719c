package handout

import "drawdown/geometry/finding"

// What did not fit on the paper; key is true for the key, false for the sheet.
const (
	BoltsWithoutRoom finding.Code = "handout bolts without room" // key, sheet, count, of, paper
	LabelWithoutRoom finding.Code = "handout label without room" // key, sheet, label, paper
)
