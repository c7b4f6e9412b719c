package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	holes.NoRange:      {"written": "wide"},
	holes.FallingRange: {"written": "14-6", "from": unit.Length(14), "to": unit.Length(6)},
	holes.BySizeAlone:  {"sizes": []unit.Length{11, 6.6}},
	holes.SharedRange:  {"use": "fastener", "range": "6-14 mm", "other": "bore", "otherRange": "12 mm-"},
})
