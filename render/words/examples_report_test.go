package words

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Of its reports the command line speaks, which stands above; its codes are
// written out here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"report tighten":       {},
	"report loosen":        {},
	"report maker's order": {"kinds": []string{"main"}},
	"report cast order":    {"kinds": []string{"main"}},
	"report row":           {"kinds": []string{"main", "side"}},
	"report balanced":      {"kinds": []string{"main"}},
	"report seen as":       {"family": "circles", "named": true, "columns": 5, "rows": 2, "rings": []int{4, 8}, "edge": 18, "corners": 4, "inner": 2, "parts": []int{3, 3}, "missing": 1, "off": unit.Length(0.4)},
	"report turning":       {"kinds": []string{"main"}, "way": "spiral", "turn": "left"},
	"report stage":         {"n": 2, "does": "+90°", "kinds": []string{"main"}, "ids": "M1 M2", "note": "by hand"},
	"stage torque":         {"torque": unit.GivenTorque{Value: 24.5}, "other": unit.GivenTorque{Value: 18.07, Unit: unit.PoundForceFoot}, "share": 70.0, "workedout": true, "turns": "by 90° each"},
	"stage angle":          {"angle": unit.Angle(90), "workedout": true, "turns": "by 90° each"},
	"stage back off":       {"angle": unit.Angle(90)},
	"stage turn back":      {"angle": unit.Angle(90), "release": unit.Length(0.3125), "until": "repeat until no spring presses"},
	"stage wait":           {"wait": unit.Duration(10)},
	"stage out":            {},
	"report figures":       {"source": ""},
	"report worked out":    {},
	"report problem":       {"place": "a.yaml:3:5:", "severity": "error", "what": "no such key", "allowed": "title"},
	"report warning":       {"file": "a.yaml", "what": "2 numbers found no room"},
	"check sound":          {"file": "", "warnings": 1, "fasteners": 14, "kinds": 2, "tighten": 5, "loosen": 4},
	"order judged":         {"side": "loosen", "verdict": finding.Noted("order sound", nil)},
	"order sound":          {},
	"order remarks":        {},
	"order departs":        {},
	"order not whole":      {},
	"order maker's own":    {},
	"judged fault":         {},
	"judged departs":       {},
	"judged remark":        {},
	"judged note":          {},
	"judged this order":    {},
	"judged own order":     {},
	"judged group":         {"kinds": []string{"main"}, "layout": "row"},
	"judged pull early":    {},
	"judged pull most":     {},
	"judged pull at":       {"step": 3},
	"judged run":           {},
	"judged inwards":       {},
	"judged neighbours":    {},
	"judged wrench way":    {},
	"judged how to read":   {},
	"judged by practice":   {},
	"batch failed":         {"failed": 1, "n": 3, "drawn": 2},
	"batch errors":         {"n": 2},
})
