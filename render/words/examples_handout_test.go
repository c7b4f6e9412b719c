package words

import "drawdown/geometry/finding"

// The codes are named in full: package handout stands above this one.
var _ = exampleOf(map[finding.Code]finding.Values{
	"handout bolts without room": {"key": true, "sheet": "3", "count": 2, "of": 14, "paper": "a5"},
	"handout label without room": {"key": false, "sheet": "3", "label": "water pump", "paper": "a5"},
})
