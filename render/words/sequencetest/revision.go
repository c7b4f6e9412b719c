package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/revision"
)

func byAngle(by unit.Angle) finding.Finding {
	return finding.Noted(revision.Figure, finding.Values{"do": "angle", "angle": by})
}

var _ = exampleOf(map[finding.Code]finding.Values{
	revision.Moved:        {"id": "M3", "by": unit.Length(1.2), "x": unit.Length(47.5), "y": unit.Length(90)},
	revision.Added:        {"ids": []string{"M9", "M10"}, "kind": "main"},
	revision.Removed:      {"ids": []string{"F1"}},
	revision.OtherKind:    {"id": "M3", "before": "main", "after": "side"},
	revision.OtherCast:    {"id": "M3", "before": "", "after": "7"},
	revision.NewKind:      {"kind": "side"},
	revision.KindGone:     {"kind": "side"},
	revision.KindData:     {"kind": "main", "what": "class", "before": "8.8", "after": "10.9"},
	revision.OtherFigure:  {"kind": "main", "stage": 2, "before": byAngle(60), "after": byAngle(90)},
	revision.OtherStages:  {"kind": "main", "side": "tighten", "before": []finding.Finding{byAngle(60)}, "after": []finding.Finding{byAngle(60), byAngle(90)}},
	revision.OtherOrder:   {"side": "tighten", "before": []string{"M1", "M2"}, "after": []string{"M2", "M1"}},
	revision.OtherHeading: {"what": "revision", "before": "1", "after": "2"},
	revision.OtherPart:    {"what": "outline"},
	revision.Figure:       {"do": "angle", "angle": unit.Angle(90)},
	revision.Nothing:      {},
})
