package handout

import "drawdown/geometry/finding"

// What found no room on the paper; key says that it is on the key, not on the
// sheet.
const (
	BoltsWithoutRoom finding.Code = "handout bolts without room" // key, sheet, count, of, paper
	LabelWithoutRoom finding.Code = "handout label without room" // key, sheet, label, paper
)
