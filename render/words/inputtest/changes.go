package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/meaning"
	"drawdown/patterns/relabel"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	meaning.NothingBelow:      {"key": "omit"},
	meaning.ExtendsOther:      {"title": "Cylinder head, right bank", "base": "Gearbox cover"},
	meaning.NoChanges:         {"found": `"M7"`, "example": "[M1, M2]"},
	meaning.OmittedAndChanged: {"id": "M7"},
	meaning.NotBelow:          {"key": "omit", "name": `"M33"`, "meant": "M3"},
	meaning.TheChange:         {"id": "M7"},
	meaning.ListReplaced:      {"key": "fasteners", "file": "left.yaml", "lost": 13, "count": 14},
	meaning.StagesReplaced:    {"side": "tighten", "file": "left.yaml", "before": 5, "now": 3, "waits": 1},
	meaning.AngleLost:         {"file": "left.yaml", "kind": "main", "angle": unit.Angle(180), "left": unit.Angle(90)},
	meaning.UnitsChanged:      {"units": `"in"`, "file": "left.yaml", "base": "mm"},
	meaning.MirrorLabels:      {"labels": []string{"cyl 1", "cyl 3", "in 1a"}, "example": "cyl 1: …"},
	relabel.NoRelabel:         {"found": `"cyl 1"`, "example": "[M1, M2]"},
	relabel.NoAddend:          {"found": `"four"`, "most": 9999},
	relabel.MadeAlike:         {"first": `"cyl 1"`, "second": `"cyl 2"`, "name": `"cyl 2"`},
	relabel.NamesNothing:      {"name": `"cyl 9"`, "meant": "cyl 1"},
	relabel.NoNumbers:         {},
	relabel.Exchanged:         {"first": "M5", "second": "M6"},
	relabel.OneOff:            {"old": "in 3", "new": "in 7", "by": 3},
	relabel.BanksShare:        {"labels": []string{`"cyl 2"`}},
	relabel.BanksGap:          {"missing": 4, "least": 1, "most": 7},
})
