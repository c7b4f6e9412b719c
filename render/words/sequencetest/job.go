package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	teardown.ActOfARun:      {"act": "done", "allowed": []string{"part", "close"}},
	teardown.JobClosed:      {},
	teardown.NoPartStep:     {"step": 4},
	teardown.PartDone:       {"step": 4},
	teardown.PartOutOfOrder: {"step": 4, "next": 2, "what": "Oil sump"},
	teardown.NoSuchEntry:    {"of": "a1"},
	teardown.UndoneAlready:  {},
	teardown.NotUndone:      {"act": "note"},
	teardown.LaterPartDone:  {"step": 4},
	teardown.NothingNewer:   {},
	teardown.NoSuchJoint:    {"joint": "p4-haed", "allowed": []string{"p4-head", "p4-sump"}},
	teardown.NoSuchPlace:    {"place": "T9", "joint": "p4-cam-caps"},
	teardown.WhichJoint:     {"place": "M1", "what": "bolt length", "allowed": []string{"p4-head", "p4-sump"}},
	teardown.PartFitted:     {"part": "cylinder head"},
	teardown.PartOut:        {"part": "cylinder head", "to": "Milltown Grinding"},
	teardown.NotSentOut:     {},
	teardown.PartsOut:       {"parts": []string{"cylinder head", "crankshaft"}},
	teardown.RunsOpen:       {"runs": []string{"R1", "R2"}},
	teardown.PointsOpen:     {"count": 2, "points": []finding.Finding{finding.Warned(teardown.NotFitted, finding.Values{"what": finding.Term("gasket"), "count": 1}), finding.Warned(teardown.NotMeasured, finding.Values{"measure": "bolt length", "taken": 4, "places": 8, "joint": "Cylinder head"})}},
	teardown.NoSuchPoint:    {"of": "9c1e"},
	teardown.NoReason:       {},
	teardown.FittedAlready:  {"what": finding.Term("gasket")},
	teardown.LinesOpen:      {"list": "rebuild", "count": 3, "first": "oil pickup", "joints": []string{"Flywheel", "Oil sump"}},
	teardown.NotReady:       {"what": finding.Term("gasket"), "ready": 4, "count": 10, "joint": "Cylinder head"},
	teardown.NotFitted:      {"what": finding.Term("gasket"), "count": 1},
	teardown.NoReplacement:  {"id": "D5", "trouble": run.Stretched.Term(), "joint": "Connecting rod caps"},
	teardown.NeverLoosened:  {"joint": "Main bearing caps"},
	teardown.HoleOpen:       {"id": "M2", "joint": "Cylinder head"},
	teardown.ValueOutside:   {"joint": "Cylinder head", "finding": []finding.Finding{finding.Warned(measure.Outside, finding.Values{"what": "leak", "place": "cyl 4", "reading": mm("0.31"), "limits": unit.Written("≤ 0.25 mm")})}},
	teardown.NotMeasured:    {"measure": "bolt length", "joint": "Cylinder head", "taken": 4, "places": 8},
})
