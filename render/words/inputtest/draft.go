package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
)

// Of drafts the patterns speak, which see no words; their codes are written out
// here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"draft version":        {},
	"draft machine":        {},
	"draft date":           {},
	"draft kinds":          {},
	"draft thread":         {"from": "hole"},
	"draft across":         {},
	"draft fasteners":      {},
	"draft offer":          {"off": unit.Length(0.06), "layout": survey.Regular{Shape: survey.Grid, Columns: 3, Rows: 2, X: 72, Y: 84}.Named()},
	"draft no outline":     {},
	"draft no tighten":     {},
	"draft stages":         {},
	"draft source":         {},
	"draft manual":         {},
	"draft label":          {},
	"draft look":           {"found": "B to D is 0.94 mm too long"},
	"draft look at":        {"id": "F3", "diameter": "8.4", "place": "[50, 29.97]", "found": "its edge is torn"},
	"draft mark":           {},
	"draft hold card":      {},
	"draft hole unsure":    {"id": "F3", "row": "top", "column": "right"},
	"draft place unsure":   {"id": "C1", "row": "top", "column": "right"},
	"draft size left out":  {"holes": 4, "diameter": unit.Length(6)},
	"draft holes unsure":   {"n": 3},
	"draft surveyed":       {"readings": 15, "holes": 6, "agreement": "readings agree"},
	"draft hole missing":   {"id": "G"},
	"draft hole elsewhere": {"id": "G"},
	"draft hole weak":      {"id": "G", "error": unit.Length(0.62)},
	"draft mirrored":       {},
	"draft of drawing":     {"file": "cover.dxf", "unit": "mm", "width": 444.0, "height": unit.Length(180)},
	"draft by rule":        {},
	"draft lacks":          {},
	"draft holes taken":    {"diameter": "8.4", "count": 6, "use": "fastener"},
	"draft points taken":   {"count": 4},
	"draft drawing layers": {"layers": []string{"HOLES (8)", "EDGE (4)"}, "unread": []string{"NOTES (12)"}},
	"draft of table":       {"points": 12},
	"draft of layout":      {"layout": survey.Regular{Shape: survey.Circle, Count: 16, X: 240}.Named()},
	"draft title":          {"shape": "grid", "columns": 5, "rows": 2, "count": 0},
})
