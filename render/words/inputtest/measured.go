package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
)

var near = finding.Values{"off": unit.Length(0.06), "layout": finding.Noted(survey.GridLayout, finding.Values{"columns": 3, "rows": 2, "x": 72.0, "y": 84.0})}

// Of its reports the command line speaks, which stands above; its codes are
// written out here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"surveyed":           {"title": "Pump cover", "holes": 6, "readings": 15},
	"surveyed wrong":     {"found": finding.Warned(survey.WrongReading, finding.Values{"from": "B", "to": "D", "off": unit.Length(0.94), "way": "long", "taken": ""})},
	"surveyed not fixed": {"found": finding.Warned(survey.Free, finding.Values{"hole": "E", "next": []finding.Finding{between("E", "A")}})},
	"surveyed not told":  {"found": finding.Warned(survey.MirrorFits, nil)},
	"surveyed furthest":  {},
	"surveyed no file":   {"holes": 2},
	"surveyed near":      near,
	"traced near":        near,
	"traced at":          {"scale": finding.Noted(trace.ScaleFromKnown, finding.Values{"distances": 1}), "pixel": unit.Length(0.1693)},
	"traced correct in":  {"file": "pump-gasket.fixes.yaml", "take": "bolts: [C1]", "drop": "drop: [F3]"},
	"traced size":        {"holes": 6, "diameter": unit.Length(8.4), "role": "fastener"},
	"traced taken":       {"found": finding.Noted(trace.NotNumbered, finding.Values{"holes": 2, "diameter": unit.Length(6)})},
	"traced doubt":       {"id": "F3", "found": finding.Warned(trace.Torn, finding.Values{"round": 0.81})},
	"traced specks":      {"specks": 6, "from": unit.Length(0.5), "to": unit.Length(2.5)},
	"traced turned":      {"by": unit.Angle(-1.8)},
	"traced not turned":  {},
	"column hole":        {},
	"column edge":        {},
	"cell loose":         {},
	"cell opening":       {},
	"drawn as points":    {"kinds": []string{"main", "stud"}},
	"not in drawing":     {},
})
