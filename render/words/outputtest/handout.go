package outputtest

import "drawdown/geometry/finding"

// The codes are named in full: their packages stand above this one.
var _ = exampleOf(map[finding.Code]finding.Values{
	"handout bolts without room": {"key": true, "sheet": "3", "count": 2, "of": 14, "paper": "a5"},
	"handout label without room": {"key": false, "sheet": "3", "label": "water pump", "paper": "a5"},
	"answers not named":          {},
	"answers missing":            {"file": "class.csv"},
	"answers or sheets":          {},
	"handout seed alone":         {},
	"answers and pattern":        {},
	"answer graded":              {"student": "Ana M.", "sheet": "2", "outcome": "right"},
	"answer unread":              {"student": "Ana M.", "line": "7", "outcome": "not marked"},
	"answers of others":          {"layouts": 12, "seed": "7"},
})
