package outputtest

import "drawdown/geometry/finding"

var _ = exampleOf(map[finding.Code]finding.Values{
	"sheet numbers no room": {"where": "condition", "left": 3, "of": 14, "paper": "A5"},
	"sheet most no room":    {"left": 67, "of": 100, "paper": "a4"},
	"sheet label no room":   {"where": "loosen", "label": "EXHAUST SIDE", "paper": "A5"},
	"sheet small no room":   {"where": "tighten", "left": 3, "paper": "A5"},
	"sheet words no room":   {"words": "front", "paper": "A4"},
	"sheet these no room":   {"left": 3, "words": []string{"M1", "M2", "front"}},
	"sheet empty":           {"name": "b2"},
	"sheets too many":       {"width": 9000.0, "height": 800.0, "sheets": 312.0, "paper": "A4", "most": 100},
	"picture resolution":    {"dpi": 5, "least": 36, "most": 1200},
	"picture too large":     {"page": "card", "width": 420.0, "height": 297.0, "dpi": 1200, "across": 19842.0, "down": 14031.0, "most": 120, "best": 790},
	"sheet piece too large": {"name": "M3", "paper": "A4"},
	"sheet words cut":       {"name": "M3", "paper": "A4"},
})
