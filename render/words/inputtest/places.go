package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/places"
)

var (
	earlier    = finding.Failed(nodes.StandsAt, finding.Values{"line": 3, "file": "head.yaml"})
	somewhere  = finding.Noted(places.AtPlace, finding.Values{"x": 40.0, "y": -12.5})
	somewhere2 = finding.Noted(places.AtPlace, finding.Values{"x": 0.0, "y": 12.5})
)

var _ = exampleOf(map[finding.Code]finding.Values{
	places.HolesOverlap:     {"id": "B2", "other": "B1", "first": earlier, "apart": unit.Length(1), "need": unit.Length(11), "holes": "yes"},
	places.HeadsOverlap:     {"id": "B2", "other": "B1", "first": earlier, "apart": unit.Length(14.2), "need": unit.Length(16)},
	places.BoreTooWide:      {"diameter": unit.Length(90_000), "span": unit.Length(420)},
	places.BoreOverBolt:     {"label": "cyl 1", "diameter": unit.Length(140), "ids": []string{"M1", "M2"}},
	places.BoreCutsHole:     {"label": "cyl 1", "diameter": unit.Length(76), "ids": []string{"M1"}},
	places.OutlineCrosses:   {"first": somewhere, "second": somewhere2},
	places.OutlineHoldsNone: {"count": 14},
	places.FastenersOff:     {"count": 2, "ids": []string{"F1", "F2"}, "outline": true},
	places.BoreOff:          {"label": "cyl 1", "place": somewhere},
	places.BoresOverlap:     {"first": earlier, "apart": unit.Length(10), "need": unit.Length(76)},
	places.DowelOnBolt:      {"diameter": unit.Length(8), "id": "M3"},
	places.FarApart:         {"apart": unit.Length(2032), "through": unit.Length(9), "times": 225},
	places.StationOff:       {"id": "T2"},
	places.DowelOff:         {"place": somewhere},
	places.BoreOffOwnEdge:   {"label": "cyl 1", "place": somewhere},
	places.DowelOffOwnEdge:  {"diameter": unit.Length(8), "place": somewhere},
	places.DowelInBore:      {"diameter": unit.Length(8), "label": "cyl 1"},
	places.NumbersJumbled:   {"name": `"cyl 3"`, "before": `"cyl 4"`},
	places.KindOdd:          {"id": "M8", "kind": "side", "letters": "M", "usual": "main"},
	places.IDMissing:        {"id": "K5", "before": "K4"},
	places.ClusterOffBore:   {"names": []string{`"rod 4"`, `"rod 1"`}, "count": 2, "apart": unit.Length(45)},
	places.NumberMissing:    {"name": `"cyl 4"`, "before": `"cyl 2"`},
	places.BoreOtherSize:    {"name": `"cyl 3"`, "diameter": unit.Length(38), "usual": unit.Length(76)},
	places.OffItsRow:        {"id": "S1", "off": unit.Length(252), "place": finding.Noted(places.AtPlace, finding.Values{"x": -280.0, "y": -92.0})},
	places.EndOffPitch:      {"name": `"cap 5"`, "apart": unit.Length(33), "pitch": unit.Length(96)},
	places.BoreOffLine:      {"name": `"cyl 3"`, "off": unit.Length(6)},
	places.DowelsDiffer:     {"diameter": unit.Length(18), "other": unit.Length(8)},
	places.FrontAtLast:      {"name": `"cyl 4"`, "front": "left"},
	places.OutlineSlants:    {"first": finding.Noted(places.AtPlace, finding.Values{"x": 362.0, "y": 80.0}), "second": finding.Noted(places.AtPlace, finding.Values{"x": 326.0, "y": -80.0})},
	places.StationFar:       {"id": "T8", "place": finding.Noted(places.AtPlace, finding.Values{"x": 510.0, "y": 0.0})},
	places.BoreOffCentre:    {"label": "shaft", "off": unit.Length(13), "of": "circle"},
	places.StationOffMirror: {"id": "L5", "other": "L2", "off": unit.Length(36)},
	places.LabelsTogether:   {"label": `"INTAKE"`, "other": `"EXHAUST"`},
	places.SidesTogether:    {"label": `"INTAKE"`, "other": `"EXHAUST"`},
	places.FlywheelAtFront:  {"label": `"FLYWHEEL SIDE"`, "front": "left"},
	places.LabelUpsideDown:  {"label": `"TOP"`},
	places.DowelsTogether:   {"first": finding.Failed(nodes.StandsAt, finding.Values{"line": 3, "file": "head.yaml"}), "apart": unit.Length(2), "need": unit.Length(10)},
	places.DigitsExchanged:  {"id": "R2", "written": -69.0, "meant": -96.0},
	places.NumbersApart:     {"name": `"shell 4"`, "other": `"cap 4"`, "off": unit.Length(100)},
	places.FastenerLost:     {"id": "K1", "at": somewhere},
	places.LabelsExchanged:  {"label": `"in 1"`, "other": `"ex 1"`},
	places.BoresOutside:     {"labels": []string{`"port 1"`, `"port 4"`}},
	places.InnerOuter:       {"inner": "inner", "outer": "outer"},
	places.BoreOffPitch:     {"name": `"cyl 3"`, "off": unit.Length(9), "pitch": unit.Length(112)},
	places.LabelFar:         {"label": `"PUMP SIDE"`, "place": somewhere},
	places.LabelTwice:       {"label": `"cyl 1"`, "first": earlier},
	places.StationsTogether: {"id": "T2", "other": "T1", "first": earlier},
	places.FrontFacesView:   {"view": `"from the front"`, "front": "left"},
	places.CircleTurned:     {"off": unit.Angle(7.5), "count": 12},
	places.NumberAlone:      {"name": `"ex 5"`, "other": `"in 4"`},
	places.FrontAcross:      {"first": `"cyl 1"`, "last": `"cyl 4"`, "front": "top"},
	places.IDsExchanged:     {"id": "S2", "other": "S1", "letters": "S"},
	places.PairOfDigits:     {"written": 47.0, "meant": 74.0},
	places.AllInTheMiddle:   {"reach": unit.Length(38), "out": unit.Length(450)},
	places.FrontLabelAtRear: {"label": `"FRONT"`, "front": "left"},
	places.AtPlace:          {"x": 40.0, "y": -12.5},
})
