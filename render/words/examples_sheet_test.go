package words

import "drawdown/geometry/finding"

var _ = exampleOf(map[finding.Code]finding.Values{
	"sheet numbers no room": {"where": "condition", "left": 3, "of": 14, "paper": "A5"},
	"sheet label no room":   {"where": "loosen", "label": "EXHAUST SIDE", "paper": "A5"},
	"sheet small no room":   {"where": "tighten", "left": 3, "paper": "A5"},
	"sheet words no room":   {"words": "front", "paper": "A4"},
	"sheet these no room":   {"left": 3, "words": []string{"M1", "M2", "front"}},
	"sheet empty":           {"name": "b2"},
	"sheet piece too large": {"name": "M3", "paper": "A4"},
	"sheet words cut":       {"name": "M3", "paper": "A4"},
})
